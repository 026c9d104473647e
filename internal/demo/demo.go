// Package demo is an invented garden for trying Eyeup. The place, its weather and every
// variety are made up.
package demo

import (
	"embed"
	"io/fs"
)

//go:embed garden
var files embed.FS

// Garden returns the invented garden as a folder that package exchange reads. Its weather
// is made up from monthly means, and its year of planting out is 2027.
func Garden() fs.FS {
	garden, err := fs.Sub(files, "garden")
	if err != nil {
		panic(err) // the folder is part of the program
	}
	return garden
}
