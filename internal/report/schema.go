package report

import (
	"encoding/json"
	"reflect"

	"github.com/invopop/jsonschema"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
)

// SchemaOf returns the JSON Schema (draft 2020-12) of an answer, with its name in the title.
func SchemaOf(name string, a Answer) ([]byte, error) {
	r := jsonschema.Reflector{Mapper: customSchema, ExpandedStruct: true, Anonymous: true}
	s := r.Reflect(a)
	s.Title = "eyeup " + name
	return json.MarshalIndent(s, "", "  ")
}

// customSchema returns the schema of a type that marshals itself to JSON, or nil for any other type.
func customSchema(t reflect.Type) *jsonschema.Schema {
	switch t {
	case reflect.TypeFor[civil.Date]():
		return textOrNull("a day, year-month-day; null where there is none", `^\d{4}-\d{2}-\d{2}$`)
	case reflect.TypeFor[civil.MonthDay]():
		return textOrNull("a day of the year, month-day; null where there is none", `^\d{2}-\d{2}$`)
	case reflect.TypeFor[quantity.Temperature]():
		return &jsonschema.Schema{Type: "number", Description: "a temperature in degrees Celsius"}
	case reflect.TypeFor[quantity.Money]():
		return moneySchema()
	case reflect.TypeFor[odds.Amount]():
		return amountSchema()
	}
	return nil
}

// textOrNull is the schema of a string of a pattern that may be null.
func textOrNull(description, pattern string) *jsonschema.Schema {
	return &jsonschema.Schema{
		Description: description,
		OneOf:       []*jsonschema.Schema{{Type: "string", Pattern: pattern}, {Type: "null"}},
	}
}

func moneySchema() *jsonschema.Schema {
	p := jsonschema.NewProperties()
	p.Set("amount", &jsonschema.Schema{Type: "number"})
	p.Set("currency", &jsonschema.Schema{Type: "string", Description: "ISO 4217"})
	return &jsonschema.Schema{Type: "object", Properties: p, Required: []string{"amount", "currency"}}
}

func amountSchema() *jsonschema.Schema {
	p := jsonschema.NewProperties()
	for _, part := range []string{"low", "middle", "high"} {
		p.Set(part, &jsonschema.Schema{OneOf: []*jsonschema.Schema{{Type: "number"}, {Type: "null"}}})
	}
	return &jsonschema.Schema{
		Type: "object", Properties: p, Required: []string{"low", "middle", "high"},
		Description: "one case in ten is below low, one in ten above high; null says never or not known",
	}
}
