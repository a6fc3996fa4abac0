package parts

import (
	"maps"
	"slices"

	"lostwood/parts/form"
)

// A Plain timber is sawn square, with at most a little work of
// its own. Name is its kind: "axle bed", "cross bar", "riser", "sand board",
// "seat board", "side rail", "sill" or "tailboard".
type Plain struct {
	Name string
	// Long runs along x, Wide across y and Deep up z, whatever the kind calls
	// them: a tailboard's thickness is across it, and its height is up.
	Long, Wide, Deep Length
	Chamfer          Length // of the four long edges; 0 for none
	ChamferStop      Length // from each end to where the chamfers stop; 0 runs them out
	Eased            Length // radius of the four long edges; 0 leaves them sharp
	// Round is the radius of the broad face's corners: all four of a seat
	// board, the upper two of a tailboard or riser; 0 leaves them square.
	Round Length
	// A groove for an iron runs along the middle of the underside; 0 for none.
	GrooveWide, GrooveDeep Length
	// A tenon at each end, in the middle, TenonLong beyond its shoulder,
	// TenonWide across and TenonThick up; 0 for none.
	TenonLong, TenonWide, TenonThick Length
	Work                             []Feature
}

// A broad face is the one whose corners may be rounded.
type broad int

const (
	noBroad broad = iota
	seenFromAbove
	seenFromSide
)

// A plainSort is one row of the table of plain timbers.
type plainSort struct {
	name, means      string
	wide, deep       string // what the kind calls its extents
	across, up       string // what they span
	chamfer, eased   bool
	groove, tenons   bool
	broad            broad
	faceSide, faceAt Face
}

func plainSorts() []plainSort {
	return []plainSort{
		{
			name: "axle bed", means: "the timber bonded over an iron axle",
			wide: "wide", deep: "deep", across: "fore and aft", up: "up",
			chamfer: true, groove: true, faceSide: Under, faceAt: FirstSide,
		},
		{
			name: "cross bar", means: "a cross timber of the floor, from sill to sill",
			wide: "wide", deep: "deep", across: "fore and aft", up: "up",
			chamfer: true, eased: true, tenons: true, faceSide: Upper, faceAt: FirstSide,
		},
		{
			name: "riser", means: "an upright board that lifts the seat",
			wide: "thick", deep: "high", across: "through the board", up: "up",
			eased: true, broad: seenFromSide, faceSide: FirstSide, faceAt: Under,
		},
		{
			name: "sand board", means: "the cross timber between the fore axle bed and the bolster",
			wide: "wide", deep: "deep", across: "fore and aft", up: "up",
			chamfer: true, eased: true, faceSide: Under, faceAt: FirstSide,
		},
		{
			name: "seat board", means: "the board that is sat on",
			wide: "wide", deep: "thick", across: "fore and aft", up: "through the board",
			eased: true, broad: seenFromAbove, faceSide: Under, faceAt: FirstSide,
		},
		{
			name: "side rail", means: "a rail along the side of the body, on its irons",
			wide: "wide", deep: "deep", across: "across", up: "up",
			chamfer: true, eased: true, faceSide: FirstSide, faceAt: Under,
		},
		{
			name: "sill", means: "a lengthwise timber under the floor",
			wide: "wide", deep: "deep", across: "across", up: "up",
			chamfer: true, eased: true, faceSide: FirstSide, faceAt: Upper,
		},
		{
			name: "tailboard", means: "the board that closes the hind end of the body",
			wide: "thick", deep: "high", across: "through the board", up: "up",
			eased: true, broad: seenFromSide, faceSide: FirstSide, faceAt: Under,
		},
	}
}

func plainKinds() []Kind {
	var ks []Kind
	for _, s := range plainSorts() {
		k := Kind{Name: s.name, Means: s.means, Dimensions: s.dimensions()}
		ks = append(ks, k.built(func(m Measures) Part {
			l := m.Lengths
			return Plain{
				Name: s.name, Long: l["long"], Wide: l[s.wide], Deep: l[s.deep],
				Chamfer: l["chamfer"], ChamferStop: l["chamfer-stop"], Eased: l["eased"], Round: l["round"],
				GrooveWide: l["groove-wide"], GrooveDeep: l["groove-deep"],
				TenonLong: l["tenon-long"], TenonWide: l["tenon-wide"], TenonThick: l["tenon-thick"],
				Work: m.Work,
			}
		}))
	}
	return ks
}

func (s plainSort) dimensions() []Dimension {
	ds := []Dimension{
		{"long", "end to end", AlongX, InLength, Required},
		{s.wide, s.across, AcrossY, InLength, Required},
		{s.deep, s.up, UpZ, InLength, Required},
	}
	option := func(name, means string) { ds = append(ds, Dimension{name, means, NoAxis, InLength, Optional}) }
	if s.chamfer {
		ds = append(ds, chamferDimension(), chamferStopDimension())
	}
	if s.eased {
		option("eased", "radius of the eased long edges")
	}
	if s.broad == seenFromAbove {
		option("round", "radius of the four corners")
	}
	if s.broad == seenFromSide {
		option("round", "radius of the two upper corners")
	}
	if s.groove {
		option("groove-wide", "groove for the iron, along the middle of the underside: across")
		option("groove-deep", "groove for the iron, along the middle of the underside: up")
	}
	if s.tenons {
		option("tenon-long", "tenon at each end, beyond its shoulder")
		option("tenon-wide", "tenon at each end, fore and aft")
		option("tenon-thick", "tenon at each end, up")
	}
	return ds
}

