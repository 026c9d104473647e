// Package meteireann reads the daily files of the Irish meteorological service, Met
// Éireann: a heading that describes the station and the columns, then one line a day with
// dates like 08-nov-1973.
//
// Read are maxtp and mintp (°C), glorad (J/cm², that is 0.01 MJ/m²) and soil (mean at
// 10 cm, °C). Files carry zeros of glorad for days before the instrument was there and for
// days when it failed: a day without any sun although the sun rises is taken as missing and
// reported. The grass minimum is passed over: it is of the ground, not of the air.
package meteireann
