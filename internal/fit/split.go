package fit

import "slices"

// split takes off several things at once that are bolted together and to nothing
// else: the upper half of a fore carriage is made up by itself. It is then taken
// apart on the bench. It reports whether there was such a group.
func (s *strip) split() bool {
	groups := s.groups()
	if len(groups) < 2 {
		return false
	}
	slices.SortStableFunc(groups, func(a, b []int) int { return len(a) - len(b) })
	for _, g := range groups {
		for k := range 6 {
			if !s.groupFree(g, k) {
				continue
			}
			first := slices.IndexFunc(g, func(i int) bool { return s.things[i].bolt == nil })
			e := event{thing: g[first], by: sides()[k]}
			for _, i := range g {
				s.there[i] = false
				if i != e.thing {
					e.with = append(e.with, i)
				}
			}
			s.off = append(s.off, e)
			s.bench(g)
			return true
		}
	}
	return false
}

// bench takes a group apart by itself, as if nothing else were there.
func (s *strip) bench(g []int) {
	rest := slices.Clone(s.there)
	none := func() {
		for i := range s.there {
			s.there[i] = false
		}
	}
	none()
	for _, i := range g {
		s.there[i] = true
	}
	s.apart()
	copy(s.there, rest)
}

func (s *strip) groupFree(g []int, k int) bool {
	for _, i := range g {
		for _, j := range s.round[i] {
			if s.there[j] && !slices.Contains(g, j) && !s.told(i, j) && s.blocks(i, j, k) {
				return false
			}
		}
	}
	return true
}

// groups are the things that hang together by bolts, in order.
func (s *strip) groups() [][]int {
	lead := make([]int, len(s.things))
	for i := range lead {
		lead[i] = i
	}
	root := func(i int) int {
		for lead[i] != i {
			i = lead[i]
		}
		return i
	}
	for i := range s.things {
		for _, f := range s.held[i] {
			if s.there[i] && s.there[f] {
				a, b := root(i), root(f)
				lead[max(a, b)] = min(a, b)
			}
		}
	}
	by := map[int]int{}
	var out [][]int
	for i := range s.things {
		if !s.there[i] {
			continue
		}
		r := root(i)
		if _, ok := by[r]; !ok {
			by[r] = len(out)
			out = append(out, nil)
		}
		out[by[r]] = append(out[by[r]], i)
	}
	return slices.DeleteFunc(out, func(g []int) bool {
		return !slices.ContainsFunc(g, func(i int) bool { return s.things[i].bolt == nil })
	})
}