// sort is the row of the kind; ok is false where there is none of that name.
func (s Plain) sort() (row plainSort, ok bool) {
	rows := plainSorts()
	i := slices.IndexFunc(rows, func(r plainSort) bool { return r.name == s.Name })
	if i < 0 {
		return plainSort{wide: "wide", deep: "deep", faceAt: FirstSide}, false
	}
	return rows[i], true
}

// Kind is as in Part.
func (s Plain) Kind() string { return s.Name }

// Validate is as in Part. It reports work that the kind does not have, too.
func (s Plain) Validate() error {
	row, ok := s.sort()
	if !ok {
		var names []string
		for _, r := range plainSorts() {
			names = append(names, r.name)
		}
		return &UnknownKindError{Name: s.Name, Nearest: nearest(s.Name, names)}
	}
	l := limits{part: s.Name}
	l.extents(named{"long", s.Long}, named{row.wide, s.Wide}, named{row.deep, s.Deep})
	for _, o := range s.options() {
		if _, has := (Kind{Dimensions: row.dimensions()}).Dimension(o.name); !has {
			l.may(o.name, o.value, 0, 0, "this kind of part has none")
		}
	}
	if l.sound() {
		s.checkOptions(&l, row)
	}
	return l.stick(s.Stick(), s.own())
}

func (s Plain) options() []named {
	return []named{
		{"chamfer", s.Chamfer},
		{"chamfer-stop", s.ChamferStop},
		{"eased", s.Eased},
		{"round", s.Round},
		{"groove-wide", s.GrooveWide},
		{"groove-deep", s.GrooveDeep},
		{"tenon-long", s.TenonLong},
		{"tenon-wide", s.TenonWide},
		{"tenon-thick", s.TenonThick},
	}
}

func (s Plain) checkOptions(l *limits, row plainSort) {
	l.chamferStop(s.Long, s.Chamfer, s.ChamferStop, 0)
	if s.Chamfer != 0 {
		l.may("eased", s.Eased, 0, 0, "the edges are chamfered")
	}
	switch row.broad {
	case seenFromAbove:
		l.may("round", s.Round, 1, min(s.Long, s.Wide)/2, "two corners share each end")
	case seenFromSide:
		l.may("round", s.Round, 1, min(s.Long/2, s.Deep-1), "two corners share the upper edge")
	}
	const together = "its sizes go together"
	if s.GrooveWide != 0 || s.GrooveDeep != 0 {
		l.need("groove-wide", s.GrooveWide, 1, s.Wide-1, together)
		l.need("groove-deep", s.GrooveDeep, 1, s.Deep-1, together)
	}
	if s.TenonLong != 0 || s.TenonWide != 0 || s.TenonThick != 0 {
		l.need("tenon-long", s.TenonLong, 1, s.Long/2-1, together)
		l.need("tenon-wide", s.TenonWide, 1, s.Wide, together)
		l.need("tenon-thick", s.TenonThick, 1, s.Deep, together)
	}
}

// chamferStop looks at where chamfers stop: no nearer the end than the ends'
// shaping, and leaving room for both stops.
func (l *limits) chamferStop(long, size, stop, shaped Length) {
	switch {
	case size == 0:
		l.may("chamfer-stop", stop, 0, 0, "it belongs to a chamfer, and there is none")
	case stop != 0:
		l.need("chamfer-stop", stop, max(1, shaped), long/2-size-1, "the stops of both ends need room")
	case shaped > 0:
		l.need("chamfer-stop", stop, shaped, long/2-size-1, "a chamfer cannot follow the shaped ends")
	}
}

// own says which dimension is to blame for a fault in the timber's own work.
func (s Plain) own() map[string]string {
	own := ownChamfers()
	maps.Copy(own, ownEased())
	own["groove wide"], own["groove deep"] = "groove-wide", "groove-deep"
	for i := range 2 {
		t := numbered("tenon", i+1)
		own[t+" long"], own[t+" wide"], own[t+" thick"] = "tenon-long", "tenon-wide", "tenon-thick"
	}
	return own
}

// Stick is as in Part.
func (s Plain) Stick() Stick {
	row, _ := s.sort()
	body := Square(s.Long, s.Wide, s.Deep)
	switch row.broad {
	case seenFromAbove:
		body.Plan = cornered(body.Plan, s.Round, 0, 0, 1, 2, 3)
	case seenFromSide:
		body.Side = cornered(body.Side, s.Round, 0, 2, 3)
	}
	return Stick{
		Body: body,
		Features: slices.Concat(s.Work, s.groove(), s.tenons(),
			fourChamfers(s.Long, s.Chamfer, s.ChamferStop), easedEdges(s.Eased, Arrises()...)),
		FaceSide: row.faceSide, FaceEdge: row.faceAt,
	}
}

func (s Plain) groove() []Feature {
	if s.GrooveWide == 0 && s.GrooveDeep == 0 {
		return nil
	}
	return []Feature{Groove{
		ID: "groove", What: "groove for the iron", Face: Under,
		Middle: s.Wide / 2, Wide: s.GrooveWide, Depth: s.GrooveDeep,
	}}
}

func (s Plain) tenons() []Feature {
	if s.TenonLong == 0 && s.TenonWide == 0 && s.TenonThick == 0 {
		return nil
	}
	var fs []Feature
	for i, end := range []Face{FirstEnd, SecondEnd} {
		fs = append(fs, Tenon{
			ID: numbered("tenon", i+1), What: "tenon", End: end, At: form.Point{X: s.Wide / 2, Y: s.Deep / 2},
			Long: s.TenonLong, Wide: s.TenonWide, Thick: s.TenonThick,
		})
	}
	return fs
}
