package wheel

import (
	"fmt"

	"lostwood/parts"
)

func (s Spec) bandFigures() []Figure {
	var fs []Figure
	for i, b := range s.Nave.Bands {
		name := func(what string) string { return fmt.Sprintf("band-%d-%s", i+1, what) }
		fs = append(fs,
			length(name("from"), "from the nave's back end to the back edge of the "+b.called(i), parts.Required, b.From),
			length(name("wide"), "the "+b.called(i)+", along the nave", parts.Required, b.Wide),
			length(name("thick"), "the "+b.called(i)+", through", parts.Required, b.Thick),
			length(name("large"), "inside the "+b.called(i)+" at its edge nearer the spokes", parts.Optional, b.Large),
			length(name("small"), "inside the "+b.called(i)+" at its other edge", parts.Optional, b.Small),
		)
	}
	return fs
}

func (b Band) called(i int) string {
	if b.Name != "" {
		return b.Name
	}
	return fmt.Sprintf("band %d", i+1)
}

// numbered names the i-th of a row of members, counted from 0.
func numbered(what string, i int) string { return fmt.Sprintf("%s %d", what, i+1) }
