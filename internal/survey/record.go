package survey

import (
	"time"

	"lostwood/internal/vehicle"
)

const (
	recordMeans = "What the archive is to know besides the sizes: whose the vehicle is, what it is for, how new pieces are marked, what was left undone."

	approvalMeans = "Which parts may be made, by leave of which office, on what conditions. Write [[approval]] on a line before each. " +
		"An approval is of one issue of the survey: where it is of another than this, the list of findings says so."

	settledMeans = "How a contradiction was settled. Write [[settled]] on a line before each."
)

// A Record is what a survey says for the archive; texts are empty where it says nothing.
type Record struct {
	Object, Keeper, Purpose, Mark string
	LeftUndone                    []string
}

// An Approval is leave to make parts.
type Approval struct {
	At                        Position
	Parts                     []Named
	Office, Conditions, Issue string
	Date                      time.Time
}

// A Settled says how a contradiction about an iron, part or line was settled.
type Settled struct {
	At         Position
	About, How string
}

func recordKeys() []key[Record] {
	word := func(name, also, means, example string, place func(*Record) *string) key[Record] {
		return key[Record]{name: name, also: also, means: means, example: example, take: intoText(place)}
	}
	return []key[Record]{
		word("object", "object-number accession inventory", "the number it has in its keeper's books", `"1987.14"`, func(d *Record) *string { return &d.Object }),
		word("keeper", "owner museum", "who keeps it: an office, not a person", `"the carriage store"`, func(d *Record) *string { return &d.Keeper }),
		word("purpose", "use", "what it is to be for", `"to be kept still"`, func(d *Record) *string { return &d.Purpose }),
		word("mark", "marked stamp", "how new pieces are marked, and where", `"stamped with the year on a hidden face"`, func(d *Record) *string { return &d.Mark }),
		{
			name: "left-undone", also: "undone not-done", example: `["the paint was not analysed"]`, means: "what was not done, a sentence each",
			take: func(r *reader, v *node, d *Record) {
				for _, n := range r.texts(v) {
					if s, ok := r.text(n); ok {
						d.LeftUndone = append(d.LeftUndone, s)
					}
				}
			},
		},
	}
}

func approvalKeys() []key[Approval] {
	return []key[Approval]{
		{
			name: "parts", also: "part of", need: must, example: `["sill", "bolster"]`, means: "the parts that may be made; a pair or a row means all of it",
			take: func(r *reader, v *node, a *Approval) {
				for _, n := range r.texts(v) {
					if id, ok := r.text(n); ok {
						a.Parts = append(a.Parts, Named{r.at(n), id})
					}
				}
				if v.shape == listShape && len(v.items) == 0 {
					r.fault(v.at, "an approval of no parts", `write the ids of parts, such as parts = ["sill", "bolster"]`)
				}
			},
		},
		{
			name: "office", also: "by approved-by who", need: must, example: `"the curator of vehicles"`, means: "the office that gave it, never a person's name",
			take: intoText(func(a *Approval) *string { return &a.Office }),
		},
		{
			name: "issue", also: "revision version", need: must, example: `"A"`, means: "the issue of the survey that it was given on",
			take: func(r *reader, v *node, a *Approval) {
				var s Survey
				r.issue(v, &s)
				a.Issue = s.Issue
			},
		},
		{
			name: "date", also: "day on", need: must, example: "2026-11-14", means: "the day it was given",
			take: func(r *reader, v *node, a *Approval) { a.Date, _ = r.date(v) },
		},
		{
			name: "conditions", also: "condition provided", example: `"the old end is grafted, not cut away"`, means: "what it was given on condition of",
			take: intoText(func(a *Approval) *string { return &a.Conditions }),
		},
	}
}

func settledKeys() []key[Settled] {
	return []key[Settled]{
		{
			name: "about", also: "iron part subject line", need: must, example: `"hind-plate"`, means: "what it was about: the iron, part or fastening as the findings name it",
			take: intoText(func(s *Settled) *string { return &s.About }),
		},
		{
			name: "how", also: "by settled", need: must, example: `"read again by two people; the first reading was from the wrong end"`, means: "how it was settled",
			take: intoText(func(s *Settled) *string { return &s.How }),
		},
	}
}

func (r *reader) record(n *node) { readGroup(r, n, "[record]", recordKeys(), &r.s.Record) }

func (r *reader) approvals(n *node) {
	for _, v := range n.items {
		a := Approval{At: r.at(v)}
		if readGroup(r, v, "an approval", approvalKeys(), &a) {
			r.s.Approvals = append(r.s.Approvals, a)
		}
	}
}

func (r *reader) settlements(n *node) {
	for _, v := range n.items {
		s := Settled{At: r.at(v)}
		if readGroup(r, v, "what was settled", settledKeys(), &s) {
			r.s.Settled = append(r.s.Settled, s)
		}
	}
}

// approved checks that approvals are of parts.
func (r *reader) approved() {
	for _, a := range r.s.Approvals {
		for _, n := range a.Parts {
			if t, ok := r.find(n.ID, n.At); ok && t.Part == nil {
				r.faultAt(n.At, "an approval of "+quote(n.ID)+", which is an iron", "write the id of a part")
			}
		}
	}
}

// HasLeave reports whether a part's status needs an approval to stand on.
func HasLeave(s vehicle.Status) bool {
	return s == vehicle.Approved || s == vehicle.Made || s == vehicle.Fitted
}
