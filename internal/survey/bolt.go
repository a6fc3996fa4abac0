package survey

const boltMeans = "Bolts with no grip mark, or with much to say: one line for each. A fastening then names the bolt's id instead of a diameter."

// A boltDraft is a bolt while its line is read.
type boltDraft struct {
	Bolt
	long *Reading
}

func boltKeys() []key[boltDraft] {
	optional := func(name, also, means, example string, place func(*boltDraft) **Reading) key[boltDraft] {
		return key[boltDraft]{
			name: name, also: also, means: means, example: example,
			take: func(r *reader, v *node, b *boltDraft) {
				usually := r.s.Doubts.of(usual(name))
				if name == "mark" {
					usually = r.s.Doubts.Grip.Value
				}
				if rd, ok := r.reading(v, usually, positive); ok {
					*place(b) = &rd
				}
			},
		}
	}
	return []key[boltDraft]{
		{
			name: "diameter", also: "size thick", need: must, example: `"1/2"`, means: "of its shank, where it is clean",
			take: func(r *reader, v *node, b *boltDraft) {
				if rd, ok := r.reading(v, 0, positive); ok {
					b.Diameter = rd.Value
					r.peers.add("diameter of a bolt", rd)
				}
			},
		},
		optional("length", "long", "under its head to its end", `"8"`, func(b *boltDraft) **Reading { return &b.long }),
		optional("thread", "threaded", "how long its thread is", `"1 1/2"`, func(b *boltDraft) **Reading { return &b.Thread }),
		optional("nut", "", "how thick its nut is", `"1/2"`, func(b *boltDraft) **Reading { return &b.Nut }),
		optional("washer", "washers", "how thick its washers are, all together", `"1/8"`, func(b *boltDraft) **Reading { return &b.Washer }),
		optional("proud", "", "how much thread stood past the nut", `"1/8"`, func(b *boltDraft) **Reading { return &b.Proud }),
		optional("mark", "grip", "its grip mark: head to nut, by the rust line or the polish", `"6 3/4"`, func(b *boltDraft) **Reading { return &b.Mark }),
		{
			name: "condition", also: "state", means: "what state it is in", example: `"bent, its thread worn"`,
			take: intoText(func(b *boltDraft) *string { return &b.Condition }),
		},
		{
			name: "where", also: "place", means: "where it was found", example: `"loose by the hind axle"`,
			take: intoText(func(b *boltDraft) *string { return &b.Where }),
		},
	}
}

func (r *reader) readBolts(n *node) {
	r.bolts = map[string]*Bolt{}
	r.each(n, "a bolt", func(at int, id string, v *node) {
		b := boltDraft{Bolt: Bolt{At: r.src.position(at), ID: id}}
		if !readGroup(r, v, "a bolt", boltKeys(), &b) {
			return
		}
		if b.long != nil {
			b.Length = *b.long
		}
		r.boltSense(v, &b)
		r.bolts[id] = &b.Bolt
		r.boltIDs = append(r.boltIDs, id)
	})
}

// boltSense refuses a bolt whose readings cannot all be so.
func (r *reader) boltSense(v *node, b *boltDraft) {
	if v.named["length"] == nil && v.named["mark"] == nil {
		r.missing(v.at, "a bolt with neither length nor mark", "write length = \"8\", under the head, or mark, from head to nut")
	}
	if b.long == nil {
		return
	}
	for _, p := range []struct {
		what string
		read *Reading
	}{{"thread", b.Thread}, {"nut", b.Nut}, {"washer", b.Washer}, {"proud", b.Proud}, {"mark", b.Mark}} {
		if p.read != nil && p.read.Value > b.long.Value {
			r.faultAt(p.read.At, p.what+" is "+r.show(p.read.Value)+" on a bolt "+r.show(b.long.Value)+" long", "see which of the two is wrong")
		}
	}
}
