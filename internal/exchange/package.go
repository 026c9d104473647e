package exchange

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
)

// Package is a garden's tables with what they mean, as a Tabular Data Package.
type Package struct {
	Garden  string
	Written civil.Date
	Tables  []Table
}

// WritePackage writes a table each as CSV, and datapackage.json, which tells the types and
// units of their columns, each through a writer that create opens by its name. Source:
// Frictionless Data, Tabular Data Package 1.0; units stand in a property of their own,
// as the standard leaves free.
func WritePackage(p Package, create func(name string) (io.WriteCloser, error)) error {
	described := packageFile{
		Profile: "tabular-data-package", Name: packageName(p.Garden), Title: p.Garden,
		Created: p.Written.String() + "T00:00:00Z", Resources: []packageResource{},
		Description: "Written by Eyeup. Measures are in the units named; a text that begins like a formula has an apostrophe before it.",
	}
	for _, t := range p.Tables {
		name := t.Name + ".csv"
		if err := writeFile(create, name, func(w io.Writer) error { return WriteCSV(w, t) }); err != nil {
			return err
		}
		described.Resources = append(described.Resources, resourceOf(t, name))
	}
	return writeFile(create, "datapackage.json", func(w io.Writer) error {
		e := json.NewEncoder(w)
		e.SetIndent("", "  ")
		e.SetEscapeHTML(false)
		if err := e.Encode(described); err != nil {
			return fmt.Errorf("the description can't be written: %w", err)
		}
		return nil
	})
}

// packageFile is datapackage.json.
type packageFile struct {
	Profile     string            `json:"profile"`
	Name        string            `json:"name"`
	Title       string            `json:"title"`
	Description string            `json:"description"`
	Created     string            `json:"created"`
	Resources   []packageResource `json:"resources"`
}

type packageResource struct {
	Profile     string         `json:"profile"`
	Name        string         `json:"name"`
	Path        string         `json:"path"`
	Description string         `json:"description,omitempty"`
	Format      string         `json:"format"`
	Mediatype   string         `json:"mediatype"`
	Encoding    string         `json:"encoding"`
	Dialect     packageDialect `json:"dialect"`
	Schema      packageSchema  `json:"schema"`
}

type packageDialect struct {
	Delimiter      string `json:"delimiter"`
	LineTerminator string `json:"lineTerminator"`
	DoubleQuote    bool   `json:"doubleQuote"`
	Header         bool   `json:"header"`
}

type packageSchema struct {
	Fields        []packageField `json:"fields"`
	MissingValues []string       `json:"missingValues"`
}

type packageField struct {
	Name        string `json:"name"`
	Type        string `json:"type"`
	Description string `json:"description,omitempty"`
	Unit        string `json:"unit,omitempty"`
}

func resourceOf(t Table, path string) packageResource {
	r := packageResource{
		Profile: "tabular-data-resource", Name: strings.ReplaceAll(t.Name, "_", "-"), Path: path, Description: t.Says,
		Format: "csv", Mediatype: "text/csv", Encoding: "utf-8",
		Dialect: packageDialect{Delimiter: ",", LineTerminator: "\r\n", DoubleQuote: true, Header: true},
		Schema:  packageSchema{Fields: []packageField{}, MissingValues: []string{""}},
	}
	for _, f := range t.Fields {
		r.Schema.Fields = append(r.Schema.Fields, packageField{f.Name, string(f.Type), f.Says, f.Unit})
	}
	return r
}

// packageName makes a name of lower-case letters, digits and dashes, as the standard asks.
func packageName(garden string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, garden)
	name = strings.Trim(name, "-")
	if name == "" {
		return "garden"
	}
	return name
}
