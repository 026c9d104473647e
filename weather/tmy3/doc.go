// Package tmy3 reads typical meteorological years in the CSV form of the third edition
// (TMY3; Wilcox & Marion 2008, NREL/TP-581-43156): a line about the station, a line that
// names the columns, then 8760 hours of local standard time.
//
// The sun of an hour is what fell in the 60 minutes before its stamp; air temperature and
// dew point are those at the stamp.
package tmy3
