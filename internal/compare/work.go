package compare

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// far is how far apart two like pieces of work may stand and still be taken for
// the same one, moved: farther than any reading slips but by a foot.
const far = 330 * quantity.Millimetre

// A job is one piece of work on a part, with the doubt of where it stands.
type job struct {
	parts.Operation
	face          string
	along, across quantity.Size
}

// jobs lists the work on a part; none where it cannot be made.
func jobs(p *vehicle.Part) []job {
	if p.Item == nil {
		return nil
	}
	var out []job
	for _, op := range p.Item.Stick.Operations() {
		j := job{Operation: op, face: p.Item.FaceWords(op.Face)}
		j.along, j.across = quantity.Size{Value: op.At.X}, quantity.Size{Value: op.At.Y}
		if i := slices.IndexFunc(p.Item.Features, func(f vehicle.Feature) bool { return f.Ref == op.Ref }); i >= 0 {
			f := p.Item.Features[i]
			j.along.Doubt, j.along.Known = f.Along.Doubt, f.Along.Known
			j.across.Doubt, j.across.Known = f.Across.Doubt, f.Across.Known
		}
		out = append(out, j)
	}
	return out
}

// work compares the work on a part. The number of a fastening is no name to
// match by, since one more in the file shifts them all: the same work is that
// of the same sort on the same face that stands nearest.
func (p *pair) work() {
	before, now := jobs(p.was), jobs(p.is)
	if (p.was.Item == nil) != (p.is.Item == nil) {
		p.only("what it is made from", map[bool]Way{true: Gone, false: Added}[p.is.Item == nil])
		return
	}
	match := matched(before, now)
	for i, is := range now {
		if k := match[i]; k >= 0 {
			p.job(before[k], is)
		} else {
			p.only(is.title(), Added)
		}
	}
	for k, was := range before {
		if !slices.Contains(match, k) {
			p.only(was.title(), Gone)
		}
	}
}

func (j job) title() string { return j.What + ", " + j.face }

// matched gives for each piece of work now the index of what it was, or -1:
// nearest pairs first, each once.
func matched(before, now []job) []int {
	type link struct {
		was, is int
		apart   float64
	}
	var links []link
	for i, is := range now {
		for k, was := range before {
			apart := math.Hypot((is.At.X - was.At.X).Millimetres(), (is.At.Y - was.At.Y).Millimetres())
			if is.What == was.What && is.face == was.face && is.Work == was.Work && apart <= far.Millimetres() {
				links = append(links, link{k, i, apart})
			}
		}
	}
	slices.SortStableFunc(links, func(a, b link) int { return cmp.Compare(a.apart, b.apart) })
	match := slices.Repeat([]int{-1}, len(now))
	for _, l := range links {
		if match[l.is] < 0 && !slices.Contains(match, l.was) {
			match[l.is] = l.was
		}
	}
	return match
}

// job compares one piece of work: its place, and its measures.
func (p *pair) job(was, is job) {
	p.size(is.title()+", along", was.along, is.along)
	p.size(is.title()+", across", was.across, is.across)
	for _, m := range is.Sizes {
		o := slices.IndexFunc(was.Sizes, func(o parts.Measure) bool { return o.Name == m.Name })
		if o < 0 {
			p.only(is.title()+", "+m.Name, Added)
			continue
		}
		p.size(is.title()+", "+m.Name, quantity.Size{Value: was.Sizes[o].Value}, quantity.Size{Value: m.Value})
	}
	for _, o := range was.Sizes {
		if !slices.ContainsFunc(is.Sizes, func(m parts.Measure) bool { return o.Name == m.Name }) {
			p.only(is.title()+", "+o.Name, Gone)
		}
	}
}
