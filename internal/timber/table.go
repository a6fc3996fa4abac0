package timber

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
)

// A TableError is a fault in a table of woods.
type TableError struct {
	Line   int
	Column string // its heading; empty where the whole line is at fault
	Fault  string // what was found and what would do
}

func (e *TableError) Error() string {
	if e.Column == "" {
		return fmt.Sprintf("line %d: %s", e.Line, e.Fault)
	}
	return fmt.Sprintf("line %d, column %s: %s", e.Line, e.Column, e.Fault)
}

// headings are the columns of a table of woods, all needed, in any order.
var headings = [...]string{
	"common", "also", "botanical", "region", "shrink_to", "radial_pct", "tangential_pct", "volumetric_pct",
	"move_basis", "move_radial_pct_per_1mc", "move_tangential_pct_per_1mc", "sg_basic", "sg_12", "density12_kgm3",
	"green_heart_pct", "green_sap_pct", "mor_green_mpa", "mor_12_mpa", "moe_green_gpa", "moe_12_gpa",
	"janka_green_n", "janka_12_n", "meet_pct", "strength_groups", "durability", "drying_days",
	"bend_strap_mm", "bend_free_mm", "bend_note", "source_shrink", "source_density", "source_strength",
	"source_durability", "from_memory_fields", "note",
}

// ReadTable reads a table of woods in CSV with the columns of the embedded
// one. Every fault is reported at once, each a *[TableError] with its line and
// column; nothing is returned then.
func ReadTable(r io.Reader) ([]Species, error) {
	lines := csv.NewReader(r)
	head, err := lines.Read()
	if err != nil {
		return nil, &TableError{Line: 1, Fault: "no headings could be read; the first line must hold them"}
	}
	head[0] = strings.TrimPrefix(head[0], "\ufeff") // spreadsheets write one
	if err := checkHeadings(head); err != nil {
		return nil, err
	}
	var out []Species
	var faults []error
	for {
		cells, err := lines.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, errors.Join(append(faults, badLine(err))...)
		}
		line, _ := lines.FieldPos(0)
		w := row{line: line, cells: make(map[string]string, len(head))}
		for i, h := range head {
			w.cells[h] = strings.TrimSpace(cells[i])
		}
		s := w.species()
		if err := s.Validate(); err != nil {
			w.fault("", err.Error())
		}
		faults = append(faults, w.faults...)
		out = append(out, s)
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	return out, nil
}

// badLine turns a fault of the CSV itself into ours.
func badLine(err error) error {
	var fault *csv.ParseError
	if !errors.As(err, &fault) {
		return err // of reading
	}
	if errors.Is(err, csv.ErrFieldCount) {
		return &TableError{Line: fault.Line, Fault: "more or fewer cells than headings; a comma inside a cell needs quotes round the cell"}
	}
	return &TableError{Line: fault.Line, Fault: "a quote that does not close, or stands inside a cell; write it twice"}
}

func checkHeadings(head []string) error {
	var faults []error
	for i, h := range head {
		switch {
		case !slices.Contains(headings[:], h):
			faults = append(faults, &TableError{1, h, "no such column; remove it or mend its heading"})
		case slices.Contains(head[:i], h):
			faults = append(faults, &TableError{1, h, "stands twice; remove one"})
		}
	}
	for _, h := range headings {
		if !slices.Contains(head, h) {
			faults = append(faults, &TableError{1, h, "missing; add it, empty where nothing is known"})
		}
	}
	return errors.Join(faults...)
}

// A row is one line of the table under its headings.
type row struct {
	line   int
	cells  map[string]string
	faults []error
}

func (w *row) fault(column, fault string) {
	w.faults = append(w.faults, &TableError{w.line, column, fault})
}

