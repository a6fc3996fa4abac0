package page

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// itemEntries tells of every item: its sizes with their reasons, its holes, its
// line of the cutting list and its files.
func (s *stage) itemEntries(r *record) {
	for k, it := range s.model.Vehicle.Items {
		e := &itemEntry{
			ID: recordID(it), Title: titleOf(it), Number: it.Number, Hand: it.Hand.String(), Timber: it.Timber, Off: it.NumberOff,
			Status: it.Status.String(), Notes: it.Notes, Holes: s.holes(it),
		}
		for _, p := range it.Parts {
			e.Makes = append(e.Makes, p.Name)
			if p.Kept != "" {
				e.Kept = p.Kept
			}
		}
		for _, d := range it.Sizes {
			e.Sizes = append(e.Sizes, sizeEntry{
				Name: strings.ReplaceAll(d.Name, "-", " "), Words: d.Words(s.model.Vehicle.Unit), Known: d.Known.String(),
				Level: int(d.Known), By: d.By, Account: s.account(it, d.Name),
			})
		}
		if s.model.Files != nil {
			e.Files = s.model.Files(it)
		}
		e.Cut = s.cutLine(k)
		for _, f := range s.model.findings() {
			if s.about(f, it) {
				e.Findings = append(e.Findings, finding{f.Concern.String(), "", f.Says, f.Line})
			}
		}
		r.Items = append(r.Items, e)
	}
}

// about reports whether a finding is about an item or a timber it makes.
func (s *stage) about(f vehicle.Finding, it *vehicle.Item) bool {
	names := []string{it.ID, it.Name}
	for _, p := range it.Parts {
		names = append(names, p.ID, p.Name)
	}
	for _, n := range names {
		if strings.EqualFold(n, f.Subject) {
			return true
		}
	}
	return false
}

// cutLine is an item's line of the cutting list, under its headings.
func (s *stage) cutLine(row int) []pair {
	l := s.model.Cutting
	if l == nil || row >= len(l.Rows) {
		return nil
	}
	var out []pair
	for i, c := range l.Columns {
		words := cellWords(l.Rows[row], i)
		if c.Head != "" && words != "" && c.Key != "number" && c.Key != "part" {
			out = append(out, pair{c.Head, words})
		}
	}
	return out
}

// account puts the reasons of a size into the page's words.
func (s *stage) account(it *vehicle.Item, size string) *account {
	for _, p := range it.Parts {
		for _, a := range s.model.Accounts {
			if a.Subject == p.ID+"."+size {
				return s.told(a)
			}
		}
	}
	return nil
}

func (s *stage) told(a *vehicle.Account) *account {
	out := &account{Alike: a.Alike, Contradicts: a.Contradicts, GiveOrTake: a.GiveOrTake, Unchecked: a.Unchecked, Open: a.Open}
	for _, b := range a.Told {
		e := bearing{Says: b.Says, Role: b.Role.String(), Share: shareWords(b.Share)}
		if !math.IsNaN(b.Read.Millimetres()) && b.Role == vehicle.Speaks {
			e.Read = quantity.Format(b.Read, s.model.Vehicle.Unit)
		}
		out.Told = append(out.Told, e)
	}
	return out
}

func shareWords(share float64) string {
	if p := math.Round(100 * share); p >= 1 {
		return fmt.Sprintf("%.0f %%", p)
	}
	return "under 1 %"
}
