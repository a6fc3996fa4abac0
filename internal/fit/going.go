package fit

import (
	"fmt"
	"math"
	"slices"

	"lostwood/internal/probe"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// An order in which things go together is found by taking them apart: what is free
// comes off, and where nothing is, a bolt comes out that can. The other way round
// that is how they go together.

// clear is how far a thing has to be moved beyond its own length to be out of the
// way; common practice, no source.
const clear = 4 * quantity.Inch

// Things that are in each other by no more than this slide past all the same: it
// is pared off in the fitting.
const pared = 1.6

// A side is one of six ways to move.
type side6 struct {
	axis int
	way  float64
}

func sides() [6]side6 {
	return [6]side6{{2, 1}, {2, -1}, {0, 1}, {0, -1}, {1, 1}, {1, -1}}
}

func (s side6) from() string {
	switch {
	case s.axis == 2 && s.way > 0:
		return "from above"
	case s.axis == 2:
		return "from below"
	case s.axis == 0 && s.way > 0:
		return "from the fore"
	case s.axis == 0:
		return "from behind"
	case s.way > 0:
		return "from the near side"
	}
	return "from the off side"
}

// A strip is the vehicle as it is taken apart.
type strip struct {
	*check
	there   []bool // by thing
	round   [][]int
	runs    map[*thing]*run
	cores   map[int]*probe.Body // bolts without their nuts
	stopped map[[4]int]bool
	why     [][6]int // by thing and side: what was last found in its way
	access  []*access
	held    [][]int     // by thing: the fastenings through it
	own     map[int]int // by fastening: what it holds that its own head cannot pass
	off     []event
}

// An event is one thing taken off, or several that are bolted together already.
type event struct {
	thing int
	with  []int // the others of a group
	by    side6
}

func (c *check) goTogether() {
	s := c.newStrip()
	s.apart()
	c.report.Steps = s.steps()
}

// apart takes off all that is there.
func (s *strip) apart() {
	for s.next() || s.split() || s.force() {
		continue
	}
}

func (c *check) newStrip() *strip {
	n := len(c.things)
	s := &strip{
		check: c, there: make([]bool, n), round: make([][]int, n), runs: map[*thing]*run{}, cores: map[int]*probe.Body{},
		stopped: map[[4]int]bool{}, own: map[int]int{}, why: make([][6]int, n), access: make([]*access, n), held: make([][]int, n),
	}
	at := map[*thing]int{}
	for i, t := range c.things {
		s.there[i], at[t] = true, i
		for k := range s.why[i] {
			s.why[i][k] = -1
		}
	}
	s.round = c.about6()
	for _, r := range c.runs {
		if r.self == nil {
			continue
		}
		i := at[r.self]
		s.runs[r.self] = r
		s.cores[i] = probe.New(r.core())
		for _, t := range r.stops {
			if t != nil {
				s.held[at[t]] = append(s.held[at[t]], i)
			}
		}
	}
	return s
}

// about6 lists, for every thing, what it could meet when moved any of the six ways.
func (c *check) about6() [][]int {
	out := make([][]int, len(c.things))
	far := float64(clear)
	for i, a := range c.things {
		for j, b := range c.things {
			if i == j {
				continue
			}
			beside := 0
			near := true
			for axis := range 3 {
				al, ah := reach(a.box, axis)
				bl, bh := reach(b.box, axis)
				if bl < ah && al < bh {
					beside++
				} else if long := ah - al; bl > ah+long+far || bh < al-long-far {
					near = false
				}
			}
			if near && beside >= 2 {
				out[i] = append(out[i], j)
			}
		}
	}
	return out
}

// core is a fastening as it is put in: without its nut and washer.
func (r *run) core() form.Volume {
	from, to := r.stack()
	h := r.size
	switch r.f.What {
	case "clip":
		return r.clip(to)
	case "screw":
		return r.rod(h.shank, from, to)
	}
	return form.Union{r.rod(h.shank, from, to+h.washer+h.nutDeep+h.thread), r.rod(h.headWide, from-h.headDeep, from)}
}

// blocks reports whether thing j stops thing i on one side.
func (s *strip) blocks(i, j, k int) bool {
	d := sides()[k]
	key := [4]int{i, j, k, 0}
	if was, ok := s.stopped[key]; ok {
		return was
	}
	a, b := s.things[i], s.things[j]
	lo, hi := reach(a.box, d.axis)
	body := a.body
	if core := s.cores[i]; core != nil {
		body = core
	}
	is := probe.Stops(body, b.body, d.axis, d.way, hi-lo+float64(clear), pared)
	s.stopped[key] = is
	return is
}

// free finds a side on which a timber or iron comes off.
func (s *strip) free(i int) (side6, bool) {
	for k := range 6 {
		if j := s.why[i][k]; j >= 0 && s.there[j] {
			continue
		}
		if s.why[i][k] = s.inWay(i, k, nil); s.why[i][k] < 0 {
			return sides()[k], true
		}
	}
	return side6{}, false
}

// inWay is something that is there and stops thing i on a side, or -1.
func (s *strip) inWay(i, k int, but []*thing) int {
	for _, j := range s.round[i] {
		if s.there[j] && !slices.Contains(but, s.things[j]) && !s.told(i, j) && s.blocks(i, j, k) {
			return j
		}
	}
	return -1
}

// told reports whether two things were found in each other: what that stops is told
// by it already.
func (s *strip) told(i, j int) bool {
	return s.inEachOther[pair{s.things[min(i, j)], s.things[max(i, j)]}]
}

// next takes one thing off; it reports whether there was one that could be.
func (s *strip) next() bool {
	for i := len(s.things) - 1; i >= 0; i-- { // what is written first is what the rest is built on
		t := s.things[i]
		if !s.there[i] || t.bolt != nil || s.bolts(i) > 0 {
			continue
		}
		if by, ok := s.free(i); ok {
			s.take(i, by)
			return true
		}
	}
	return s.loosen()
}

// bolts counts what still holds a thing.
func (s *strip) bolts(i int) int {
	n := 0
	for _, f := range s.held[i] {
		if s.there[f] {
			n++
		}
	}
	return n
}

func (s *strip) take(i int, by side6) {
	s.there[i] = false
	s.off = append(s.off, event{thing: i, by: by})
}

// loosen takes out the bolts of the thing that has the fewest, all of which come
// out; else any bolt that does.
func (s *strip) loosen() bool {
	best, fewest := -1, math.MaxInt
	for i := len(s.things) - 1; i >= 0; i-- {
		if !s.there[i] || s.things[i].bolt != nil {
			continue
		}
		n, all := 0, true
		for _, f := range s.held[i] {
			if s.there[f] {
				n++
				all = all && s.comesOut(f)
			}
		}
		if all && n > 0 && n < fewest {
			best, fewest = i, n
		}
	}
	if best >= 0 {
		for _, f := range s.held[best] {
			if s.there[f] {
				s.take(f, s.backOut(f))
			}
		}
		return true
	}
	for i := len(s.things) - 1; i >= 0; i-- {
		if s.there[i] && s.things[i].bolt != nil && s.comesOut(i) {
			s.take(i, s.backOut(i))
			return true
		}
	}
	return false
}

// backOut is the way a fastening is drawn: back over its head.
func (s *strip) backOut(f int) side6 {
	w := s.things[f].bolt.Way
	for axis := range 3 {
		if math.Abs(w[axis]) > 0.5 {
			return side6{axis, -math.Copysign(1, w[axis])}
		}
	}
	return side6{}
}

// A hitch is why a fastening cannot be put in.
type hitch int

const (
	noHitch hitch = iota
	cannotEnter
	cannotTurn
)

func (s *strip) comesOut(f int) bool {
	h, _ := s.hitched(f)
	return h == noHitch
}

// hitched is what keeps a fastening from coming out as things stand.
func (s *strip) hitched(f int) (hitch, int) {
	t := s.things[f]
	r := s.runs[t]
	back := s.backOut(f)
	for k, d := range sides() {
		if d == back {
			if s.why[f][k] >= 0 && s.there[s.why[f][k]] {
				return cannotEnter, s.why[f][k]
			}
			if s.why[f][k] = s.inWay(f, k, r.stops); s.why[f][k] >= 0 {
				return cannotEnter, s.why[f][k]
			}
			j, known := s.own[f]
			if !known {
				j = s.ownWay(f, d)
				s.own[f] = j
			}
			if j >= 0 {
				return cannotEnter, j
			}
		}
	}
	if s.access[f] == nil {
		s.access[f] = s.newAccess(f)
	}
	if by, ok := s.access[f].open(s.there); !ok {
		return cannotTurn, by
	}
	return noHitch, -1
}

// force tells of one thing that cannot come off, and takes it off all the same, so
// that what hangs on it is not told besides. It reports whether there was one.
func (s *strip) force() bool {
	at := slices.Index(s.there, true)
	if at < 0 {
		return false
	}
	seen := map[int]bool{}
	for !seen[at] { // from each to what keeps it, until it goes round
		seen[at] = true
		if next := s.keeper(at); next >= 0 {
			at = next
		}
	}
	if s.things[at].bolt == nil && s.bolts(at) > 0 {
		at = s.keeper(at)
	}
	by := sides()[0]
	if s.things[at].bolt != nil {
		s.trappedBolt(at)
		by = s.backOut(at)
	} else {
		s.trappedPart(at)
	}
	s.take(at, by)
	return true
}

// keeper is what keeps a thing from coming off: what is in its way, or a bolt that
// holds it and does not come out.
func (s *strip) keeper(i int) int {
	if s.things[i].bolt != nil {
		_, by := s.hitched(i)
		return by
	}
	for _, f := range s.held[i] {
		if s.there[f] && !s.comesOut(f) {
			return f
		}
	}
	for _, f := range s.held[i] {
		if s.there[f] {
			return f
		}
	}
	s.free(i)
	for k := range 6 {
		if j := s.why[i][k]; j >= 0 && s.there[j] {
			return j
		}
	}
	return -1
}

// ownWay is one of the things that a fastening holds in whose way its head stands as
// it is drawn: a bolt cannot be put into a slot that is lower than it is long.
func (s *strip) ownWay(f int, d side6) int {
	r := s.runs[s.things[f]]
	from, to := r.stack()
	if r.f.What == "clip" || r.f.What == "screw" || r.size.headDeep <= 0 {
		return -1
	}
	head := probe.New(r.rod(r.size.headWide, from-r.size.headDeep, from))
	for _, t := range r.stops {
		if t == nil {
			continue
		}
		if j := slices.Index(s.things, t); probe.Stops(head, t.body, d.axis, d.way, float64(to-from), pared) {
			return j
		}
	}
	return -1
}

func (s *strip) trappedBolt(f int) {
	t := s.things[f]
	why, by := s.hitched(f)
	if why == noHitch {
		return
	}
	m := vehicle.Remark{
		Check: "bolt entry", Gravity: vehicle.CannotGo, Subject: t.name, Place: placeOf(s.runs[t].head),
		Do: fmt.Sprintf("Turn the bolt round, or put it in before %s is there and say what is bolted to what otherwise.", s.things[by].the()),
	}
	if s.things[by].bolt != nil {
		m.Do = "Turn one of the two bolts round, or move it."
	}
	from, to := s.runs[t].stack()
	switch {
	case why == cannotEnter:
		m.Says = fmt.Sprintf("The bolt of %s cannot be entered: %s stands before its head, and it is %s long.", t.name, s.things[by].the(), s.show(to-from))
		m.Measured, m.Limit = vehicle.OfLength(s.room(f, by)), vehicle.OfLength(to-from)
	default:
		m.Check = "spanner"
		m.Says = fmt.Sprintf("The nut of %s cannot be turned: %s leaves no room for a spanner, from the side or from the end.", t.name, s.things[by].the())
		m.Place = placeOf(s.runs[t].along(to))
	}
	s.about(&m, t, s.things[by])
	s.say(m)
}

// room is how far there is nothing before a bolt's head.
func (s *strip) room(f, by int) quantity.Length {
	r := s.runs[s.things[f]]
	from, _ := r.stack()
	at := r.along(from - r.size.headDeep)
	least := quantity.Length(math.Inf(1))
	u, v := square(r.way)
	for _, k := range [...][2]quantity.Length{{}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		p := at.Plus(u, k[0]*r.size.headWide/2).Plus(v, k[1]*r.size.headWide/2)
		for _, c := range s.things[by].body.Along(p, r.way.Opposite()) {
			if c.To > 0 {
				least = min(least, max(c.From, 0))
			}
		}
	}
	if math.IsInf(float64(least), 0) {
		return 0
	}
	return least
}

func (s *strip) trappedPart(i int) {
	t := s.things[i]
	var by []*thing
	var names []string
	for k := range 6 {
		if j := s.why[i][k]; j >= 0 && s.there[j] && !slices.Contains(by, s.things[j]) {
			by, names = append(by, s.things[j]), append(names, s.things[j].the())
		}
	}
	if len(by) == 0 {
		return
	}
	m := vehicle.Remark{
		Check: "trapped", Gravity: vehicle.CannotGo, Subject: t.name,
		Says:  fmt.Sprintf("%s cannot be brought to its place in one straight move from any side: %s are in its way.", capital(t.the()), listed(names)),
		Do:    "See whether it can be tilted in, or make one of them in two pieces, or open a joint to one side.",
		Place: placeOf(vecOf(middle(t.box))),
	}
	if len(names) == 1 {
		m.Says = fmt.Sprintf("%s cannot be brought to its place in one straight move from any side: %s is in its way.", capital(t.the()), names[0])
	}
	s.about(&m, append([]*thing{t}, by...)...)
	s.say(m)
}

func middle(b form.Box) [3]float64 {
	lo, hi := spot(b.Min), spot(b.Max)
	return [3]float64{(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2, (lo[2] + hi[2]) / 2}
}
