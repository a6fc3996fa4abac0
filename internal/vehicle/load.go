package vehicle

import "lostwood/internal/quantity"

// A Load is one thing that the vehicle is meant to carry, as its survey states it.
type Load struct {
	Name   string        // as written: "apple boxes"
	Mass   quantity.Mass // of each
	Doubt  quantity.Mass // of each; 0 where not stated
	Number int           // how many of it; 1 where it is one
	On     []string      // ids of the timbers and irons it lies on
	Lies   Lie
	Within quantity.Length // of a load at an edge: how far in from it it reaches
	Middle quantity.Length // its own middle, up from what it lies on
	Shock  float64         // what it counts for on rough ground, in times its weight; 1 at rest
	Always Presence
	Line   int // of the survey
}

// A Lie says how a load lies on what carries it.
type Lie int

// The ways a load lies.
const (
	Spread   Lie = iota // evenly over the upper faces
	InPlaces            // in as many places as there are of it, evenly along one part
	ForeEdge            // within a strip along an edge of all that it lies on
	HindEdge
	NearEdge
	OffEdge
)

// String is the word a survey uses.
func (l Lie) String() string {
	return [...]string{"spread", "in places", "fore edge", "hind edge", "near edge", "off edge"}[l]
}

// Lies are all of them.
func Lies() []Lie { return []Lie{Spread, InPlaces, ForeEdge, HindEdge, NearEdge, OffEdge} }

// A Presence says whether a load comes and goes.
type Presence int

// The presences.
const (
	Working  Presence = iota // there when the vehicle is laden
	Standing                 // always there: a part of the vehicle that the survey has no timber or iron for
)

// Total is the mass of all of it.
func (l Load) Total() quantity.Mass { return l.Mass * quantity.Mass(l.Number) }
