package vehicle

import (
	"time"

	"lostwood/internal/quantity"
)

// A Record is what the keepers decided and wrote down of a vehicle: what stands
// in the archive beside its sizes. Every field is empty where nothing was said.
type Record struct {
	Object     string // the number it has in its keeper's books
	Keeper     string // an office, never a person
	Purpose    string // "to be kept still", "to be driven"
	Mark       string // how new pieces are marked, and where
	LeftUndone []string
	Approvals  []Approval
	Settled    []Settled
	Decided    map[string]string     // by part id: why new, grafted or left open
	AsMade     map[string][]MadeSize // by part id
}

// A MadeSize is a size as a part was made in the end.
type MadeSize struct {
	Name string
	Size quantity.Length
}

// An Approval lets parts be made.
type Approval struct {
	Parts      []string // as the vehicle names them
	Office     string
	Conditions string
	Issue      string // of the survey that was approved
	Date       time.Time
	Line       int
}

// A Settled says how a contradiction was settled.
type Settled struct {
	About, How string
	Line       int
}

// Approval is the last approval of a part; nil where it has none.
func (r *Record) Approval(id string) *Approval {
	for i := len(r.Approvals) - 1; i >= 0; i-- {
		for _, p := range r.Approvals[i].Parts {
			if p == id {
				return &r.Approvals[i]
			}
		}
	}
	return nil
}
