// Package listing writes tables that people and programs read: as a table on
// paper or screen, as CSV (RFC 4180) and as JSON. Columns that hold a measure
// name its unit, and hold plain numbers.
package listing

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/jedib0t/go-pretty/v6/table"
	"github.com/jedib0t/go-pretty/v6/text"
)

// A Format is how a table is written.
type Format int

// The formats.
const (
	Table Format = iota
	CSV
	JSON
)

// A FormatError is a word that is no format.
type FormatError struct{ Word string }

func (e *FormatError) Error() string {
	return fmt.Sprintf("%q is no format of a list; table, csv or json would do", e.Word)
}

// ParseFormat reads table, csv or json.
func ParseFormat(word string) (Format, error) {
	for f, name := range []string{"table", "csv", "json"} {
		if strings.EqualFold(word, name) {
			return Format(f), nil
		}
	}
	return 0, &FormatError{word}
}

// A Column is one column of a table.
type Column struct {
	Key   string // its name in CSV and JSON: "value_mm"
	Head  string // its heading on paper; empty leaves it off the paper
	Align Align
}

// Align is which side a column's text keeps to on paper.
type Align int

// The sides.
const (
	Left Align = iota
	Right
)

// A Cell is a value and, where the paper says it otherwise, its words.
// Value is a string, an int, a float64 or nil; a float64 that is no number is
// written as nothing.
type Cell struct {
	Value any
	Words string
}

// A List is a table of rows under columns.
type List struct {
	Title   string
	Columns []Column
	Rows    [][]Cell
	Foot    []string // remarks below, on paper only
}

// Write writes the list.
func (l *List) Write(w io.Writer, f Format) error {
	switch f {
	case CSV:
		return l.writeCSV(w)
	case JSON:
		return l.writeJSON(w)
	}
	return l.writeTable(w)
}

func (l *List) writeTable(w io.Writer) error {
	t := table.NewWriter()
	t.SetStyle(table.StyleLight)
	t.Style().Options.SeparateRows = false
	t.Style().Format.Header = text.FormatDefault
	t.Style().Options.DrawBorder = false
	var head table.Row
	var aligns []table.ColumnConfig
	for _, c := range l.Columns {
		if c.Head == "" {
			continue
		}
		head = append(head, c.Head)
		if c.Align == Right {
			aligns = append(aligns, table.ColumnConfig{Number: len(head), Align: text.AlignRight, AlignHeader: text.AlignRight})
		}
	}
	t.AppendHeader(head)
	t.SetColumnConfigs(aligns)
	for _, r := range l.Rows {
		var row table.Row
		for i, c := range l.Columns {
			if c.Head != "" {
				row = append(row, r[i].words())
			}
		}
		t.AppendRow(row)
	}
	body := t.Render() + "\n"
	if l.Title != "" {
		body = l.Title + "\n\n" + body
	}
	for _, f := range l.Foot {
		body += f + "\n"
	}
	_, err := io.WriteString(w, trimLines(body))
	return err
}

// trimLines takes the blanks off the ends of lines.
func trimLines(s string) string {
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

func (c Cell) words() string {
	if c.Words != "" {
		return c.Words
	}
	return c.plain()
}

// plain is a value as CSV has it: numbers with a point and no more digits than they need.
func (c Cell) plain() string {
	switch v := c.Value.(type) {
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return ""
		}
		return strconv.FormatFloat(v, 'f', -1, 64)
	case int:
		return strconv.Itoa(v)
	case string:
		return v
	}
	return ""
}

func (l *List) writeCSV(w io.Writer) error {
	c := csv.NewWriter(w)
	c.UseCRLF = false
	var head []string
	for _, col := range l.Columns {
		head = append(head, col.Key)
	}
	rows := [][]string{head}
	for _, r := range l.Rows {
		var row []string
		for _, cell := range r {
			row = append(row, guarded(cell))
		}
		rows = append(rows, row)
	}
	return c.WriteAll(rows)
}

// guarded keeps a name that starts like a formula from being taken for one by a spreadsheet.
func guarded(c Cell) string {
	s := c.plain()
	if _, isText := c.Value.(string); isText && s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

func (l *List) writeJSON(w io.Writer) error {
	var b strings.Builder
	b.WriteString("[")
	for i, r := range l.Rows {
		if i > 0 {
			b.WriteString(",")
		}
		b.WriteString("\n  {")
		for k, c := range l.Columns {
			if k > 0 {
				b.WriteString(", ")
			}
			v := r[k].Value
			if f, ok := v.(float64); ok && (math.IsNaN(f) || math.IsInf(f, 0)) {
				v = nil
			}
			key, err := json.Marshal(c.Key)
			if err != nil {
				return err
			}
			value, err := json.Marshal(v)
			if err != nil {
				return err
			}
			fmt.Fprintf(&b, "%s: %s", key, value)
		}
		b.WriteString("}")
	}
	b.WriteString("\n]\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// Rounded keeps a number to a step that is worth printing: 3 decimals for millimetres.
func Rounded(v float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	return math.Round(v*p) / p
}
