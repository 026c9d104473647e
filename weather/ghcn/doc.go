// Package ghcn reads daily records of the Global Historical Climatology Network (GHCN-Daily,
// Menne et al. 2012, doi:10.1175/JTECH-D-11-00103.1): the archive's own .dly files, and
// the tables in CSV that it gives out on order.
//
// A .dly file has one line for each month and element, in fixed columns, in tenths of a
// degree Celsius (the archive's readme, version 3.26, section III). A value with a quality
// flag failed a check of the archive: it is taken as missing, and counted by element and flag.
//
// The tables come in two forms. One has the columns STATION_NAME and a DATE without
// strokes, and is in °C. The other has NAME and a DATE with strokes; it may be in °C, °F or
// tenths of °C, as it was ordered, and does not say which. It is read where only one unit
// is possible, and refused where not. Only the lowest and highest temperature of a day are read.
package ghcn
