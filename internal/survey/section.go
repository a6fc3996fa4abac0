package survey

// A form says how a section stands in the file.
type form int

// The forms.
const (
	headingOnce form = iota // [vehicle], then its lines
	lineEach                // [iron], then a line for each: id = { ... }
	headingEach             // [[fastening]] before each one's lines
)

// A section is a part of the file with a heading of its own.
type section struct {
	name  string
	form  form
	need  need
	means string
	lines func() []entry // for the reference page
	read  func(r *reader, n *node)
}

// sections are all a survey has, in the order they are read and explained.
func sections() []section {
	return []section{
		{
			name: "vehicle", need: must, means: "What the survey is of.",
			lines: func() []entry { return entries(vehicleKeys()) }, read: (*reader).vehicle,
		},
		{
			name: "wood", need: must, means: "What the timber is, and how damp or dry.",
			lines: func() []entry { return entries(woodKeys()) }, read: (*reader).wood,
		},
		{
			name: "doubts", means: doubtsMean,
			lines: func() []entry { return entries(doubtKeys()) }, read: (*reader).doubts,
		},
		{
			name: "datum", means: datumMeans,
			lines: func() []entry { return entries(datumKeys()) }, read: (*reader).datum,
		},
		{
			name: "instrument", form: lineEach, means: instrumentsMean,
			lines: func() []entry { return entries(instrumentKeys()) }, read: (*reader).readInstruments,
		},
		{
			name: "smith", means: smithMeans,
			lines: func() []entry { return entries(smithKeys()) }, read: (*reader).smith,
		},
		{
			name: "iron", form: lineEach, means: ironMeans,
			lines: func() []entry { return entries(ironKeys("")) }, read: (*reader).irons,
		},
		{
			name: "bolt", form: lineEach, means: boltMeans,
			lines: func() []entry { return entries(boltKeys()) }, read: (*reader).readBolts,
		},
		{
			name: "part", form: lineEach, need: must, means: partMeans,
			lines: func() []entry { return entries(partKeys()) }, read: (*reader).parts,
		},
		{
			name: "wheel", form: lineEach, means: wheelMeans,
			lines: func() []entry { return entries(wheelKeys()) }, read: (*reader).wheels,
		},
		{
			name: "fastening", form: headingEach, means: fasteningMeans,
			lines: func() []entry { return entries(fasteningKeys()) }, read: (*reader).fastenings,
		},
		{
			name: "joint", form: headingEach, means: jointMeans,
			lines: func() []entry { return entries(jointKeys("")) }, read: (*reader).joints,
		},
		{
			name: "move", form: headingEach, means: moveMeans,
			lines: func() []entry { return entries(moveKeys()) }, read: (*reader).moves,
		},
		{
			name: "evidence", means: evidenceMeans,
			lines: func() []entry { return entries(evidenceKeys()) }, read: (*reader).evidence,
		},
		{
			name: "timber", form: headingEach, means: timberMeans,
			lines: func() []entry { return entries(timberKeys()) }, read: (*reader).timbers,
		},
		{
			name: "splinter", form: headingEach, means: splinterMeans,
			lines: func() []entry { return entries(splinterKeys()) }, read: (*reader).splinters,
		},
		{
			name: "make", means: makeMeans,
			lines: func() []entry { return entries(makeKeys()) }, read: (*reader).making,
		},
		{
			name: "yard", means: yardMeans,
			lines: func() []entry { return entries(yardKeys()) }, read: (*reader).yard,
		},
		{
			name: "price", form: headingEach, means: priceMeans,
			lines: func() []entry { return entries(priceKeys()) }, read: (*reader).prices,
		},
		{
			name: "board", form: headingEach, means: boardMeans,
			lines: func() []entry { return entries(boardKeys()) }, read: (*reader).boards,
		},
		{
			name: "load", form: headingEach, means: loadMeans,
			lines: func() []entry { return entries(loadKeys()) }, read: (*reader).loads,
		},
		{
			name: "record", means: recordMeans,
			lines: func() []entry { return entries(recordKeys()) }, read: (*reader).record,
		},
		{
			name: "approval", form: headingEach, means: approvalMeans,
			lines: func() []entry { return entries(approvalKeys()) }, read: (*reader).approvals,
		},
		{
			name: "settled", form: headingEach, means: settledMeans,
			lines: func() []entry { return entries(settledKeys()) }, read: (*reader).settlements,
		},
	}
}

// isRepeated reports whether a heading of that name stands before each of many.
func isRepeated(name string) bool {
	switch name {
	case "fastening", "joint", "move", "board", "timber", "splinter", "price", "load", "approval", "settled":
		return true
	}
	return false
}

// survey reads the whole file.
func (r *reader) survey(root *node) {
	all := sections()
	for _, l := range root.lines {
		if !isSection(all, l.name) {
			r.unknownSection(l, all)
		}
	}
	r.s.Doubts = usualDoubts()
	for _, s := range all {
		if s.name == "fastening" { // the first that names irons and parts
			r.things = r.s.Index()
		}
		n := root.get(s.name)
		if n == nil {
			if s.need == must {
				r.missing(0, "no ["+s.name+"] in the file", "write one; see the reference")
			}
			if s.name == "vehicle" {
				r.unsure = true
			}
			continue
		}
		if r.formed(n, s) {
			s.read(r, n)
		}
	}
}

func isSection(all []section, name string) bool {
	for _, s := range all {
		if s.name == name {
			return true
		}
	}
	return false
}

func (r *reader) unknownSection(l *line, all []section) {
	var known []suggestion
	for _, s := range all {
		known = append(known, suggestion{s.name, otherHeadings(s.name)})
	}
	if l.value.shape != groupShape && !l.value.rows {
		want := "put it under a heading such as [vehicle]"
		if find(vehicleKeys(), l.name) != nil {
			want = "put it under the heading [vehicle]"
		}
		r.fault(l.at, quote(l.name)+" before any heading", want)
		return
	}
	r.unknownKey(l, "a survey", known)
}

// otherHeadings are words people write for a section's name.
func otherHeadings(name string) string {
	switch name {
	case "iron":
		return "irons ironwork"
	case "part":
		return "parts timbers member members"
	case "instrument":
		return "instruments tools"
	case "smith":
		return "habit habits nuts"
	case "wood":
		return "moisture"
	case "timber":
		return "species"
	case "make":
		return "making allowances allowance shop"
	case "price":
		return "prices cost costs"
	case "yard":
		return "sawmill merchant"
	case "board":
		return "boards"
	case "load":
		return "loads payload carries cargo"
	case "fastening":
		return "fastenings fixing fixings"
	case "doubts":
		return "doubt tolerance tolerances uncertainty"
	case "bolt":
		return "bolts"
	}
	return ""
}

// formed reports whether a section stands in the file as it should.
func (r *reader) formed(n *node, s section) bool {
	switch {
	case s.form == headingEach && n.shape == listShape:
		return true
	case s.form == headingEach:
		r.mistaken(n, "[["+s.name+"]]", "write [["+s.name+"]] on a line, once for each "+s.name)
	case n.shape == groupShape:
		return true
	case n.rows:
		r.fault(n.at, "[["+s.name+"]] with two brackets", "write ["+s.name+"] once, with one bracket on each side")
	default:
		r.mistaken(n, "["+s.name+"]", "write ["+s.name+"] on a line of its own")
	}
	return false
}

// each reads the things of a section that has a line for each.
func (r *reader) each(n *node, what string, read func(at int, id string, v *node)) {
	for _, l := range n.lines {
		if r.identifier(l.at, l.name, what) {
			read(l.at, l.name, l.value)
		}
	}
}
