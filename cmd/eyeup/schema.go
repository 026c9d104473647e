package main

import (
	"fmt"
	"strings"

	"eyeup/internal/desk"
)

// schemaCommand prints the JSON Schema of an answer.
type schemaCommand struct {
	Name []string `arg:"" optional:"" help:"The name of the answer, such as season, or reckon frost."`
}

// Run prints the schema, or the names there are.
func (c schemaCommand) Run(d *door) error {
	if len(c.Name) == 0 {
		fmt.Fprintln(d.out, strings.Join(desk.SchemaNames(), "\n"))
		return nil
	}
	b, err := desk.Schema(strings.Join(c.Name, " "))
	if err != nil {
		return err
	}
	fmt.Fprintf(d.out, "%s\n", b)
	return nil
}
