package page_test

import (
	"testing"
)

func TestLooks(t *testing.T) {
	file := written(t, demoModel(t))
	b := browse(t, 1280, 800)
	b.open(file, "")
	b.settle()
	t.Log("first", js[string](b, `document.getElementById('stage').dataset.first`))
	b.shot("wide")
	b.choose("apart", "100")
	b.settle()
	b.shot("apart")
	b.choose("apart", "0")
	b.choose("cut-way", "y")
	b.choose("pick", "near-reach")
	b.settle()
	b.shot("cut")
	b.choose("cut-way", "")
	b.choose("view", "known")
	b.choose("turn-0", "25")
	b.choose("turn-1", "80")
	b.settle()
	b.shot("turned")
	js[bool](b, `(document.getElementById('theme').click(), true)`)
	b.settle()
	b.shot("dark")
	b.quiet(file)
}
