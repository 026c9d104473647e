// Package sources says where each figure on a page comes from: how it is worked out, from which records,
// with which assumptions, and where they can be changed. It names records and pages, never a web address:
// package page writes those.
package sources
