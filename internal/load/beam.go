package load

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// A beam is one straight member bent up and down. Its places count along it
// from its first end, in millimetres; forces are newtons, down positive for
// loads, and w is how far a place goes down.
type beam struct {
	long   float64
	at     []float64 // the nodes, in order; the ends are nodes
	bend   []float64 // E I of each stretch between nodes, N mm2
	shear  []float64 // G A' of each stretch, N
	evenly []float64 // load on each stretch, N/mm
	points []float64 // load at each node, N
	joints []int     // nodes at which others hold it, or it rests
}

// A patch is an even load on part of a beam; from equal to to is a load at one place.
type patch struct {
	from, to float64
	total    float64 // N
}

// A stiffness gives E I and G A' at a place of a beam.
type stiffness func(at float64) (bend, shear float64)

// same is how near two places of a beam count as one, mm.
const same = .5

// lay sets out a beam with nodes at its ends, at its joints, and wherever a
// load begins or ends; no stretch is longer than a tenth of it.
func lay(long float64, s stiffness, joints []float64, loads []patch) *beam {
	at := []float64{0, long}
	for _, j := range joints {
		at = append(at, min(max(j, 0), long))
	}
	for _, p := range loads {
		at = append(at, min(max(p.from, 0), long), min(max(p.to, 0), long))
	}
	slices.Sort(at)
	b := &beam{long: long, at: spaced(at, long/10)}
	for i := 1; i < len(b.at); i++ {
		bend, shear := s((b.at[i-1] + b.at[i]) / 2)
		b.bend, b.shear = append(b.bend, bend), append(b.shear, shear)
	}
	b.evenly, b.points = make([]float64, len(b.at)-1), make([]float64, len(b.at))
	for _, p := range loads {
		b.load(p)
	}
	for _, j := range joints {
		b.joints = append(b.joints, b.node(j))
	}
	return b
}

// spaced drops places that repeat another and puts more where two lie far apart.
func spaced(at []float64, most float64) []float64 {
	out := at[:1:1]
	last := at[len(at)-1]
	for _, x := range at[1:] {
		from := out[len(out)-1]
		switch {
		case x-from < same && x < last:
			continue
		case x-from < same && len(out) > 1: // the end itself stays
			out = out[:len(out)-1]
			from = out[len(out)-1]
		}
		n := int(math.Ceil((x-from)/most - 1e-9))
		for k := 1; k < n; k++ {
			out = append(out, from+(x-from)*float64(k)/float64(n))
		}
		out = append(out, x)
	}
	return out
}

// node is the one nearest to a place.
func (b *beam) node(x float64) int {
	best := 0
	for i, a := range b.at {
		if math.Abs(a-x) < math.Abs(b.at[best]-x) {
			best = i
		}
	}
	return best
}

func (b *beam) load(p patch) {
	from, to := b.node(p.from), b.node(p.to)
	if from == to {
		b.points[from] += p.total
		return
	}
	for i := from; i < to; i++ {
		b.evenly[i] += p.total / (b.at[to] - b.at[from])
	}
}

// stretch is the stiffness of the stretch i: the forces and moments at its ends
// for the ways they go down and turn; Timoshenko's beam.
func (b *beam) stretch(i int) [4][4]float64 {
	l := b.at[i+1] - b.at[i]
	phi := 12 * b.bend[i] / (b.shear[i] * l * l)
	k := b.bend[i] / ((1 + phi) * l * l * l)
	return [4][4]float64{
		{12 * k, 6 * l * k, -12 * k, 6 * l * k},
		{6 * l * k, (4 + phi) * l * l * k, -6 * l * k, (2 - phi) * l * l * k},
		{-12 * k, -6 * l * k, 12 * k, -6 * l * k},
		{6 * l * k, (2 - phi) * l * l * k, -6 * l * k, (4 + phi) * l * l * k},
	}
}

// held are the even load's forces at the ends of stretch i.
func (b *beam) held(i int) [4]float64 {
	l, q := b.at[i+1]-b.at[i], b.evenly[i]
	return [4]float64{q * l / 2, q * l * l / 12, q * l / 2, -q * l * l / 12}
}

// A bowed beam is one whose stiffness was reduced to its joints.
type bowed struct {
	*beam
	stiff *mat.SymDense // N/mm between joints
	push  []float64     // what its loads put on each joint, N
	chol  mat.Cholesky  // of all that is not a joint's way down
	free  []int         // the degrees of freedom in chol
	cross *mat.Dense    // free by joints
	forth []float64     // loads on the free
}

