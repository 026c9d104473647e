package main

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"os/exec"
	"regexp"
)

// random is what differs from run to run: ids, and the hashes that are taken over them.
var random = regexp.MustCompile(`[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}|\b[0-9a-f]{64}\b`)

// tidied replaces what is random by its number in the order of appearance, so that it must still
// stand in the same places.
func tidied(data []byte) []byte {
	seen := map[string]int{}
	return random.ReplaceAllFunc(data, func(id []byte) []byte {
		n, known := seen[string(id)]
		if !known {
			n = len(seen) + 1
			seen[string(id)] = n
		}
		return fmt.Appendf(nil, "random-%d", n)
	})
}

// paperText returns what is written on a PDF, or the PDF itself where pdftotext is missing.
func paperText(pdf []byte) []byte {
	run := exec.Command("pdftotext", "-layout", "-", "-")
	run.Stdin = bytes.NewReader(pdf)
	if text, err := run.Output(); err == nil {
		return text
	}
	return pdf
}

// unzipped returns the files of a zip, one after the other, or the data itself if it is none.
func unzipped(data []byte) []byte {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return data
	}
	var all bytes.Buffer
	for _, f := range z.File {
		r, err := f.Open()
		if err == nil {
			fmt.Fprintln(&all, "==", f.Name)
			_, err = io.Copy(&all, r)
		}
		if err != nil {
			return data
		}
	}
	return all.Bytes()
}
