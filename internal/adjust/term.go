package adjust

import "math"

// A Partial is one entry of a gradient or of a direction.
type Partial struct {
	Unknown int
	Slope   float64
}

// A Term is a value with its gradient: entries by rising unknown, none repeated,
// none zero. Arithmetic on Terms is forward differentiation.
type Term struct {
	Value  float64
	Slopes []Partial
}

// Constant is a Term that no unknown changes.
func Constant(v float64) Term { return Term{Value: v} }

// At is the unknown itself. An unknown that x lacks gives a NaN with that unknown's
// slope, which Solve reports.
func At(x []float64, unknown int) Term {
	v := math.NaN()
	if unknown >= 0 && unknown < len(x) {
		v = x[unknown]
	}
	return Term{v, []Partial{{unknown, 1}}}
}

// Plus returns t + u.
func (t Term) Plus(u Term) Term { return blend(t.Value+u.Value, t.Slopes, 1, u.Slopes, 1) }

// Minus returns t - u.
func (t Term) Minus(u Term) Term { return blend(t.Value-u.Value, t.Slopes, 1, u.Slopes, -1) }

// Times returns t u.
func (t Term) Times(u Term) Term {
	return blend(t.Value*u.Value, t.Slopes, u.Value, u.Slopes, t.Value)
}

// Over returns t / u.
func (t Term) Over(u Term) Term {
	q := t.Value / u.Value
	return blend(q, t.Slopes, 1/u.Value, u.Slopes, -q/u.Value)
}

// Scaled returns k t.
func (t Term) Scaled(k float64) Term { return chain(k*t.Value, t, k) }

// Sqrt returns the square root of t.
func (t Term) Sqrt() Term {
	r := math.Sqrt(t.Value)
	return chain(r, t, 1/(2*r))
}

// Sin returns the sine of t, in radians.
func (t Term) Sin() Term { return chain(math.Sin(t.Value), t, math.Cos(t.Value)) }

// Cos returns the cosine of t, in radians.
func (t Term) Cos() Term { return chain(math.Cos(t.Value), t, -math.Sin(t.Value)) }

// Tan returns the tangent of t, in radians.
func (t Term) Tan() Term {
	v := math.Tan(t.Value)
	return chain(v, t, 1+v*v)
}

// Exp returns e to the power t.
func (t Term) Exp() Term {
	v := math.Exp(t.Value)
	return chain(v, t, v)
}

// Atan2 returns the angle of the point (u, t) from the u axis, in radians.
func (t Term) Atan2(u Term) Term {
	q := t.Value*t.Value + u.Value*u.Value
	return blend(math.Atan2(t.Value, u.Value), t.Slopes, u.Value/q, u.Slopes, -t.Value/q)
}

// chain is the chain rule for a function of one Term.
func chain(v float64, t Term, slope float64) Term {
	return blend(v, t.Slopes, slope, nil, 0)
}

// blend gives v the gradient ka a + kb b. A slope that is zero is left out, so that
// it does not tie together parts of a network that have nothing to do with each
// other; so is one that cancels down to rounding.
func blend(v float64, a []Partial, ka float64, b []Partial, kb float64) Term {
	out := make([]Partial, 0, len(a)+len(b))
	for len(a) > 0 || len(b) > 0 {
		var p Partial
		switch {
		case len(b) == 0 || len(a) > 0 && a[0].Unknown < b[0].Unknown:
			p = Partial{a[0].Unknown, ka * a[0].Slope}
			a = a[1:]
		case len(a) == 0 || b[0].Unknown < a[0].Unknown:
			p = Partial{b[0].Unknown, kb * b[0].Slope}
			b = b[1:]
		default:
			p = Partial{a[0].Unknown, cancel(ka*a[0].Slope, kb*b[0].Slope)}
			a, b = a[1:], b[1:]
		}
		if p.Slope != 0 {
			out = append(out, p)
		}
	}
	return Term{v, out}
}

// cancel adds, and gives zero where only rounding is left of the two.
func cancel(a, b float64) float64 {
	const rounding = 0x1p-51
	s := a + b
	if math.Abs(s) <= rounding*math.Max(math.Abs(a), math.Abs(b)) {
		return 0
	}
	return s
}
