package vehicle

import "lostwood/internal/quantity"

// A Spacing is how far apart two pieces of work on one item, or two holes of
// one iron, stand. Its give or take is that of the two together: what moves both
// alike, such as where the timber begins, is not in it.
type Spacing struct {
	Item          *Item // one of the two
	Iron          *Iron
	A, B          string        // the two, by their Ref; of an iron "hole 1"
	Along, Across quantity.Size // from A to B, on their face; of an iron along it only
}
