package form_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/parts/form"
)

func upright() form.Frame { return form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}} }

// What an oval holds against bodies whose content the geometry books give: a
// cone's frustum, an elliptic cylinder, and a cylinder that leans.
func TestOvalContent(t *testing.T) {
	for name, c := range map[string]struct {
		first, last form.Ellipse
		want        float64
	}{
		"cone's frustum":    {form.Ellipse{U: 28, V: 28}, form.Ellipse{U: 18, V: 18}, math.Pi * 300 * (28*28 + 28*18 + 18*18) / 3},
		"elliptic cylinder": {form.Ellipse{U: 20, V: 12}, form.Ellipse{U: 20, V: 12}, math.Pi * 20 * 12 * 300},
		"elliptic cone":     {form.Ellipse{U: 20, V: 12}, form.Ellipse{U: 10, V: 6}, math.Pi * 300 / 3 * (20*12 + 10*6 + math.Sqrt(20*12*10*6))},
		"leaning":           {form.Ellipse{U: 20, V: 12}, form.Ellipse{Centre: form.Point{X: 9, Y: -4}, U: 20, V: 12}, math.Pi * 20 * 12 * 300},
	} {
		t.Run(name, func(t *testing.T) {
			o := form.Oval{Frame: upright(), From: -100, To: 200, First: c.first, Last: c.last}
			require.NoError(t, o.Valid())
			require.InEpsilon(t, c.want, float64(o.Content()), 1e-12)
		})
	}
}

// Slices summed by the midpoint rule, which knows nothing of the formula.
func TestOvalContentBySlices(t *testing.T) {
	o := form.Oval{Frame: upright(), From: 10, To: 410, First: form.Ellipse{U: 30, V: 19}, Last: form.Ellipse{Centre: form.Point{Y: 3}, U: 15, V: 17}}
	const n = 20000
	sum := 0.0
	for i := range n {
		e := o.Section(o.From + (o.To-o.From)*form.Length(float64(i)+.5)/n)
		sum += math.Pi * float64(e.U) * float64(e.V) * float64(o.To-o.From) / n
	}
	require.InEpsilon(t, sum, float64(o.Content()), 1e-8)
}

func TestOvalRefusals(t *testing.T) {
	good := form.Oval{Frame: upright(), From: 0, To: 300, First: form.Ellipse{U: 20, V: 12}, Last: form.Ellipse{U: 10, V: 9}}
	require.NoError(t, good.Valid())
	for want, spoil := range map[string]func(*form.Oval){
		"not a number":       func(o *form.Oval) { o.First.Centre.X = form.Length(math.NaN()) },
		"is not a":           func(o *form.Oval) { o.To = form.Length(math.Inf(1)) },
		"must lie beyond":    func(o *form.Oval) { o.To = 0 },
		"has no width":       func(o *form.Oval) { o.Last.V = 0 },
		"the first section ": func(o *form.Oval) { o.First.U = -3 },
	} {
		o := good
		spoil(&o)
		require.ErrorContains(t, o.Valid(), want)
	}
}

// ovalHolds says by the words of Oval's own comment whether it holds a place
// in its frame.
func ovalHolds(o form.Oval, x, y, z float64) bool {
	e := o.Section(form.Length(z))
	px, py := (x-float64(e.Centre.X))/float64(e.U), (y-float64(e.Centre.Y))/float64(e.V)
	return z >= float64(o.From) && z <= float64(o.To) && px*px+py*py <= 1
}

func TestMirroredOval(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, c := math.Sincos(rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle"))
		span := func(name string) form.Length { return form.Length(rapid.Float64Range(3, 15).Draw(t, name)) }
		o := form.Oval{
			Frame: form.Frame{Origin: form.Vec{X: 5, Y: 8, Z: -3}, U: form.Dir{X: c, Y: s}, V: form.Dir{X: -s * .6, Y: c * .6, Z: .8}},
			From:  -12, To: 20,
			First: form.Ellipse{Centre: form.Point{X: 2, Y: -3}, U: span("u"), V: span("v")},
			Last:  form.Ellipse{Centre: form.Point{Y: 4}, U: span("last u"), V: span("last v")},
		}
		const wide = 31
		m := form.Mirrored(o, wide)
		box := form.Bounds(o)
		for range 60 {
			p := form.Vec{
				X: form.Length(rapid.Float64Range(-25, 35).Draw(t, "x")),
				Y: form.Length(rapid.Float64Range(-25, 35).Draw(t, "y")),
				Z: form.Length(rapid.Float64Range(-25, 35).Draw(t, "z")),
			}
			in := holds(o, p)
			require.Equal(t, in, holds(m, form.Vec{X: p.X, Y: wide - p.Y, Z: p.Z}))
			if in {
				require.True(t, p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y &&
					p.Z >= box.Min.Z && p.Z <= box.Max.Z, "%v outside %v", p, box)
			}
		}
	})
}
