// Package sources says what each figure on a page rests on: how it is reckoned, from which records,
// with which assumptions and where they can be changed. It names records and pages, never an address:
// addresses are written by package page.
package sources