// reduce reduces a beam to its joints; there must be two of them or more, apart.
func (b *beam) reduce() (*bowed, error) {
	n := 2 * len(b.at)
	full := make([]float64, n*n)
	load := make([]float64, n)
	for i, p := range b.points {
		load[2*i] += p
	}
	for i := range b.bend {
		k, f := b.stretch(i), b.held(i)
		for r := range 4 {
			load[2*i+r] += f[r]
			for c := range 4 {
				full[(2*i+r)*n+2*i+c] += k[r][c]
			}
		}
	}
	w := &bowed{beam: b}
	isJoint := map[int]bool{}
	for _, j := range b.joints {
		isJoint[2*j] = true
	}
	for d := range n {
		if !isJoint[d] {
			w.free = append(w.free, d)
		}
	}
	return w, w.condense(full, load, n)
}

func (w *bowed) condense(full, load []float64, n int) error {
	nf, nj := len(w.free), len(w.joints)
	inner := mat.NewSymDense(nf, nil)
	w.cross = mat.NewDense(nf, nj, nil)
	w.forth = make([]float64, nf)
	for r, d := range w.free {
		w.forth[r] = load[d]
		for c := r; c < nf; c++ {
			inner.SetSym(r, c, full[d*n+w.free[c]])
		}
		for c, j := range w.joints {
			w.cross.Set(r, c, full[d*n+2*j])
		}
	}
	if !w.chol.Factorize(inner) {
		return errors.New("a beam that nothing holds in two places")
	}
	var solved mat.Dense
	if err := w.chol.SolveTo(&solved, w.cross); err != nil && !soft(err) {
		return err
	}
	var way mat.VecDense
	if err := w.chol.SolveVecTo(&way, mat.NewVecDense(nf, w.forth)); err != nil && !soft(err) {
		return err
	}
	var less mat.Dense
	less.Mul(w.cross.T(), &solved)
	w.stiff = mat.NewSymDense(nj, nil)
	w.push = make([]float64, nj)
	for r, j := range w.joints {
		w.push[r] = load[2*j] - mat.Dot(w.cross.ColView(r), &way)
		for c := r; c < nj; c++ {
			w.stiff.SetSym(r, c, full[2*j*n+2*w.joints[c]]-(less.At(r, c)+less.At(c, r))/2)
		}
	}
	return nil
}

// soft reports an error that only warns of lost digits.
func soft(err error) bool {
	var c mat.Condition
	return errors.As(err, &c)
}

// A bent is what a beam comes to: how far every node goes down and turns, and
// the force and moment at both ends of each stretch.
type bent struct {
	*beam
	down, turn []float64
	force      []float64 // at the first end of each stretch: shear, N
	moment     []float64 // there, N mm; positive where the under side is pulled
}

// settle works back from how far the joints go down.
func (w *bowed) settle(joints []float64) (*bent, error) {
	right := mat.NewVecDense(len(w.free), nil)
	right.MulVec(w.cross, mat.NewVecDense(len(joints), joints))
	right.SubVec(mat.NewVecDense(len(w.free), w.forth), right)
	var u mat.VecDense
	if err := w.chol.SolveVecTo(&u, right); err != nil && !soft(err) {
		return nil, err
	}
	all := make([]float64, 2*len(w.at))
	for r, d := range w.free {
		all[d] = u.AtVec(r)
	}
	for c, j := range w.joints {
		all[2*j] = joints[c]
	}
	t := &bent{beam: w.beam}
	for i := range w.at {
		t.down, t.turn = append(t.down, all[2*i]), append(t.turn, all[2*i+1])
	}
	for i := range w.bend {
		k, f := w.stretch(i), w.held(i)
		v, m := -f[0], -f[1]
		for c := range 4 {
			v += k[0][c] * all[2*i+c]
			m += k[1][c] * all[2*i+c]
		}
		// v is what the rest does to this end, down; so is m, as a turn.
		t.force, t.moment = append(t.force, -v), append(t.moment, m)
	}
	return t, nil
}

// inner gives the shear and the moment at a place within stretch i.
func (t *bent) inner(i int, x float64) (force, moment float64) {
	d, q := x-t.at[i], t.evenly[i]
	return t.force[i] - q*d, t.moment[i] + t.force[i]*d - q*d*d/2
}

// at gives the greater shear and moment at a place, of what they are either side of it.
func (t *bent) forces(x float64) (force, moment float64) {
	for i := range t.bend {
		if x < t.at[i]-1e-9 || x > t.at[i+1]+1e-9 {
			continue
		}
		f, m := t.inner(i, x)
		if math.Abs(f) > math.Abs(force) {
			force = f
		}
		if math.Abs(m) > math.Abs(moment) {
			moment = m
		}
	}
	return force, moment
}

// turning are the places within stretches where the moment is at its most.
func (t *bent) turning() []float64 {
	var out []float64
	for i, q := range t.evenly {
		if q == 0 {
			continue
		}
		if d := t.force[i] / q; d > 0 && d < t.at[i+1]-t.at[i] {
			out = append(out, t.at[i]+d)
		}
	}
	return out
}
