package page

import (
	"fmt"
	"html/template"
	"math"
	"net/http"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A record is what the page says in words, made for its template.
type record struct {
	Name, Issue, Date, Hash, Version string
	Unit                             string
	Counts                           string
	Drawings                         []figure
	Notes, Unseen                    []string
	Irons                            []ironEntry
	Kept                             []keptEntry
	Items                            []*itemEntry
	Fastenings                       []fastEntry
	Contradicts, Open, Heed          []finding
	Guessed                          []string
	Questions                        *vehicle.Questions
	Next                             []nextEntry
	Moisture                         []string
	Timbers                          []timberEntry
	Cutting, Totals                  *paperTable
	Statuses                         []statusEntry
	Steps                            [][]string
	Lines                            []string
	Levels                           []level
	Moving                           []movingEntry
	Parts                            []choice
}

// A figure is a picture of the page: a drawing, or a photo.
type figure struct {
	Title  string
	Source template.URL // a data: address, made here
}

type ironEntry struct {
	ID, Name, Kind, Hand, Condition, Where, Marks, Note string
	Sizes                                               []string
	Holes                                               []string
	Photos                                              []figure
	Lost                                                []string // photos named and not at hand
}

type keptEntry struct{ Name, Kept string }

type itemEntry struct {
	ID, Title, Hand, Timber, Status, Kept string
	Number, Off                           int
	Sizes                                 []sizeEntry
	Holes                                 []holeEntry
	Files                                 []Link
	Cut                                   []pair // its line of the cutting list
	Notes                                 []string
	Findings                              []finding
	Makes                                 []string
}

type pair struct{ Head, Words string }

type sizeEntry struct {
	Name, Words, Known, By string
	Level                  int
	Account                *account
}

// An account is a vehicle.Account in the words of the page.
type account struct {
	Alike                                    string
	Told                                     []bearing
	Contradicts, GiveOrTake, Unchecked, Open []string
}

type bearing struct{ Says, Role, Read, Share string }

type holeEntry struct{ What, Along, Across, Known string }

type fastEntry struct{ ID, Name, What, Diameter, Grip, Through, Known string }

type finding struct {
	Concern, Subject, Says string
	Line                   int
}

type nextEntry struct {
	Words, Write string
	Line         int
}

type timberEntry struct {
	Name  string
	Parts []string
}

type statusEntry struct{ Name, Status, Kept, Off string }

type level struct {
	Index         int
	Words, Letter string
	Means         string
}

type movingEntry struct {
	Index    int
	Name     string
	From, To float64
}

type choice struct{ ID, Name string }

// A paperTable is a list as it stands on paper.
type paperTable struct {
	Heads []string
	Rows  [][]string
	Foot  []string
}

func (s *stage) record() (*record, error) {
	v := s.model.Vehicle
	r := &record{
		Name: v.Name, Issue: v.Issue, Date: v.Date.Format("2 January 2006"), Hash: v.Hash, Version: s.model.Version,
		Unit: v.Unit.String(), Notes: s.notes, Unseen: s.unseen, Questions: s.model.Questions, Steps: s.orderWords(),
		Lines: strings.Split(strings.ReplaceAll(strings.ToValidUTF8(string(s.model.Survey), "\uFFFD"), "\r\n", "\n"), "\n"),
	}
	if len(s.model.Survey) == 0 {
		r.Lines = nil
	}
	pieces := 0
	for _, it := range v.Items {
		pieces += it.NumberOff
	}
	r.Counts = fmt.Sprintf("%d irons, %d fastenings, %d distinct parts, %d pieces of timber", len(v.Irons), len(v.Fastenings), len(v.Items), pieces)
	if err := s.figures(r); err != nil {
		return nil, err
	}
	s.foundEntries(r)
	s.itemEntries(r)
	s.findingEntries(r)
	s.timberEntries(r)
	for _, g := range s.scene.Moving {
		r.Moving = append(r.Moving, movingEntry{len(r.Moving), g.Name, g.From, g.To})
	}
	seen := map[string]bool{}
	for _, t := range s.scene.Things {
		if t.Sort != "fastening" && !seen[t.ID] {
			seen[t.ID] = true
			r.Parts = append(r.Parts, choice{t.ID, t.Name})
		}
	}
	r.Levels = levels()
	return r, nil
}

// levels are the ways of knowing, with their letters and what they mean.
func levels() []level {
	means := [...]string{
		"on surviving wood of the part itself",
		"worked out from surviving iron",
		"like its survivor on the other side, or in the same row",
		"from a like vehicle or a period drawing",
		"by a rule of the trade",
		"settled by a guess, and marked so everywhere",
		"nothing speaks of it",
	}
	var out []level
	for k := quantity.Measured; k <= quantity.Unknown; k++ {
		out = append(out, level{int(k), k.String(), letter(k), means[k]})
	}
	return out
}

// letter stands for a way of knowing where there is no room for its words.
func letter(k quantity.Known) string { return string("MIPLTGN"[min(max(k, 0), quantity.Unknown)]) }

func (s *stage) figures(r *record) error {
	drawings := s.model.Drawings
	if drawings == nil {
		drawings = s.elevations()
	}
	for _, d := range drawings {
		r.Drawings = append(r.Drawings, figure{d.Title, dataAddress("image/svg+xml", d.SVG)})
	}
	for _, p := range s.model.Photos {
		if kind := http.DetectContentType(p.Data); kind != "image/jpeg" && kind != "image/png" {
			return fmt.Errorf("the photo %s is no JPEG and no PNG file; save it as one of the two, or take it out of the survey", p.Name)
		}
	}
	return nil
}

func (s *stage) foundEntries(r *record) {
	v := s.model.Vehicle
	for _, i := range v.Irons {
		e := ironEntry{
			ID: "iron-" + i.ID, Name: i.Name, Kind: i.Kind, Hand: i.Hand.String(),
			Condition: i.Condition, Where: i.Where, Marks: i.Marks, Note: i.Note,
		}
		for _, d := range i.Sizes {
			e.Sizes = append(e.Sizes, strings.ReplaceAll(d.Name, "-", " ")+" "+d.Words(v.Unit))
		}
		for _, h := range i.Holes {
			e.Holes = append(e.Holes, h.Words(v.Unit))
		}
		for _, name := range i.Photos {
			if p, ok := s.photo(name); ok {
				e.Photos = append(e.Photos, figure{i.Name + ": " + name, dataAddress(http.DetectContentType(p.Data), p.Data)})
			} else {
				e.Lost = append(e.Lost, name)
			}
		}
		r.Irons = append(r.Irons, e)
	}
	for _, p := range v.Parts {
		if p.Kept != "" {
			r.Kept = append(r.Kept, keptEntry{p.Name, p.Kept})
		}
	}
	for _, f := range v.Fastenings {
		e := fastEntry{
			ID: "fastening-" + vehicle.Slug(f.ID), Name: f.Title, What: f.What, Grip: f.Grip.Words(v.Unit), Known: f.Grip.Known.String(),
		}
		if f.Diameter > 0 {
			e.Diameter = quantity.Format(f.Diameter, v.Unit)
		}
		var through []string
		for _, stop := range f.Through {
			name := s.nameOf(stop.ID)
			if stop.Hole > 0 {
				name += fmt.Sprintf(" (hole %d)", stop.Hole)
			}
			through = append(through, name)
		}
		e.Through = strings.Join(through, ", ")
		r.Fastenings = append(r.Fastenings, e)
	}
}

func (s *stage) photo(name string) (Photo, bool) {
	for _, p := range s.model.Photos {
		if p.Name == name {
			return p, true
		}
	}
	return Photo{}, false
}

func (s *stage) nameOf(id string) string {
	for _, p := range s.model.Vehicle.Parts {
		if p.ID == id {
			return p.Name
		}
	}
	for _, i := range s.model.Vehicle.Irons {
		if i.ID == id {
			return i.Name
		}
	}
	return id
}

func (s *stage) findingEntries(r *record) {
	for _, f := range s.model.findings() {
		e := finding{f.Concern.String(), s.nameOf(f.Subject), f.Says, f.Line}
		switch f.Concern {
		case vehicle.Contradiction, vehicle.Unlike:
			r.Contradicts = append(r.Contradicts, e)
		case vehicle.Open, vehicle.Unmakeable:
			r.Open = append(r.Open, e)
		default:
			r.Heed = append(r.Heed, e)
		}
	}
	if q := s.model.Questions; q != nil {
		for _, n := range q.Next {
			r.Next = append(r.Next, nextEntry{n.Words, n.Write, n.Line})
		}
	}
	told := map[string]bool{}
	for _, it := range s.model.Vehicle.Items {
		var of []string
		for _, d := range it.Sizes {
			if d.Known == quantity.Guess {
				of = append(of, strings.ReplaceAll(d.Name, "-", " ")+" "+d.Words(s.model.Vehicle.Unit))
			}
		}
		if says := it.Name + ": " + strings.Join(of, "; "); len(of) > 0 && !told[says] {
			told[says] = true
			r.Guessed = append(r.Guessed, says)
		}
	}
}

func (s *stage) timberEntries(r *record) {
	v := s.model.Vehicle
	for _, name := range s.scene.Timbers {
		e := timberEntry{Name: name}
		for _, it := range v.Items {
			if it.Timber == name && !contains(e.Parts, it.Name) {
				e.Parts = append(e.Parts, it.Name)
			}
		}
		r.Timbers = append(r.Timbers, e)
	}
	m := v.Moisture
	if m.Bought > 0 {
		r.Moisture = append(r.Moisture, fmt.Sprintf("Bought at %g percent of moisture, worked at %g, kept at %g.", float64(m.Bought), float64(max(m.Worked, 0)), float64(m.Service)))
	}
	if m.Driest > 0 {
		r.Moisture = append(r.Moisture, fmt.Sprintf("In service between %g and %g percent.", round2(m.Driest), round2(m.Wettest)))
	}
	if m.Basis != "" {
		r.Moisture = append(r.Moisture, m.Basis)
	}
	r.Cutting, r.Totals = onPaper(s.model.Cutting), onPaper(s.model.Totals)
	for _, it := range v.Items {
		e := statusEntry{titleOf(it), it.Status.String(), "", fmt.Sprint(it.NumberOff)}
		for _, p := range it.Parts {
			if p.Kept != "" {
				e.Kept = p.Kept
			}
		}
		r.Statuses = append(r.Statuses, e)
	}
	for _, p := range v.Parts {
		if p.Item == nil {
			r.Statuses = append(r.Statuses, statusEntry{p.Name, p.Status.String(), p.Kept, ""})
		}
	}
}

func round2(m quantity.Moisture) float64 { return math.Round(100*float64(m)) / 100 }

// titleOf is an item's number, name and hand.
func titleOf(it *vehicle.Item) string {
	t := fmt.Sprintf("%d %s", it.Number, it.Name)
	if it.Hand != vehicle.Alike {
		t += ", " + it.Hand.String()
	}
	return t
}

// onPaper keeps the columns that stand on paper; nil of nil.
func onPaper(l *listing.List) *paperTable {
	if l == nil {
		return nil
	}
	p := &paperTable{Foot: l.Foot}
	var at []int
	for i, c := range l.Columns {
		if c.Head != "" {
			at = append(at, i)
			p.Heads = append(p.Heads, c.Head)
		}
	}
	for _, row := range l.Rows {
		var cells []string
		for _, i := range at {
			cells = append(cells, cellWords(row, i))
		}
		p.Rows = append(p.Rows, cells)
	}
	return p
}

func cellWords(row []listing.Cell, i int) string {
	switch {
	case i >= len(row):
		return ""
	case row[i].Words != "":
		return row[i].Words
	case row[i].Value == nil:
		return ""
	}
	return fmt.Sprint(row[i].Value)
}

// holes are an item's bolt holes and where they stand.
func (s *stage) holes(it *vehicle.Item) []holeEntry {
	var out []holeEntry
	for _, f := range it.Stick.Features {
		h, ok := f.(parts.Hole)
		if !ok {
			continue
		}
		e := holeEntry{What: fmt.Sprintf("%s, %s, in the %s", h.What, h.ID, it.FaceWords(h.Face))}
		for _, p := range it.Features {
			if p.Ref == h.ID {
				e.Along, e.Across = p.Along.Words(s.model.Vehicle.Unit), p.Across.Words(s.model.Vehicle.Unit)
				e.Known = weakest(quantity.Measured, p.Along, p.Across).String()
			}
		}
		out = append(out, e)
	}
	return out
}
