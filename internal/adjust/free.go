package adjust

import (
	"cmp"
	"math"
	"slices"
)

// A Direction is a way in which the unknowns can move together without any
// observation noticing: entries by rising unknown, the largest of them 1.
type Direction []Partial

// findFree finds the directions nothing holds, and makes them short to read.
func (s *Solution) findFree() {
	s.moves = make([][]int, len(s.factor.unknown))
	basis := s.factor.null()
	for _, z := range basis {
		for k, p := range z {
			z[k].Slope = math.Ldexp(p.Slope, -s.design.exp[p.Unknown])
		}
		slices.SortFunc(z, byUnknown)
	}
	reduce(basis)
	shorten(basis)
	for _, z := range basis {
		s.Free = append(s.Free, one(z))
	}
	slices.SortFunc(s.Free, func(a, b Direction) int {
		return slices.CompareFunc(a, b, func(p, q Partial) int {
			return cmp.Or(cmp.Compare(p.Unknown, q.Unknown), cmp.Compare(q.Slope, p.Slope))
		})
	})
	for k, z := range s.Free {
		for _, p := range z {
			s.moves[p.Unknown] = append(s.moves[p.Unknown], k)
		}
	}
}

func byUnknown(a, b Partial) int { return cmp.Compare(a.Unknown, b.Unknown) }

// reduce turns a basis into one in which every vector owns an unknown, its largest,
// that no other vector moves: elimination with the largest pivot.
func reduce(basis [][]Partial) {
	users := map[int][]int{} // vectors by unknown; looked up, never walked
	for v, z := range basis {
		for _, p := range z {
			users[p.Unknown] = append(users[p.Unknown], v)
		}
	}
	done := make([]bool, len(basis))
	owned := map[int]bool{}
	for range basis {
		v, k := largest(basis, done, owned)
		done[v] = true
		pivot := basis[v][k]
		owned[pivot.Unknown] = true
		for i := range basis[v] {
			basis[v][i].Slope /= pivot.Slope
		}
		for _, u := range slices.Clone(users[pivot.Unknown]) {
			if u != v {
				basis[u] = without(basis[u], basis[v], pivot.Unknown)
				for _, p := range basis[u] {
					if !slices.Contains(users[p.Unknown], u) {
						users[p.Unknown] = append(users[p.Unknown], u)
					}
				}
			}
		}
	}
}

// one scales a vector so that its largest entry is 1.
func one(z []Partial) Direction {
	most := slices.MaxFunc(z, func(a, b Partial) int { return cmp.Compare(math.Abs(a.Slope), math.Abs(b.Slope)) })
	for i := range z {
		z[i].Slope /= most.Slope
	}
	return z
}

// shorten takes from each vector multiples of others, as long as entries go.
func shorten(basis [][]Partial) {
	const passes = 8
	for range passes {
		users := map[int][]int{} // vectors by unknown; looked up, never walked
		for v, z := range basis {
			for _, p := range z {
				users[p.Unknown] = append(users[p.Unknown], v)
			}
		}
		better := false
		for v := range basis {
			var others []int
			for _, p := range basis[v] {
				others = append(others, users[p.Unknown]...)
			}
			slices.Sort(others)
			for _, u := range slices.Compact(others) {
				if u == v {
					continue
				}
				if z, shorter := shortened(basis[v], basis[u]); shorter {
					basis[v], better = z, true
				}
			}
		}
		if !better {
			return
		}
	}
}

// shortened takes from a the multiple of b that clears most entries, if fewer are
// left.
func shortened(a, b []Partial) ([]Partial, bool) {
	best, clears := -1, 0
	shared := 0
	for k, p := range a {
		i, found := slices.BinarySearchFunc(b, p, byUnknown)
		if !found {
			continue
		}
		shared++
		n, ratio := 0, p.Slope/b[i].Slope
		for _, q := range a {
			if j, found := slices.BinarySearchFunc(b, q, byUnknown); found && cancels(q.Slope, ratio*b[j].Slope) {
				n++
			}
		}
		if n > clears {
			best, clears = k, n
		}
	}
	if best < 0 || clears <= len(b)-shared {
		return a, false
	}
	return without(a, b, a[best].Unknown), true
}

// cancels says whether a - b is only rounding.
func cancels(a, b float64) bool {
	const rounding = 1e-9
	return math.Abs(a-b) <= rounding*math.Max(math.Abs(a), math.Abs(b))
}

// largest finds the largest entry, of the vectors not done, at an unknown not owned.
func largest(basis [][]Partial, done []bool, owned map[int]bool) (v, k int) {
	most := -1.0
	for i, z := range basis {
		if done[i] {
			continue
		}
		for e, p := range z {
			if a := math.Abs(p.Slope); a > most && !owned[p.Unknown] {
				v, k, most = i, e, a
			}
		}
	}
	return v, k
}

// without takes from a the multiple of b that clears a's entry at the unknown.
func without(a, b []Partial, unknown int) []Partial {
	k, inA := slices.BinarySearchFunc(a, Partial{Unknown: unknown}, byUnknown)
	l, inB := slices.BinarySearchFunc(b, Partial{Unknown: unknown}, byUnknown)
	if !inA || !inB {
		return a
	}
	var out []Partial
	ratio := a[k].Slope / b[l].Slope
	for len(a) > 0 || len(b) > 0 {
		switch {
		case len(b) == 0 || len(a) > 0 && a[0].Unknown < b[0].Unknown:
			out, a = append(out, a[0]), a[1:]
		case len(a) == 0 || b[0].Unknown < a[0].Unknown:
			out, b = append(out, Partial{b[0].Unknown, -ratio * b[0].Slope}), b[1:]
		default:
			x, y := a[0].Slope, ratio*b[0].Slope
			if !cancels(x, y) && a[0].Unknown != unknown {
				out = append(out, Partial{a[0].Unknown, x - y})
			}
			a, b = a[1:], b[1:]
		}
	}
	return out
}

// holds says whether no free direction changes the function with gradient t.
func (s *Solution) holds(t []Partial) bool {
	const rounding = 1e-8
	var ways []int
	for _, p := range t {
		ways = append(ways, s.moves[p.Unknown]...)
	}
	slices.Sort(ways)
	for _, k := range slices.Compact(ways) {
		sum, size := 0.0, 0.0
		for _, p := range t {
			if i, found := slices.BinarySearchFunc(s.Free[k], p, byUnknown); found {
				sum += p.Slope * s.Free[k][i].Slope
				size += math.Abs(p.Slope * s.Free[k][i].Slope)
			}
		}
		if math.Abs(sum) > rounding*size {
			return false
		}
	}
	return true
}
