package exchange

import (
	"archive/zip"
	"bytes"
	"errors"
	"io"
	"io/fs"
	"maps"
	"slices"

	"github.com/xuri/excelize/v2"
)

// orderly collects the parts of a workbook and writes them sorted by name, without times, so
// that the same tables give the same bytes.
type orderly struct {
	to    io.Writer
	parts map[string]*bytes.Buffer
}

func newOrderly(to io.Writer) excelize.ZipWriter { return &orderly{to, map[string]*bytes.Buffer{}} }

// Create begins a part; an earlier part with the same name is replaced.
func (o *orderly) Create(name string) (io.Writer, error) {
	o.parts[name] = &bytes.Buffer{}
	return o.parts[name], nil
}

// AddFS is not used for new workbooks.
func (o *orderly) AddFS(fs.FS) error { return errors.ErrUnsupported }

// Close writes all parts.
func (o *orderly) Close() error {
	z := zip.NewWriter(o.to)
	for _, name := range slices.Sorted(maps.Keys(o.parts)) {
		part, err := z.Create(name)
		if err != nil {
			return err
		}
		if _, err := o.parts[name].WriteTo(part); err != nil {
			return err
		}
	}
	return z.Close()
}
