// Package page serves the garden's pages to a browser. Every page can be read and every
// form sent without scripts, and nothing is loaded from elsewhere. What a page shows comes
// from internal/desk; templates calculate nothing.
//
// Only the machine it runs on may open the pages, under its own names. Other devices may
// when the grower opens the pages to the local network and pairs the device with a code.
// A device stays paired until it is unpaired or not used for 90 days. docs/pages.md lists
// the actions and the names of their fields.
package page
