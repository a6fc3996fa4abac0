package adjust

import "math"

// blocks are the parts of a network that no observation ties together. Each has a
// root, its unknown of lowest number. Blocks join as slopes appear, never part.
type blocks struct{ up []int }

func newBlocks(n int) *blocks {
	b := &blocks{make([]int, n)}
	for j := range b.up {
		b.up[j] = j
	}
	return b
}

func (b *blocks) root(j int) int {
	for b.up[j] != j {
		b.up[j] = b.up[b.up[j]]
		j = b.up[j]
	}
	return j
}

// tie joins the blocks that rows of d reach across.
func (b *blocks) tie(d *design) {
	for i := range d.miss {
		row := d.col[d.first[i]:d.first[i+1]]
		for _, j := range row {
			x, y := b.root(row[0]), b.root(j)
			b.up[max(x, y)] = min(x, y)
		}
	}
}

// squares sums the weighted squares of d by block root.
func (b *blocks) squares(d *design) []float64 {
	s := make([]float64, d.n)
	for i, r := range d.miss {
		if d.first[i] < d.first[i+1] {
			s[b.root(d.col[d.first[i]])] += r * r
		}
	}
	return s
}

// grain is the rounding in the rows of d by block root.
func (b *blocks) grain(d *design) []float64 {
	g := make([]float64, d.n)
	for i, v := range d.grain {
		if d.first[i] < d.first[i+1] {
			r := b.root(d.col[d.first[i]])
			g[r] = math.Max(g[r], v)
		}
	}
	return g
}

// spread marks all unknowns of every block that has one marked.
func (b *blocks) spread(marks []bool) {
	for j, m := range marks {
		if m {
			marks[b.root(j)] = true
		}
	}
	for j := range marks {
		marks[j] = marks[b.root(j)]
	}
}
