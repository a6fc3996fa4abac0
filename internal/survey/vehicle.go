package survey

import (
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

func vehicleKeys() []key[Survey] {
	return []key[Survey]{
		{
			name: "name", need: must, example: `"Orchard wagon"`,
			means: "what the vehicle is called", take: (*reader).vehicleName,
		},
		{
			name: "issue", also: "revision version", need: must, example: `"A"`,
			means: "the letter of this issue of the survey; it goes on every sheet and into every file's name",
			take:  (*reader).issue,
		},
		{
			name: "date", need: must, example: "2026-10-30", means: "the day of this issue",
			take: func(r *reader, v *node, s *Survey) {
				if d, ok := r.date(v); ok {
					s.Date = d
				}
			},
		},
		{
			name: "unit", also: "units", need: must, example: `"in"`,
			means: "what a bare number is in, and what lists are printed in: in or mm",
			take:  func(*reader, *node, *Survey) {}, // read before everything else
		},
		{
			name: "track", also: "gauge", example: `"4 ft 8"`,
			means: "from the middle of one wheel's tread to the middle of the other's, on the ground; not given, loads are taken to stand on the ends of the axles",
			take:  func(r *reader, v *node, s *Survey) { s.Track, _ = r.plainLength(v, positive) },
		},
		{
			name: "note", also: "notes remark", example: `"found under a fallen shed roof"`, means: "anything else",
			take: intoText(func(s *Survey) *string { return &s.Note }),
		},
	}
}

func (r *reader) vehicle(n *node) {
	r.readUnit(n)
	readGroup(r, n, "[vehicle]", vehicleKeys(), r.s)
}

// readUnit comes first: every length needs it.
func (r *reader) readUnit(n *node) {
	v := n.get("unit")
	if v == nil {
		r.unsure = true
		return
	}
	s, ok := r.text(v)
	if !ok {
		r.unsure = true
		return
	}
	u, err := quantity.ParseUnit(s)
	if err != nil || u != quantity.Inches && u != quantity.Millimetres {
		r.unsure = true
		r.fault(v.at, quote(s)+" as the unit of a survey", "write \"in\" or \"mm\"; any one length can still be in another: \"3 ft 6\", \"44.5 mm\"")
		return
	}
	r.s.Unit = u
}

func (r *reader) vehicleName(v *node, s *Survey) {
	name, ok := r.text(v)
	if !ok {
		return
	}
	if vehicle.Slug(name) == "" {
		r.fault(v.at, quote(name)+", from which no file can be named", "use letters a to z or figures in it")
		return
	}
	s.Name = name
}

func (r *reader) issue(v *node, s *Survey) {
	issue, ok := r.text(v)
	if !ok {
		return
	}
	const longest = 8
	if len(issue) > longest || !allID(issue) {
		r.fault(v.at, quote(issue)+" as an issue", "write a letter or a short number, such as \"A\" or \"3\"")
		return
	}
	s.Issue = issue
}
