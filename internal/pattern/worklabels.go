package pattern

import (
	"math"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/parts"
	"lostwood/parts/form"
)

// work labels every piece of work on a face, each label in a wide and a narrow setting.
func (l *layout) work(f outline.Laid) [][]label {
	var out [][]label
	for _, group := range grouped(f.Marks) {
		lines, query, need := l.workWords(f, group)
		if len(lines) == 0 {
			continue
		}
		var settings []label
		for n, about := range anchorsOf(group) {
			a := about.Shifted(f.At)
			rooms := labelRooms()
			if n > 0 {
				rooms = rooms[:1]
			}
			for _, room := range rooms {
				b := l.block(l.broken(lines, room), 1.3)
				b.query, b.anchor, b.within, b.home, b.need = query, &a, l.everywhere(), f.Extent, need
				settings = append(settings, b)
			}
		}
		out = append(out, settings)
	}
	return out
}

// grouped gathers the marks of each piece of work, in their order.
func grouped(marks []parts.Mark) [][]parts.Mark {
	var out [][]parts.Mark
	place := map[string]int{}
	for _, m := range marks {
		i, ok := place[m.Ref]
		if !ok {
			i = len(out)
			place[m.Ref] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], m)
	}
	return out
}

// workWords are what stands beside one piece of work on one face. Of edges and
// tenons that are told of elsewhere a face can do without the words.
func (l *layout) workWords(f outline.Laid, group []parts.Mark) (lines []line, query bool, need need) {
	ref := group[0].Ref
	for _, op := range l.item.Stick.Operations() {
		if op.Ref != ref || op.Face != f.Face {
			continue
		}
		if len(lines) > 0 {
			lines = append(lines, line{l.brief(op, l.item.WorkWords(op)), small, outline.Bold})
			continue
		}
		if o := l.like(op); o.Ref != ref {
			return []line{{ref + ": as " + o.Ref, small, outline.Bold}}, false, wanted
		}
		what := l.item.WorkWords(op)
		if called(ref, what) {
			what = "" // the work is called by what it is
		}
		lines = []line{{ref + ": " + l.brief(op, what), normal, outline.Bold}}
		for _, s := range append(l.stands(op), l.guesses(op)...) {
			lines = append(lines, line{s.words, small, outline.Plain})
			query = query || s.queried
		}
		for _, words := range append(l.gauges(op), l.leaves(op)...) {
			lines = append(lines, line{words, small, outline.Plain})
		}
	}
	if len(lines) > 0 {
		return lines, query, wanted
	}
	if group[0].Work >= parts.Tenoning {
		need = spare
	}
	for _, m := range group {
		switch {
		case m.Stroke == parts.Seen:
			return []line{{named(ref, m.Label), small, outline.Plain}}, false, need
		case m.Centre != nil:
			return []line{{named(ref+" leaves here", m.Label), small, outline.Plain}}, false, need
		}
	}
	return nil, false, need
}

// named is a piece of work by its name and by what it is, once where they are the same.
func named(ref, what string) string {
	if called(ref, what) {
		return ref
	}
	return ref + ": " + what
}

// called reports whether a piece of work is called by what it is: "chamfer 1",
// "housing for the near reach".
func called(ref, what string) bool {
	word, _, _ := strings.Cut(what, " ")
	return word != "" && strings.HasPrefix(ref, word) || strings.HasPrefix(ref, what)
}

// A stand is one measure of where work stands.
type stand struct {
	words   string
	queried bool // it is a guess, or not known
}

// stands says where work stands along its face and across it, how sure that is,
// and how it is known. Work that is set out from the wood's own edges stands nowhere.
func (t teller) stands(op parts.Operation) []stand {
	if op.Face == parts.FirstEnd || op.Face == parts.SecondEnd || op.Work >= parts.Tenoning {
		return nil
	}
	_, high := outline.Extent(t.item.Stick.Body, op.Face)
	off, edge := t.gauged(op.Face, op.At, high)
	known := t.feature(op.Ref)
	if known == nil {
		return []stand{
			{words: t.size(op.At.X) + " from the " + t.item.FaceWords(parts.FirstEnd)},
			{words: t.size(off) + " from the " + t.item.FaceWords(edge)},
		}
	}
	along, across := known.Along, known.Across
	along.Value, across.Value = op.At.X, off
	return []stand{t.stand(along, parts.FirstEnd), t.stand(across, edge)}
}

func (t teller) stand(s quantity.Size, from parts.Face) stand {
	words := t.size(s.Value) + " from the " + t.item.FaceWords(from) + giveOrTake(s, t.v.Unit)
	if doubtful(s.Known) {
		return stand{"? " + words + ", " + strings.ToUpper(s.Known.String()), true}
	}
	return stand{words + ", " + s.Known.String(), false}
}

// anchorsOf are what a label's leader may point at, best first: the hole, all of
// small work, or places on the line of larger work.
func anchorsOf(group []parts.Mark) []outline.Box {
	const large = 45
	var d outline.Drawing
	for _, m := range group {
		if m.Centre != nil && m.Diameter > 0 {
			return []outline.Box{outline.Around(*m.Centre, m.Diameter/2)}
		}
		d.Paths = append(d.Paths, outline.Path{Run: m.Path, Closed: m.Closed})
	}
	b, ok := d.Bounds()
	if !ok || b.Width() < large && b.Height() < large {
		return []outline.Box{b}
	}
	var out []outline.Box
	for _, at := range placesOn(d, b) {
		out = append(out, outline.Box{Min: at, Max: at})
	}
	return out
}

// placesOn are places on the piece of a drawing's lines that passes nearest to its
// middle: half way along, and on either side of that.
func placesOn(d outline.Drawing, b outline.Box) []form.Point {
	c := form.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2}
	var best outline.Segment
	least := Length(math.Inf(1))
	for _, p := range d.Paths {
		for _, s := range p.Segments() {
			if off := distance(s.At(0.5), c); off < least {
				best, least = s, off
			}
		}
	}
	var out []form.Point
	for _, share := range [...]float64{0.5, 0.4, 0.6, 0.25, 0.75} {
		out = append(out, best.At(share))
	}
	return out
}
