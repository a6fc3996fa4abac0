package mesh

// fix makes the border from a to b one of the net's, turning those in its way.
func (t *net) fix(a, b int) error {
	if t.hold(a, b) {
		return nil
	}
	crossed, err := t.crossed(a, b)
	if err != nil {
		return err
	}
	var fresh [][2]int
	for guard := 50 + 20*len(crossed)*len(crossed); len(crossed) > 0; guard-- {
		if guard < 0 {
			return errTangled
		}
		e := crossed[0]
		crossed = crossed[1:]
		i, k := t.find(e[0], e[1])
		q := t.tris[i]
		r := t.tris[q.n[k]]
		p, d := q.v[k], r.v[r.across(i)]
		if q.fixed[k] {
			return errTangled
		}
		if !t.convex(p, e[0], d, e[1]) {
			crossed = append(crossed, e)
			continue
		}
		t.flip(i, k)
		if p != a && p != b && d != a && d != b && t.turn(a, b, p)*t.turn(a, b, d) < 0 {
			crossed = append(crossed, [2]int{p, d})
		} else {
			fresh = append(fresh, [2]int{p, d})
		}
	}
	if !t.hold(a, b) {
		return errTangled
	}
	t.work = append(t.work, fresh...)
	t.settle()
	return nil
}

// hold fixes the border from a to b if it is there.
func (t *net) hold(a, b int) bool {
	i, k := t.find(a, b)
	if i < 0 {
		return false
	}
	t.tris[i].fixed[k] = true
	j := t.tris[i].n[k]
	t.tris[j].fixed[t.tris[j].across(i)] = true
	return true
}

// crossed lists the borders that the way from a to b crosses, in order.
func (t *net) crossed(a, b int) ([][2]int, error) {
	i, k := t.of[a], 0
	for first := i; ; {
		q := &t.tris[i]
		k = q.index(a)
		left, right := t.turn(a, b, q.v[(k+2)%3]), t.turn(a, b, q.v[(k+1)%3])
		if right < 0 && left > 0 {
			break
		}
		if right == 0 && t.ahead(a, b, q.v[(k+1)%3]) {
			return nil, errTangled // a corner lies on the way
		}
		if i = q.n[(k+1)%3]; i == first || i < 0 {
			return nil, errTangled
		}
	}
	var out [][2]int
	for {
		q := &t.tris[i]
		u, v := q.v[(k+1)%3], q.v[(k+2)%3]
		out = append(out, [2]int{u, v})
		j := q.n[k]
		r := &t.tris[j]
		w := r.v[r.across(i)]
		if w == b {
			return out, nil
		}
		switch t.turn(a, b, w) {
		case 0:
			return nil, errTangled
		case 1:
			k = r.index(v) // the way leaves between u and w
		default:
			k = r.index(u)
		}
		i = j
	}
}

// ahead says whether p, in line with a and b, lies on b's side of a.
func (t *net) ahead(a, b, p int) bool {
	o, q, r := t.at[a], t.at[b], t.at[p]
	return float64(q.x-o.x)*float64(r.x-o.x)+float64(q.y-o.y)*float64(r.y-o.y) > 0
}

// triangulate fills the borders, which run anticlockwise round what they
// enclose, with triangles.
func triangulate(at []spot, borders [][2]int) ([][3]int, error) {
	t := newNet(at)
	for p := range at {
		if err := t.insert(p); err != nil {
			return nil, err
		}
	}
	for _, b := range borders {
		if err := t.fix(b[0], b[1]); err != nil {
			return nil, err
		}
	}
	return t.filled(borders)
}

// filled lists the triangles to the left of the borders.
func (t *net) filled(borders [][2]int) ([][3]int, error) {
	in := make([]bool, len(t.tris))
	var stack []int
	for _, b := range borders {
		i, _ := t.find(b[0], b[1])
		if i < 0 {
			return nil, errTangled
		}
		stack = append(stack, i)
	}
	for len(stack) > 0 {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if in[i] {
			continue
		}
		in[i] = true
		for k, j := range t.tris[i].n {
			if j < 0 {
				return nil, errTangled // ran out of the borders
			}
			if !t.tris[i].fixed[k] {
				stack = append(stack, j)
			}
		}
	}
	for _, b := range borders {
		if i, _ := t.find(b[1], b[0]); i >= 0 && in[i] {
			return nil, errTangled // a border has its patch on both sides
		}
	}
	var out [][3]int
	for i, q := range t.tris {
		if in[i] {
			out = append(out, q.v)
		}
	}
	return out, nil
}
