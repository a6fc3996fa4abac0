package probe

import "lostwood/parts/form"

// An oval is stepped through, as a turned piece is.
type oval struct {
	box   box
	shape form.Oval
}

func (n *oval) bounds() box { return n.box }

func (n *oval) corners(to *[]box) { *to = append(*to, n.box) }

func (n *oval) cross(p, d vec, out []span) []span { return stepped(n.box, n.contains, p, d, out) }

func (n *oval) contains(p vec) bool {
	f := n.shape.Frame
	q := minus(p, vecOf(f.Origin))
	z := form.Length(dot(dirVec(f.W()), q))
	if z < n.shape.From || z > n.shape.To {
		return false
	}
	e := n.shape.Section(z)
	x := (dot(dirVec(f.U), q) - float64(e.Centre.X)) / float64(e.U)
	y := (dot(dirVec(f.V), q) - float64(e.Centre.Y)) / float64(e.V)
	return x*x+y*y <= 1
}
