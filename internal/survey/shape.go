package survey

// cranks takes steps that were meant: { at = "20", by = "3/4" }, one or a list.
func (r *reader) cranks(v *node, d *ironDraft) {
	list := []*node{v}
	if v.shape == listShape {
		list = v.items
	}
	for _, n := range list {
		var c Crank
		if readGroup(r, n, "a crank", crankKeys(), &c) {
			d.Cranks = append(d.Cranks, c)
		}
	}
}

func crankKeys() []key[Crank] {
	return []key[Crank]{
		{
			name: "at", also: "beyond", need: must, example: `"20"`, means: "how far from its fore, near or lower end it steps",
			take: func(r *reader, v *node, c *Crank) {
				if rd, ok := r.reading(v, r.s.Doubts.of(byRule), positive); ok {
					c.At = rd
				}
			},
		},
		{
			name: "by", also: "up step", need: must, example: `"3/4"`, means: "by how much",
			take: func(r *reader, v *node, c *Crank) {
				if rd, ok := r.reading(v, r.s.Doubts.of(byRule), anySign); ok {
					c.By = rd
				}
			},
		},
	}
}

// points takes places on an arc: [["0", "0"], ["6", "1 1/2"], ...].
func (r *reader) points(v *node, d *ironDraft) {
	const want = "write three pairs or more, each along a straight edge and out from it: [[\"0\", \"0\"], [\"6\", \"1 1/2\"], [\"12\", \"0\"]]"
	if v.shape != listShape || len(v.items) < 3 {
		r.fault(v.at, counted(len(v.items), "point")+" on an arc", want)
		return
	}
	usually := r.s.Doubts.of(byRule)
	for _, p := range v.items {
		if p.shape != listShape || len(p.items) != 2 {
			r.fault(p.at, "a point that is no pair", want)
			return
		}
		x, okX := r.reading(p.items[0], usually, anySign)
		y, okY := r.reading(p.items[1], usually, anySign)
		if !okX || !okY {
			return
		}
		d.Points = append(d.Points, [2]Reading{x, y})
	}
	r.onArc(v, d.Points)
}

// onArc refuses points that lie on one line, or two of which are one.
func (r *reader) onArc(v *node, points [][2]Reading) {
	a, b := points[0], points[len(points)-1]
	dx, dy := float64(b[0].Value-a[0].Value), float64(b[1].Value-a[1].Value)
	most, doubt := 0.0, 0.0
	for _, p := range points {
		off := dx*float64(p[1].Value-a[1].Value) - dy*float64(p[0].Value-a[0].Value)
		most = max(most, off*off/(dx*dx+dy*dy))
		doubt = max(doubt, float64(p[1].Doubt))
	}
	if !(most > 4*doubt*doubt) {
		r.fault(v.at, "points that lie on one line, as nearly as they were read", "take them farther apart along the piece; of too short a piece the size cannot be told")
	}
}

// shapeSense checks what was said of an iron's shape against its length.
func (r *reader) shapeSense(v *node, d *ironDraft) {
	long := sizeNamed(d.sizes, "long")
	if d.Bent != nil {
		switch {
		case long == nil:
			r.faultAt(d.Bent.At, "an iron that is bent, with no length", "write long too, straight from end to end as it is now")
		case d.Bent.Value*2 > long.Value:
			r.faultAt(d.Bent.At, "an iron "+r.show(long.Value)+" long that is "+r.show(d.Bent.Value)+" off the straight", "see which of the two is wrong; one bent further than a half circle must be read along its arc")
		}
	}
	for _, c := range d.Cranks {
		if long != nil && c.At.Value >= long.Value {
			r.faultAt(c.At.At, "a crank at "+r.show(c.At.Value)+" in an iron "+r.show(long.Value)+" long", "see which of the two is wrong")
		}
	}
	if d.Across != nil && len(d.Across) != len(d.holes) {
		r.faultAt(d.At, counted(len(d.Across), "place")+" across for "+counted(len(d.holes), "hole"), "write one for each hole")
	}
	wide := sizeNamed(d.sizes, "wide")
	for _, a := range d.Across {
		if wide != nil && a.Value >= wide.Value {
			r.faultAt(a.At, "a hole "+r.show(a.Value)+" from the edge of an iron "+r.show(wide.Value)+" wide", "see which of the two is wrong")
		}
	}
}

// shapeKeys are what an iron's shape can have besides its sizes.
func shapeKeys(k IronKind) []key[ironDraft] {
	keys := []key[ironDraft]{{
		name: "from", example: `"middle"`, means: "what its holes are read from: its end (where not given), or middle; those before the middle are then less than nothing: [\"-12\", \"0\", \"12\"]",
		take: func(r *reader, v *node, d *ironDraft) {
			if w, ok := r.word(v, []string{"end", "middle"}); ok && w == "middle" {
				d.From = FromMiddle
			}
		},
	}, {
		name: "across", also: "aside", example: `["3/4", "2 1/4"]`,
		means: "of holes that are not on its middle line: how far each is from its edge, the hind edge of an iron that lies across or has its thickness across, else the outer (of a single one the near) edge",
		take: func(r *reader, v *node, d *ironDraft) {
			if v.shape != listShape {
				r.mistaken(v, "a list", "write one for each hole, between [ and ]")
				return
			}
			for _, h := range v.items {
				if rd, ok := r.reading(h, r.s.Doubts.of(byRule), positive); ok {
					d.Across = append(d.Across, rd)
				}
			}
		},
	}, {
		name: "bent", also: "bowed", example: `"3 1/2"`,
		means: "of a straight iron bent in the wreck: how far its middle stands off the straight line between its ends. long and holes are then as read now, straight along that line, and are worked back along its arc",
		take: func(r *reader, v *node, d *ironDraft) {
			if rd, ok := r.reading(v, r.s.Doubts.of(byRule), positive); ok {
				d.Bent = &rd
			}
		},
	}, {
		name: "crank", also: "cranked joggle step", example: `{ at = "20", by = "3/4" }`,
		means: "a step that was meant, or a list of them: beyond there from its fore, near or lower end it stands so much further up, fore or outwards (of a single one to the near side), less than nothing for the other way",
		take:  (*reader).cranks,
	}}
	if k == "" || k == Tyre || k == Band || k == Ring {
		keys = append(keys, key[ironDraft]{
			name: "points", also: "arc", example: `[["0", "0"], ["6", "2 5/8"], ["12", "3 1/2"]]`,
			means: "of a piece of tyre: places on its outside, each along a straight edge and out from it; three or more, as far apart as can be",
			take:  (*reader).points,
		})
	}
	if k.round() {
		return keys[len(keys)-1:]
	}
	return keys
}
