package survey

import "lostwood/internal/quantity"

const boltMeans = "Bolts with no grip mark, or with much to say: one line for each. A fastening then names the bolt's id instead of a diameter."

// A boltDraft is a bolt while its line is read.
type boltDraft struct {
	Bolt
	long      *Reading
	neck      quantity.Length
	bent, end *node
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
			name: "diameter", also: "size thick", example: `"1/2"`, means: "of its shank, where it is clean; or write neck",
			take: func(r *reader, v *node, b *boltDraft) {
				if rd, ok := r.reading(v, 0, positive); ok {
					b.Diameter = rd.Value
					r.peers.add("diameter of a bolt", rd)
				}
			},
		},
		optional("length", "long", "under its head to its end", `"8"`, func(b *boltDraft) **Reading { return &b.long }),
		optional("thread", "threaded", "how long its thread is", `"1 1/2"`, func(b *boltDraft) **Reading { return &b.Thread }),
		{
			name: "neck", also: "print", example: `"3/8"`, means: "where its shank is gone or eaten away: how wide its square neck is, or the print that the neck left in the wood",
			take: func(r *reader, v *node, b *boltDraft) {
				if l, ok := r.plainLength(v, positive); ok {
					b.neck = l
				}
			},
		},
		wordOr(optional("nut", "", "how thick its nut is, or its pattern: "+listed(plain(nutKinds()), "or"), `"1/2"`, func(b *boltDraft) **Reading { return &b.Nut }),
			nutKinds(), func(b *boltDraft) *NutKind { return &b.NutKind }),
		wordOr(optional("washer", "washers", "how thick its washers are, all together; or by the table: "+listed(plain(washerKinds()), "or"), `"1/8"`, func(b *boltDraft) **Reading { return &b.Washer }),
			washerKinds(), func(b *boltDraft) *WasherKind { return &b.WasherKind }),
		optional("proud", "", "how much thread stood past the nut", `"1/8"`, func(b *boltDraft) **Reading { return &b.Proud }),
		optional("mark", "grip", "its grip mark: head to nut, by the rust line or the polish", `"6 3/4"`, func(b *boltDraft) **Reading { return &b.Mark }),
		optional("rusted", "seized", "head to nut, where the nut is rusted fast in its place", `"6 3/4"`, func(b *boltDraft) **Reading { return &b.Rusted }),
		optional("crushed", "sunk", "how deep its head has drawn into the wood, by the ring it left", `"1/16"`, func(b *boltDraft) **Reading { return &b.Crushed }),
		{
			name: "bent", also: "bowed", example: `"3/8"`, means: "how far its middle is off the straight: what was read along it is taken as so much less sure",
			take: func(r *reader, v *node, b *boltDraft) {
				b.bent = v
				if l, ok := r.plainLength(v, positive); ok {
					b.Bent = l
				}
			},
		},
		{
			name: "worn", also: "burred riveted", example: `"1/8"`, means: "how much may be gone from its end, worn, rusted or riveted over: its length is taken as so much less sure",
			take: func(r *reader, v *node, b *boltDraft) {
				b.end = v
				if l, ok := r.plainLength(v, positive); ok {
					b.Worn = l
				}
			},
		},
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
		r.boltNeck(v, &b)
		r.boltSense(v, &b)
		r.bolts[id] = &b.Bolt
		r.boltIDs = append(r.boltIDs, id)
	})
}

// boltSense refuses a bolt whose readings cannot all be so.
func (r *reader) boltSense(v *node, b *boltDraft) {
	if v.named["length"] == nil && v.named["mark"] == nil && v.named["rusted"] == nil {
		r.missing(v.at, "a bolt with neither length nor mark", "write length = \"8\", under the head, or mark or rusted, from head to nut")
	}
	if v.named["mark"] != nil && v.named["rusted"] != nil {
		r.fault(v.named["rusted"].at, "a nut rusted in its place and a mark of it too", "write rusted alone: it says where the nut was last")
	}
	if b.long == nil {
		return
	}
	for _, p := range []struct {
		what string
		read *Reading
	}{{"thread", b.Thread}, {"nut", b.Nut}, {"washer", b.Washer}, {"proud", b.Proud}, {"mark", b.Mark}, {"rusted", b.Rusted}} {
		if p.read != nil && p.read.Value > b.long.Value {
			r.faultAt(p.read.At, p.what+" is "+r.show(p.read.Value)+" on a bolt "+r.show(b.long.Value)+" long", "see which of the two is wrong")
		}
	}
}

// wordOr makes a key that takes a word of a list too.
func wordOr[W ~string](k key[boltDraft], words []W, place func(*boltDraft) *W) key[boltDraft] {
	take := k.take
	k.take = func(r *reader, v *node, b *boltDraft) {
		if v.shape == textShape && v.text != "" && isLetter(v.text[0]) {
			if w, ok := r.word(v, plain(words)); ok {
				*place(b) = W(w)
			}
			return
		}
		take(r, v, b)
	}
	return k
}

// boltNeck takes a bolt for as thick as its neck is wide, where that is all there is:
// they are of one nominal size (ASME B18.5).
func (r *reader) boltNeck(v *node, b *boltDraft) {
	switch {
	case b.neck > 0 && v.named["diameter"] == nil:
		b.Diameter = b.neck
	case v.named["diameter"] == nil && v.named["neck"] == nil:
		r.missing(v.at, "a bolt with no “diameter”", "write diameter = \"1/2\", of its shank, or neck, of its square neck or the print of it")
	}
	if b.long != nil && b.Bent*2 > b.long.Value {
		r.fault(b.bent.at, "a bolt "+r.show(b.long.Value)+" long that is "+r.show(b.Bent)+" off the straight", "see which of the two is wrong")
	}
	if b.long != nil && b.Worn > b.long.Value/2 {
		r.fault(b.end.at, "a bolt "+r.show(b.long.Value)+" long from which "+r.show(b.Worn)+" may be gone", "such a bolt tells nothing: leave its length out")
	}
}
