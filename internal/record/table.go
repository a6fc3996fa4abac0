package record

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"math"
	"strconv"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A Row is one dimension of one part, for a museum's database. What is not known
// or was not stated is empty text, or null.
type Row struct {
	Object             string   `json:"object" about:"the number of the vehicle in its keeper's books"`
	Vehicle            string   `json:"vehicle" about:"the name of the vehicle"`
	Issue              string   `json:"issue" about:"the issue of the survey"`
	Survey             string   `json:"survey_sha256" about:"SHA-256 of the survey's bytes, in hex"`
	PartID             string   `json:"part_id" about:"the part, as the survey writes it"`
	Part               string   `json:"part" about:"the part in words"`
	Kind               string   `json:"kind" about:"the kind of part"`
	Hand               string   `json:"hand" about:"near, off, or empty for a part alike on both sides"`
	Status             string   `json:"status" about:"proposed, approved, made, fitted or left open"`
	Timber             string   `json:"timber" about:"the species"`
	Original           string   `json:"original_or_new" about:"what of the original is kept and where, or new where nothing is"`
	Mark               string   `json:"mark" about:"how new pieces are marked"`
	Dimension          string   `json:"dimension" about:"the name of the dimension"`
	Value              *float64 `json:"value_mm" about:"millimetres, to a thousandth; null where not known"`
	GiveOrTake         *float64 `json:"give_or_take_mm" about:"standard uncertainty in millimetres, rounded up; null where not known"`
	Known              string   `json:"known" about:"how it is known, in words"`
	Rank               *int     `json:"known_rank" about:"1 measured, 2 from iron, 3 paired, 4 like vehicle, 5 trade rule, 6 guess; null where not known"`
	Evidence           string   `json:"evidence" about:"the strongest evidence that bears on it"`
	Reasons            string   `json:"reasons" about:"why the part is made as it is, as decided"`
	AsMade             *float64 `json:"as_made_mm" about:"the size as made, in millimetres; null where not stated"`
	ApprovalOffice     string   `json:"approval_office" about:"the office that approved the part"`
	ApprovalIssue      string   `json:"approval_issue" about:"the issue of the survey that was approved"`
	ApprovalConditions string   `json:"approval_conditions" about:"the conditions of the approval"`
}

// Rows are the dimensions of every part, in the vehicle's order. Sizes are those
// of the thing that is made, so that they equal the list of sizes.
func Rows(v *vehicle.Vehicle) []Row {
	var out []Row
	for _, p := range v.Parts {
		sizes := p.Sizes
		if p.Item != nil {
			sizes = p.Item.Sizes
		}
		for _, d := range sizes {
			out = append(out, row(v, p, d))
		}
	}
	return out
}

func row(v *vehicle.Vehicle, p *vehicle.Part, d vehicle.Dimension) Row {
	r := Row{
		Object: v.Record.Object, Vehicle: v.Name, Issue: v.Issue, Survey: v.Hash,
		PartID: p.ID, Part: p.Name, Kind: p.Kind, Hand: p.Hand.String(), Status: p.Status.String(), Timber: p.Timber,
		Original: originalOrNew(p), Dimension: d.Name, Known: d.Known.String(), Evidence: d.By,
		Reasons: v.Record.Decided[p.ID],
	}
	if p.Status != vehicle.LeftOpen {
		r.Mark = v.Record.Mark
	}
	if d.Known != quantity.Unknown {
		rank := int(d.Known) + 1
		r.Value, r.Rank = number(listing.Rounded(d.Value.Millimetres(), 3)), &rank
		r.GiveOrTake = number(math.Ceil(d.Doubt.Millimetres()*1000) / 1000)
	}
	for _, m := range v.Record.AsMade[p.ID] {
		if m.Name == d.Name {
			r.AsMade = number(listing.Rounded(m.Size.Millimetres(), 3))
		}
	}
	if a := v.Record.Approval(p.ID); a != nil {
		r.ApprovalOffice, r.ApprovalIssue, r.ApprovalConditions = a.Office, a.Issue, a.Conditions
	}
	return r
}

func originalOrNew(p *vehicle.Part) string {
	switch {
	case p.Kept != "":
		return "original kept: " + p.Kept
	case p.Status == vehicle.LeftOpen:
		return "left open"
	case p.Status == vehicle.Made, p.Status == vehicle.Fitted:
		return "new"
	}
	return "to be made new; nothing of an old one is told of"
}

// number is nil for what no JSON number can tell.
func number(f float64) *float64 {
	if math.IsInf(f, 0) || math.IsNaN(f) {
		return nil
	}
	return &f
}

// WriteJSON writes the rows as a JSON array.
func WriteJSON(w io.Writer, v *vehicle.Vehicle) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	rows := Rows(v)
	if rows == nil {
		rows = []Row{}
	}
	return e.Encode(rows)
}

// WriteCSV writes the rows with a line of headings (RFC 4180).
func WriteCSV(w io.Writer, v *vehicle.Vehicle) error {
	c := csv.NewWriter(w)
	var head []string
	for _, f := range fields() {
		head = append(head, f.key)
	}
	_ = c.Write(head)
	for _, r := range Rows(v) {
		_ = c.Write(r.cells())
	}
	c.Flush()
	return c.Error()
}

// plainCell keeps a spreadsheet from taking words for a formula.
func plainCell(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

func figure(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
