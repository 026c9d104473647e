// Package archive fetches daily weather from the public archive of the Global Historical
// Climatology Network (GHCN-Daily): it finds the nearest stations with a long record, and
// brings a station's .dly file over HTTPS, taking up again where a connection broke.
//
// The files' shapes are those of the archive's readme, version 3.26, sections III, IV and
// VII. Nothing of the garden is sent: the list of stations is fetched whole and searched here.
package archive
