package pattern

import (
	"lostwood/internal/outline"
	"lostwood/parts/form"
)

const markWide, markHigh Length = 11, 8

// sideMark is the joiner's loop for the face side; its tail runs to the face edge.
func sideMark() outline.Drawing {
	return outline.Drawing{Paths: []outline.Path{{
		Layer: outline.Layer{Role: outline.Guide}, Pen: outline.Work,
		Run: []form.Vertex{
			{Point: form.Point{X: 1, Y: 0}, Bulge: 0.18},
			{Point: form.Point{X: 6.6, Y: 5.6}, Bulge: 0.85},
			{Point: form.Point{X: 2.6, Y: 5.6}, Bulge: 0.18},
			{Point: form.Point{X: 8.2, Y: 0}},
		},
	}}}
}

// edgeMark is the joiner's V for the face edge, its point to the face side.
func edgeMark() outline.Drawing {
	return outline.Drawing{Paths: []outline.Path{{
		Layer: outline.Layer{Role: outline.Guide}, Pen: outline.Work,
		Run: []form.Vertex{
			{Point: form.Point{X: 1.5, Y: 0}},
			{Point: form.Point{X: 4.6, Y: 7.5}},
			{Point: form.Point{X: 7.7, Y: 0}},
		},
	}}}
}