func (w *row) species() Species {
	w.checkMemory()
	shrink, density, strength := w.cells["source_shrink"], w.cells["source_density"], w.cells["source_strength"]
	s := Species{
		Common: w.cells["common"], Also: split(w.cells["also"], ";"), Botanical: w.cells["botanical"],
		Region: w.cells["region"], Note: w.cells["note"],
		Shrink: Shrinkage{
			To: w.convention(), Radial: w.figure("radial_pct", shrink),
			Tangential: w.figure("tangential_pct", shrink), Volumetric: w.figure("volumetric_pct", shrink),
		},
		Move: Movement{
			Kind: w.coefficient(), Radial: w.figure("move_radial_pct_per_1mc", shrink),
			Tangential: w.figure("move_tangential_pct_per_1mc", shrink),
		},
		Weight: Weight{
			Basic: w.figure("sg_basic", density), At12: w.figure("sg_12", density), Density12: w.figure("density12_kgm3", density),
			GreenHeart: w.figure("green_heart_pct", sourceGreen), GreenSapwood: w.figure("green_sap_pct", sourceGreen),
		},
		Green:   Strength{w.figure("mor_green_mpa", strength), w.figure("moe_green_gpa", strength), w.figure("janka_green_n", strength)},
		Dry:     Strength{w.figure("mor_12_mpa", strength), w.figure("moe_12_gpa", strength), w.figure("janka_12_n", strength)},
		Meeting: w.figure("meet_pct", "Wood Handbook 2021 table 5-13"),
	}
	s.Weight.Density12 = markDerived(s.Weight)
	s.Groups = w.groups()
	s.Durability = Text{w.cells["durability"], w.basis("durability", w.cells["source_durability"])}
	s.Drying = w.drying()
	s.Bending = Bending{
		Strap: remembered(w.figure("bend_strap_mm", sourceBend)), Free: remembered(w.figure("bend_free_mm", sourceBend)),
		Words: w.cells["bend_note"],
	}
	return s
}

const (
	sourceGreen = "Wood Handbook 2021 table 4-1"
	sourceBend  = "Stevens and Turner, Wood Bending Handbook"
)

// markDerived returns the density at 12 %, marked as worked out where it is
// but 1120 times the specific gravity.
func markDerived(w Weight) Figure {
	d := w.Density12
	if d.Known() && w.At12.Known() && math.Abs(d.Value-1120*w.At12.Value) <= 0.5 {
		return Figure{d.Value, "1120 x specific gravity at 12 %; " + w.At12.Source, min(d.Standing, Derived)}
	}
	return d
}

// remembered marks a figure as from memory if it is there at all.
func remembered(f Figure) Figure {
	if f.Known() {
		f.Standing = FromMemory
	}
	return f
}

func (w *row) figure(column, source string) Figure {
	text := w.cells[column]
	if text == "" {
		return Figure{}
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		w.fault(column, quantity.Quote(text)+" is not a number; write one, or leave it empty where nothing is known")
		return Figure{}
	}
	b := w.basis(column, source)
	return Figure{v, b.Source, b.Standing}
}

// basis returns how the cell of that column stands.
func (w *row) basis(column, source string) Basis {
	memory := strings.Fields(w.cells["from_memory_fields"])
	switch {
	case w.cells[column] == "":
		return Basis{}
	case slices.Contains(memory, "ALL") || slices.Contains(memory, column):
		return Basis{source, FromMemory}
	}
	return Basis{source, Seen}
}

func (w *row) checkMemory() {
	for _, m := range strings.Fields(w.cells["from_memory_fields"]) {
		if m != "ALL" && !slices.Contains(headings[:], m) {
			w.fault("from_memory_fields", quantity.Quote(m)+" is no heading; write ALL or headings with spaces between")
		}
	}
}

func (w *row) convention() Convention {
	switch w.cells["shrink_to"] {
	case "OD", "":
		return GreenToOvendry
	case "12":
		return GreenTo12
	}
	w.fault("shrink_to", quantity.Quote(w.cells["shrink_to"])+" is not known; write OD for ovendry, or 12")
	return GreenToOvendry
}

func (w *row) coefficient() Coefficient {
	switch w.cells["move_basis"] {
	case "":
		return NoCoefficient
	case "WH C x100":
		return HandbookOwn
	case "WH group C x100":
		return HandbookGroup
	case "AU unit":
		return UnitShrinkage
	}
	w.fault("move_basis", quantity.Quote(w.cells["move_basis"])+" is not known; write WH C x100, WH group C x100 or AU unit")
	return NoCoefficient
}

func (w *row) groups() Groups {
	g, err := parseGroups(w.cells["strength_groups"])
	if err != nil {
		w.fault("strength_groups", err.Error())
	}
	g.Basis = w.basis("strength_groups", "AS 2878 groups; "+w.cells["source_durability"])
	return g
}

func (w *row) drying() AirDrying {
	text := w.cells["drying_days"]
	if text == "" {
		return AirDrying{}
	}
	var d AirDrying
	if _, err := fmt.Sscanf(text, "%g-%g", &d.Least, &d.Most); err != nil || !(d.Least > 0 && d.Most >= d.Least) {
		w.fault("drying_days", quantity.Quote(text)+" is not two numbers of days; write them as 60-200")
		return AirDrying{}
	}
	d.Basis = Basis{"FPL Technical Note 233 and FPL-GTR-117", FromMemory}
	return d
}

// split cuts text at sep, without what is empty.
func split(text, sep string) []string {
	var out []string
	for _, part := range strings.Split(text, sep) {
		if part = strings.TrimSpace(part); part != "" {
			out = append(out, part)
		}
	}
	return out
}
