package delivery

import (
	"bytes"

	"lostwood/internal/cutlist"
	"lostwood/internal/drawing"
	"lostwood/internal/vehicle"
)

// PartPaper and GeneralPaper are what drawings are made on where nothing else is
// asked: a part's for an office printer, the general arrangement's for a plotter.
const (
	PartPaper    = "A3"
	GeneralPaper = "A1"
)

// drawings are the dimensioned sheets of the parts and the general arrangement.
func (o Order) drawings(list *cutlist.List) ([]job, error) {
	part, err := drawing.FindPaper(PartPaper)
	if err != nil {
		return nil, err
	}
	general, err := drawing.FindPaper(GeneralPaper)
	if err != nil {
		return nil, err
	}
	v := o.Vehicle
	sawn := SawnSizes(list)
	var jobs []job
	if drawing.Arranged(v) {
		jobs = append(jobs, job{"joiner/drawings/" + GeneralStem(v) + ".pdf", func(b *bytes.Buffer) error {
			return drawing.WriteGeneral(b, v, drawing.Making{Paper: general})
		}})
	}
	for _, it := range v.Items {
		jobs = append(jobs, job{"joiner/drawings/" + v.Stem(it) + "_drawing.pdf", func(b *bytes.Buffer) error {
			return drawing.WritePart(b, v, it, drawing.Making{Paper: part, Sawn: sawn})
		}})
	}
	return jobs, nil
}

// GeneralStem is the start of the file name of a general arrangement.
func GeneralStem(v *vehicle.Vehicle) string {
	return v.Slug + "_general-arrangement_issue-" + v.IssueWord()
}

// SawnSizes tells the size each item is bought at, in the words of the cutting list.
func SawnSizes(list *cutlist.List) func(*vehicle.Item) string {
	cutting := list.Cutting()
	column := -1
	for i, c := range cutting.Columns {
		if c.Key == "sawn_long_mm" {
			column = i
		}
	}
	words := map[*vehicle.Item]string{}
	for i, line := range list.Lines {
		if column >= 0 && i < len(cutting.Rows) {
			words[line.Item] = cutting.Rows[i][column].Words
		}
	}
	return func(it *vehicle.Item) string { return words[it] }
}
