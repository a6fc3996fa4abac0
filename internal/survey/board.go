package survey

import "lostwood/internal/quantity"

// A Board is one in the yard.
type Board struct {
	At                Position
	ID, Timber        string
	Thick, Wide, Long quantity.Length
	Moisture          quantity.Moisture // as measured; 0 where it was not
	Number            int
	Note              string
}

// Measured reports whether the board's moisture was measured.
func (b *Board) Measured() bool { return b.Moisture > 0 }

const boardMeans = "The boards in the yard. Write [[board]] on a line before each. Without any, the cutting list says only what to buy."

func boardKeys() []key[Board] {
	length := func(name, also, means, example string, place func(*Board) *quantity.Length) key[Board] {
		return key[Board]{
			name: name, also: also, means: means, example: example, need: must,
			take: func(r *reader, v *node, b *Board) {
				if l, ok := r.plainLength(v, positive); ok {
					*place(b) = l
					if name != "long" {
						r.peers.add(quote(name)+" of a board", Reading{At: r.at(v), Value: l})
					}
				}
			},
		}
	}
	return []key[Board]{
		{
			name: "id", also: "name mark", need: must, example: `"b1"`, means: "what is chalked on it",
			take: func(r *reader, v *node, b *Board) {
				if s, ok := r.text(v); ok && allID(s) && len(s) <= longestID {
					b.ID = s
				} else if ok {
					r.fault(v.at, quote(s)+" as the id of a board", "write a short one of letters, figures and hyphens")
				}
			},
		},
		{
			name: "timber", also: "species wood", need: must, example: `"white oak"`, means: "its timber",
			take: intoText(func(b *Board) *string { return &b.Timber }),
		},
		length("thick", "thickness", "as it lies there", `"2"`, func(b *Board) *quantity.Length { return &b.Thick }),
		length("wide", "width", "as it lies there", `"9"`, func(b *Board) *quantity.Length { return &b.Wide }),
		length("long", "length", "as it lies there", `"8 ft"`, func(b *Board) *quantity.Length { return &b.Long }),
		{
			name: "moisture", means: "its moisture as measured, in percent of dry weight; not given, it counts as not measured", example: "14",
			take: func(r *reader, v *node, b *Board) {
				if f, ok := r.number(v, "moisture in percent", 1, 100); ok {
					b.Moisture = quantity.Moisture(f)
				}
			},
		},
		{
			name: "number", also: "count quantity", example: "2", means: "how many alike; one where not given",
			take: intoWhole(1, mostAlike, func(b *Board) *int { return &b.Number }),
		},
		{
			name: "note", also: "notes remark", example: `"a shake at one end"`, means: "anything else",
			take: intoText(func(b *Board) *string { return &b.Note }),
		},
	}
}

// thickestBoard is more than any board's thickness.
const thickestBoard = quantity.Metre

func (r *reader) boards(n *node) {
	first := map[string]Position{}
	for _, v := range n.items {
		b := Board{At: r.at(v), Number: 1}
		if !readGroup(r, v, "a board", boardKeys(), &b) {
			continue
		}
		if b.Thick >= thickestBoard && !r.unsure {
			r.fault(v.named["thick"].value.at, "a board "+r.show(b.Thick)+" thick", "see whether its unit is right; a bare number is in "+unitWord(r.unit()))
		}
		if b.ID != "" {
			r.once(first, b.ID, r.src.position(v.named["id"].value.at), "board")
		}
		r.s.Boards = append(r.s.Boards, b)
	}
}

// once refuses an id that stands twice among things of one sort.
func (r *reader) once(first map[string]Position, id string, at Position, what string) {
	if f, ok := first[id]; ok {
		r.faultAt(at, quote(id)+", which is the id of another "+what+" too, on "+f.words(), "give one of them another id")
		return
	}
	first[id] = at
}

// words names a place in the same file.
func (p Position) words() string { return "line " + numbered(p.Line) }
