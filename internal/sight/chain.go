package sight

import (
	"math"
	"slices"

	"lostwood/parts/form"
)

// A knot is where pieces of one body may be joined end to end.
type knot struct {
	body int
	x, y int64
}

func knotAt(body int, s spot) knot {
	const grain = 1e3 // knots to a millimetre
	return knot{body, int64(math.Round(s.x * grain)), int64(math.Round(s.y * grain))}
}

// chained joins pieces that meet two by two into lines, and finds the arcs in them.
func (s *Scene) chained(pieces []piece) []Line {
	at := map[knot][]int{}
	for i, p := range pieces {
		for _, k := range []knot{knotAt(p.body, p.a), knotAt(p.body, p.b)} {
			at[k] = append(at[k], i)
		}
	}
	used := make([]bool, len(pieces))
	follow := func(from spot, body int) []spot {
		var run []spot
		for {
			k := knotAt(body, from)
			next := -1
			if len(at[k]) == 2 {
				for _, i := range at[k] {
					if !used[i] {
						next = i
					}
				}
			}
			if next < 0 {
				return run
			}
			used[next] = true
			to := pieces[next].b
			if knotAt(body, to) == k {
				to = pieces[next].a
			}
			run = append(run, to)
			from = to
		}
	}
	var out []Line
	for i, p := range pieces {
		if used[i] {
			continue
		}
		used[i] = true
		ahead := follow(p.b, p.body)
		back := follow(p.a, p.body)
		slices.Reverse(back)
		run := append(append(back, p.a, p.b), ahead...)
		out = append(out, Line{p.body, p.sight, curved(run, s.bodies[p.body].sag)})
	}
	return out
}

// curved makes a path of a run of places: straight where they lie in a line,
// arcs where they lie on a circle that leaves their chords by no more than sag.
func curved(run []spot, sag float64) form.Path {
	if n := len(run) - 1; n > 2 && (piece{a: run[0], b: run[n]}).long() < onLine {
		run = fromCorner(bare(run))
		if half := (len(run) - 1) / 2; round(run, sag) {
			_, b := arcThrough(run[:half+1], sag)
			_, c := arcThrough(run[half:], sag)
			return form.Path{{Point: run[0].point(), Bulge: b}, {Point: run[half].point(), Bulge: c}, {Point: run[0].point()}}
		}
	}
	var out form.Path
	i := 0
	for i < len(run)-1 {
		j, bulge := farthest(run, i, sag)
		out = append(out, form.Vertex{Point: run[i].point(), Bulge: bulge})
		i = j
	}
	return append(out, form.Vertex{Point: run[len(run)-1].point()})
}

// farthest is how far one line or arc reaches from place i, and its bulge.
func farthest(run []spot, i int, sag float64) (j int, bulge float64) {
	j = i + 1
	for j+1 < len(run) && straight(run[i:j+2]) {
		j++
	}
	const chords = 3 // that an arc is told by
	k := i + chords
	if k >= len(run) {
		return j, 0
	}
	for k < len(run) {
		b, ok := arc(run[i:k+1], sag)
		if !ok {
			break
		}
		bulge = b
		k++
	}
	if bulge != 0 && k-1 > j {
		return k - 1, bulge
	}
	return j, 0
}

// onLine is how near a place lies to a line or circle that takes its part.
const onLine = 2e-3

func straight(run []spot) bool {
	a, b := run[0], run[len(run)-1]
	long := math.Hypot(b.x-a.x, b.y-a.y)
	if long < 1e-9 {
		return false
	}
	last := 0.0
	for _, p := range run[1:] {
		along := ((p.x-a.x)*(b.x-a.x) + (p.y-a.y)*(b.y-a.y)) / long
		off := ((p.y-a.y)*(b.x-a.x) - (p.x-a.x)*(b.y-a.y)) / long
		if math.Abs(off) > onLine || along < last {
			return false
		}
		last = along
	}
	return true
}

// Chords of an arc turn by no more than this from one to the next, in radians:
// by more, it is a polygon; and an arc turns by less than a full circle in all.
const (
	corner = 0.75
	whole  = 0.97 * 2 * math.Pi
)

// arc is the bulge of the arc through all places of a run, if there is one.
func arc(run []spot, sag float64) (bulge float64, ok bool) {
	turn, bulge := arcThrough(run, sag)
	return bulge, turn != 0 && math.Abs(turn) <= whole
}

// round says whether a closed run is a circle.
func round(run []spot, sag float64) bool {
	half := (len(run) - 1) / 2
	if half < 3 {
		return false
	}
	t, _ := arcThrough(run[:half+1], sag)
	u, _ := arcThrough(run[half:], sag)
	all := append(append([]spot{}, run[half:]...), run[1:half+1]...)
	v, _ := arcThrough(all[:len(all)-1], sag)
	return t != 0 && u != 0 && v != 0 && math.Abs(math.Abs(t+u)-2*math.Pi) < 1e-2
}

// arcThrough is how far the arc through all places of a run turns, and its
// bulge; nothing where they are on no arc.
func arcThrough(run []spot, sag float64) (turn, bulge float64) {
	a, m, b := run[0], run[len(run)/2], run[len(run)-1]
	ax, ay, bx, by := m.x-a.x, m.y-a.y, b.x-a.x, b.y-a.y
	det := 2 * (ax*by - ay*bx)
	if math.Abs(det) < 1e-9 {
		return 0, 0
	}
	cx := (by*(ax*ax+ay*ay)-ay*(bx*bx+by*by))/det + a.x
	cy := (ax*(bx*bx+by*by)-bx*(ax*ax+ay*ay))/det + a.y
	radius := math.Hypot(a.x-cx, a.y-cy)
	for i, p := range run {
		if math.Abs(math.Hypot(p.x-cx, p.y-cy)-radius) > onLine {
			return 0, 0
		}
		if i == 0 {
			continue
		}
		o := run[i-1]
		step := math.Atan2((o.x-cx)*(p.y-cy)-(o.y-cy)*(p.x-cx), (o.x-cx)*(p.x-cx)+(o.y-cy)*(p.y-cy))
		if math.Abs(step) > corner || step*turn < 0 || radius*(1-math.Cos(step/2)) > sag {
			return 0, 0
		}
		turn += step
	}
	return turn, math.Tan(turn / 4)
}

// bare is a closed run without the places that lie within a straight side.
func bare(run []spot) []spot {
	const inLine = 1e-9
	n := len(run) - 1
	var out []spot
	for i := range n {
		if 1-turnCosine(run[(i+n-1)%n], run[i], run[i+1]) > inLine {
			out = append(out, run[i])
		}
	}
	if len(out) < 3 {
		return run
	}
	return append(out, out[0])
}

// fromCorner starts a closed run at its sharpest corner, so that no side or arc is split.
func fromCorner(run []spot) []spot {
	n := len(run) - 1
	best, at := 2.0, 0
	for i := range n {
		if cos := turnCosine(run[(i+n-1)%n], run[i], run[i+1]); cos < best-1e-6 {
			best, at = cos, i
		}
	}
	out := append([]spot{}, run[at:n]...)
	out = append(out, run[:at]...)
	return append(out, run[at])
}

func turnCosine(a, b, c spot) float64 {
	p, q := piece{a: a, b: b}, piece{a: b, b: c}
	if p.long() < 1e-9 || q.long() < 1e-9 {
		return 1
	}
	return ((b.x-a.x)*(c.x-b.x) + (b.y-a.y)*(c.y-b.y)) / (p.long() * q.long())
}
