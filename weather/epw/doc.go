// Package epw reads EnergyPlus weather files (EPW): eight lines of heading, then a year
// hour by hour. The columns, units and codes for missing values are those of the data
// dictionary in the EnergyPlus documentation, Auxiliary Programs.
//
// An hour's sun is that of the hour before its stamp. Air temperature and dew point are
// taken as measured at the stamp, as in the typical years most such files are made from;
// a file made otherwise may be out by half an hour.
package epw
