package quantity

// Known says how a dimension is known, strongest first. It goes with the
// dimension into every list, pattern and drawing.
type Known int

// How a dimension can be known.
const (
	Measured    Known = iota // on surviving wood of the part itself
	FromIron                 // worked out from surviving iron
	Paired                   // like its survivor on the other side, or in the same row
	LikeVehicle              // from a like vehicle or a period drawing
	TradeRule                // by a rule of the trade
	Guess                    // settled by a guess
	Unknown                  // nothing speaks of it
)

// knownWords are the words people read, in the order of the constants.
var knownWords = [...]string{
	"measured", "from iron", "paired", "like vehicle", "trade rule", "guess", "not known",
}

// String returns the words for k.
func (k Known) String() string {
	if k < Measured || k > Unknown {
		return knownWords[Unknown]
	}
	return knownWords[k]
}

// A Size is one dimension: its value, its give or take, and how it is known.
// Doubt is a standard uncertainty; it is +Inf where nothing determines the value.
type Size struct {
	Value Length
	Doubt Length
	Known Known
}
