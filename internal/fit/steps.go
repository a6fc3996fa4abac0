package fit

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A Step is one thing done in going together.
type Step struct {
	Number  int
	Brings  []string // what is brought to its place, and from where: "near reach, from below"
	Fastens []string // fastenings put in then: "7 near"
	Prime   []string // faces that will be hidden, to be primed first
	Heed    string   // hot work and the like
}

// steps turns the taking apart round.
func (s *strip) steps() []Step {
	var out []Step
	if hot := s.hotFirst(); hot != "" {
		out = append(out, Step{Brings: nil, Heed: hot})
	}
	var now Step
	end := func() {
		if len(now.Brings)+len(now.Fastens) > 0 {
			out = append(out, now)
		}
		now = Step{}
	}
	for i := len(s.off) - 1; i >= 0; i-- {
		t := s.things[s.off[i].thing]
		if t.bolt != nil {
			now.Fastens = append(now.Fastens, t.bolt.ID)
			if t.bolt.What == "rivet" {
				now.Heed = hotRivets
			}
			continue
		}
		if len(now.Fastens) > 0 {
			end()
		}
		if with := s.off[i].with; len(with) > 0 {
			end()
			now.Brings = []string{s.whole(s.off[i]) + ", " + s.off[i].by.from()}
			continue
		}
		now.Brings = append(now.Brings, t.name+", "+s.off[i].by.from())
		now.Prime = append(now.Prime, s.hidden(t)...)
	}
	end()
	for i := range out {
		out[i].Number = i + 1
		slices.Sort(out[i].Fastens)
	}
	return out
}

// whole names what was put together by itself and is brought on in one.
func (s *strip) whole(e event) string {
	var names []string
	for _, i := range append([]int{e.thing}, e.with...) {
		if t := s.things[i]; t.wood() {
			names = append(names, t.name)
		}
	}
	if len(names) == 0 {
		names = []string{s.things[e.thing].name}
	}
	return listed(names) + " as bolted together"
}

const (
	hotTyres  = "The tyres go on hot, before the wheels are hung: hot iron, fire and steam. Gloves, eyes covered, water and a second person at hand; burn no old paint; follow local rules."
	hotRivets = "Rivets set hot burn and fly: gloves and eyes covered, wet the wood beside them."
)

// hotFirst tells of tyres, rings and bands that are shrunk on.
func (s *strip) hotFirst() string {
	for _, i := range s.vehicle.Irons {
		if i.Kind == "tyre" || i.Kind == "band" || i.Kind == "ring" {
			return hotTyres
		}
	}
	return ""
}

// hidden lists the faces of a timber that others will cover.
func (s *strip) hidden(t *thing) []string {
	if t.part == nil || t.part.Item == nil {
		return nil
	}
	by := map[parts.Face][]string{}
	for _, r := range s.check.runs {
		for i, o := range r.stops {
			if o != t {
				continue
			}
			if i > 0 && r.stops[i-1] != nil {
				by[t.faceTo(r, -1)] = add(by[t.faceTo(r, -1)], r.stops[i-1].name)
			}
			if i+1 < len(r.stops) && r.stops[i+1] != nil {
				by[t.faceTo(r, 1)] = add(by[t.faceTo(r, 1)], r.stops[i+1].name)
			}
		}
	}
	var out []string
	for _, f := range parts.Faces() {
		if len(by[f]) > 0 {
			out = append(out, fmt.Sprintf("%s of %s (under %s)", t.part.Item.FaceWords(f), t.the(), strings.Join(by[f], ", ")))
		}
	}
	return out
}

func add(to []string, s string) []string {
	if slices.Contains(to, s) {
		return to
	}
	return append(to, s)
}

// faceTo is the face of a thing that a fastening leaves by (way above 0) or enters by.
func (t *thing) faceTo(r *run, way float64) parts.Face {
	best, face := 0.0, parts.Upper
	for j := range 3 {
		k := 0.0
		for i := range 3 {
			k += t.part.Place.Axes[j][i] * r.f.Way[i]
		}
		if k *= way; k*k > best*best {
			best = k
			face = [3][2]parts.Face{{parts.FirstEnd, parts.SecondEnd}, {parts.FirstSide, parts.SecondSide}, {parts.Under, parts.Upper}}[j][b2i(k > 0)]
		}
	}
	if t.part.Item.Hand == vehicle.Off {
		return mirroredFace(face)
	}
	return face
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// mirroredFace is a face as an item of the other hand names it.
func mirroredFace(f parts.Face) parts.Face {
	switch f {
	case parts.FirstSide:
		return parts.SecondSide
	case parts.SecondSide:
		return parts.FirstSide
	}
	return f
}
