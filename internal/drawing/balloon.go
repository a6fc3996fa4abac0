package drawing

import (
	"cmp"
	"math"
	"slices"

	"lostwood/internal/sheet"
	"lostwood/parts/form"
)

// A balloon is a thing's mark, and the place on a view that it points to.
type balloon struct {
	thing *thing
	to    form.Point // on paper
}

// Sizes of balloons on paper, in millimetres.
const (
	balloonRadius Length = 3.6
	balloonStep   Length = 8.2
)

// A shelf is a row of balloons along a view.
type shelf struct {
	view     int
	y        Length
	from, to Length
	bars     []Length // where lines pass through it
	row      []balloon
}

// slots are the places for balloons on the shelf, clear of the lines through it.
func (h *shelf) slots() []Length {
	const (
		free = balloonRadius + 0.8
		hair = 1e-6 // what rounding may leave of free beside a line just passed
	)
	var out []Length
	x := h.from
	for x <= h.to {
		barred := false
		for _, bar := range h.bars {
			if bar > x-free+hair && bar < x+free {
				x, barred = bar+free, true
			}
		}
		if !barred {
			out = append(out, x)
			x += balloonStep
		}
	}
	return out
}

// far is how far a place lies from the shelf, up or down.
func (h *shelf) far(p form.Point) Length { return Length(math.Abs(float64(p.Y - h.y))) }

// balloons draws a shelf's balloons with a leader from each to what it stands
// for. They stand in the order of those places, as near as can be, and change
// about where leaders would cross.
func (b board) balloons(h shelf) {
	row := slices.Clone(h.row)
	slices.SortStableFunc(row, func(p, q balloon) int { return cmp.Compare(p.to.X, q.to.X) })
	set := matched(row, h.slots())
	for changed, rounds := true, 0; changed && rounds < len(row); rounds++ {
		changed = false
		for i := range row {
			for k := i + 1; k < len(row); k++ {
				if crossing(at(set[i], h.y), row[i].to, at(set[k], h.y), row[k].to) {
					set[i], set[k] = set[k], set[i]
					changed = true
				}
			}
		}
	}
	for i, r := range row {
		b.balloon(r, at(set[i], h.y))
	}
}

// matched gives each balloon of a row, in order, its own place of those there
// are, so that all together are as near as can be. There are enough places.
func matched(row []balloon, places []Length) []Length {
	n, m := len(row), len(places)
	// cost[i][j] is the least for the first i balloons in the first j places.
	cost := make([][]float64, n+1)
	for i := range cost {
		cost[i] = make([]float64, m+1)
		for j := range cost[i] {
			switch {
			case i == 0:
			case j < i:
				cost[i][j] = math.Inf(1)
			default:
				cost[i][j] = math.Min(cost[i][j-1], cost[i-1][j-1]+apartBy(row[i-1], places[j-1]))
			}
		}
	}
	out := make([]Length, n)
	for i, j := n, m; i > 0; j-- {
		if cost[i][j] < cost[i][j-1] {
			out[i-1] = places[j-1]
			i--
		}
	}
	return out
}

func apartBy(b balloon, place Length) float64 {
	d := float64(b.to.X - place)
	return d * d
}

// crossing says whether the lines from a to b and from c to d cross.
func crossing(a, b, c, d form.Point) bool {
	side := func(p, q, r form.Point) Length { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return (side(a, b, c) > 0) != (side(a, b, d) > 0) && (side(c, d, a) > 0) != (side(c, d, b) > 0)
}

// balloon draws one: round for timber, square for iron, six-sided for a fastening.
func (b board) balloon(r balloon, c form.Point) {
	dx, dy := float64(r.to.X-c.X), float64(r.to.Y-c.Y)
	long := math.Hypot(dx, dy)
	ux, uy := Length(dx/long), Length(dy/long)
	edge := balloonRadius
	switch r.thing.sort {
	case newTimber:
		b.Circle(sheet.Narrow, c, balloonRadius)
	case iron:
		side := balloonRadius * 0.9
		edge = side / Length(math.Max(math.Abs(float64(ux)), math.Abs(float64(uy))))
		b.polygon(at(c.X-side, c.Y-side), at(c.X+side, c.Y-side), at(c.X+side, c.Y+side), at(c.X-side, c.Y+side))
	default:
		var corners []form.Point
		for k := range 6 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 3)
			corners = append(corners, at(c.X+balloonRadius*Length(cos), c.Y+balloonRadius*Length(sin)))
		}
		b.polygon(corners...)
		// The leader starts on the side it leaves by.
		angle := math.Mod(math.Atan2(dy, dx)+2*math.Pi, math.Pi/3) - math.Pi/6
		edge = balloonRadius * Length(math.Cos(math.Pi/6)/math.Cos(angle))
	}
	b.middled(at(c.X, c.Y-small/2), r.thing.mark, small, sheet.Heavy)
	b.Straight(sheet.Narrow, at(c.X+ux*edge, c.Y+uy*edge), r.to)
	b.Circle(sheet.Black, r.to, 0.45)
}

func (b board) polygon(p ...form.Point) {
	b.Lines = append(b.Lines, sheet.Line{Pen: sheet.Narrow, Closed: true, Run: form.Polygon(p...)})
}
