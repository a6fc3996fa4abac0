package sight

import (
	"cmp"
	"slices"
)

// A box is an upright rectangle on the view, and the nearest depth in it.
type box struct{ x0, y0, x1, y1, near float64 }

func around(s ...spot) box {
	b := box{s[0].x, s[0].y, s[0].x, s[0].y, s[0].z}
	for _, p := range s[1:] {
		b = b.with(box{p.x, p.y, p.x, p.y, p.z})
	}
	return b
}

func (b box) with(c box) box {
	return box{min(b.x0, c.x0), min(b.y0, c.y0), max(b.x1, c.x1), max(b.y1, c.y1), max(b.near, c.near)}
}

func (b box) grown(by float64) box { return box{b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by, b.near} }

func (b box) meets(c box) bool { return b.x0 <= c.x1 && c.x0 <= b.x1 && b.y0 <= c.y1 && c.y0 <= b.y1 }

// A tree finds the boxes that lie where one looks. Its nodes halve what they
// hold, down to a few.
type tree struct {
	boxes []box
	order []int
	nodes []node
}

type node struct {
	box         box
	from, to    int // in order
	left, right int // nodes; 0 for none
}

const few = 6

func newTree(boxes []box) *tree {
	t := &tree{boxes: boxes, order: make([]int, len(boxes))}
	for i := range t.order {
		t.order[i] = i
	}
	if len(boxes) > 0 {
		t.grow(0, len(boxes))
	}
	return t
}

func (t *tree) grow(from, to int) int {
	b := t.boxes[t.order[from]]
	for _, i := range t.order[from:to] {
		b = b.with(t.boxes[i])
	}
	n := len(t.nodes)
	t.nodes = append(t.nodes, node{box: b, from: from, to: to})
	if to-from <= few {
		return n
	}
	middle := func(i int) float64 { return t.boxes[i].x0 + t.boxes[i].x1 }
	if b.y1-b.y0 > b.x1-b.x0 {
		middle = func(i int) float64 { return t.boxes[i].y0 + t.boxes[i].y1 }
	}
	slices.SortFunc(t.order[from:to], func(i, j int) int {
		return cmp.Or(cmp.Compare(middle(i), middle(j)), cmp.Compare(i, j))
	})
	half := (from + to) / 2
	left := t.grow(from, half)
	right := t.grow(half, to)
	t.nodes[n].left, t.nodes[n].right = left, right
	return n
}

// find calls with every box that meets b and comes nearer than depth.
func (t *tree) find(b box, depth float64, with func(i int)) {
	if len(t.nodes) == 0 {
		return
	}
	stack := []int{0}
	for len(stack) > 0 {
		n := t.nodes[stack[len(stack)-1]]
		stack = stack[:len(stack)-1]
		if n.box.near < depth || !n.box.meets(b) {
			continue
		}
		if n.left > 0 {
			stack = append(stack, n.right, n.left)
			continue
		}
		for _, i := range t.order[n.from:n.to] {
			if t.boxes[i].near >= depth && t.boxes[i].meets(b) {
				with(i)
			}
		}
	}
}
