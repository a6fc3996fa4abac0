package record

import (
	"encoding/json"
	"io"
	"reflect"
	"strconv"
)

// A field is one key of a row, as its schema tells it.
type field struct{ key, about, kind string }

// fields are the keys of a row, in their order.
func fields() []field {
	var out []field
	for f := range reflect.TypeFor[Row]().Fields() {
		kind := "string"
		switch f.Type {
		case reflect.TypeFor[*float64]():
			kind = "number"
		case reflect.TypeFor[*int]():
			kind = "integer"
		}
		out = append(out, field{f.Tag.Get("json"), f.Tag.Get("about"), kind})
	}
	return out
}

func (r Row) cells() []string {
	var out []string
	value := reflect.ValueOf(r)
	for i := range value.NumField() {
		switch x := value.Field(i).Interface().(type) {
		case string:
			out = append(out, plainCell(x))
		case *float64:
			s := ""
			if x != nil {
				s = figure(*x)
			}
			out = append(out, s)
		case *int:
			s := ""
			if x != nil {
				s = strconv.Itoa(*x)
			}
			out = append(out, s)
		}
	}
	return out
}

// WriteSchema writes what the rows are, as a JSON Schema (draft 2020-12).
func WriteSchema(w io.Writer) error {
	properties := map[string]any{}
	var required []string
	for _, f := range fields() {
		p := map[string]any{"type": f.kind, "description": f.about}
		if f.kind != "string" {
			p["type"] = []string{f.kind, "null"}
		}
		if f.kind == "integer" {
			p["minimum"], p["maximum"] = 1, 6
		}
		properties[f.key] = p
		required = append(required, f.key)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(map[string]any{
		"$schema":     "https://json-schema.org/draft/2020-12/schema",
		"title":       "Dimensions of a vehicle",
		"description": "One row a dimension of a part. The CSV of the same name has the same keys as headings; an empty cell there is null or empty text here, and text that begins as a formula does has an apostrophe before it.",
		"type":        "array",
		"items": map[string]any{
			"type": "object", "properties": properties, "required": required, "additionalProperties": false,
		},
	})
}
