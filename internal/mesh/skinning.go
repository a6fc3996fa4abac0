package mesh

import (
	"cmp"
	"fmt"
	"slices"

	"lostwood/internal/solid"
	"lostwood/parts/form"
)

// A hide is a solid's skin as patches with borders, before it is triangles.
type hide struct {
	solid     *solid.Solid
	on        float64 // how near a place must be to a line to be on it
	tolerance float64
	at        []point
	patches   []patch
	normals   []point // of the patches, outwards
	rims      []rim
}

// A MeshError tells where a solid's skin could not be made.
type MeshError struct {
	At    form.Vec
	Found string
}

func (e *MeshError) Error() string {
	return fmt.Sprintf("the skin of the piece cannot be closed: %s at %s; move the cut or the edge there a little", e.Found, words(e.At))
}

func (h *hide) fail(k knot, found string) error { return &MeshError{At: vec(h.at[k]), Found: found} }

// skinned finds the skin of the bodies together.
func (c *carving) skinned(tolerance float64) *hide {
	c.cross()
	c.divide()
	h := &hide{solid: c.solid, on: c.on, tolerance: tolerance, at: c.knots.at}
	number := map[patch]int{}
	for i := range c.planes {
		c.rims(i, func(p patch) int {
			n, known := number[p]
			if !known {
				n = len(h.patches)
				number[p] = n
				h.patches = append(h.patches, p)
				normal := c.planes[i].n
				if !p.up {
					normal = normal.Neg()
				}
				h.normals = append(h.normals, normal)
			}
			return n
		}, func(r rim) { h.rims = append(h.rims, r) })
	}
	return h
}

// paired checks that every rim has its one counterpart.
func (h *hide) paired() error {
	rs := slices.Clone(h.rims)
	ends := func(r rim) (lo, hi knot) { return min(r.from, r.to), max(r.from, r.to) }
	slices.SortFunc(rs, func(a, b rim) int {
		al, ah := ends(a)
		bl, bh := ends(b)
		return cmp.Or(cmp.Compare(al, bl), cmp.Compare(ah, bh), cmp.Compare(a.from, b.from), cmp.Compare(a.patch, b.patch))
	})
	for n := 0; len(rs) > 0; rs = rs[n:] {
		lo, hi := ends(rs[0])
		balance := 0
		for n = 0; n < len(rs) && min(rs[n].from, rs[n].to) == lo && max(rs[n].from, rs[n].to) == hi; n++ {
			balance += cmp.Compare(rs[n].from, rs[n].to)
		}
		middle := h.at[lo].Add(h.at[hi]).MulScalar(0.5)
		switch {
		case balance != 0:
			return &MeshError{At: vec(middle), Found: "it is open along an edge"}
		case n > 2:
			return &MeshError{At: vec(middle), Found: "it touches itself along an edge"}
		}
	}
	return nil
}

// straighten leaves out knots in the middle of a straight border.
func (h *hide) straighten() {
	for {
		gone := h.idle()
		if len(gone) == 0 {
			return
		}
		after := map[[2]int]rim{} // by knot and patch, the rim that leaves a knot to be left out
		for _, r := range h.rims {
			if gone[r.from] {
				after[[2]int{r.from, r.patch}] = r
			}
		}
		var kept []rim
		for _, r := range h.rims {
			if gone[r.from] {
				continue
			}
			for gone[r.to] {
				r.to = after[[2]int{r.to, r.patch}].to
			}
			kept = append(kept, r)
		}
		h.rims = kept
	}
}

// idle finds knots where just two edges meet, in a straight line. No two of
// them are neighbours, so that an edge always has an end left.
func (h *hide) idle() map[knot]bool {
	next := map[knot][]knot{}
	for _, r := range h.rims { // an edge has a rim each way
		next[r.from] = append(next[r.from], r.to)
	}
	gone := map[knot]bool{}
	for _, r := range h.rims {
		k, ends := r.from, next[r.from]
		if len(ends) == 2 && !gone[ends[0]] && !gone[ends[1]] && h.straight(ends[0], k, ends[1]) {
			gone[k] = true
		}
	}
	return gone
}

// straight says whether b lies between a and c on a line.
func (h *hide) straight(a, b, c knot) bool {
	if a == c {
		return false
	}
	way := h.at[c].Sub(h.at[a])
	off := h.at[b].Sub(h.at[a])
	l := way.Length()
	t := off.Dot(way) / l
	return t > 0 && t < l && off.Cross(way).Length()/l < h.on
}
