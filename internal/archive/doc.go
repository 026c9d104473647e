// Package archive fetches daily weather from the public archive of the Global Historical
// Climatology Network (GHCN-Daily): it finds the nearest stations with a long record, and
// downloads a station's .dly file over HTTPS, resuming after a broken connection.
//
// The file formats are those of the archive's readme, version 3.26, sections III, IV and VII.
// Nothing about the garden is sent: the whole list of stations is downloaded and searched
// here.
package archive
