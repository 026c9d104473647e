// Package page serves the garden's pages to a browser: reading and writing without
// scripts, nothing loaded from elsewhere. What a page shows comes from internal/desk; a
// template reckons nothing.
//
// Access: only the machine it runs on, by its own names; others only when the grower opens
// the pages to the local network and pairs a device with a code, which stays paired till
// it is ended or was not used for 90 days. Actions and the names of
// their fields are listed in docs/pages.md.
package page
