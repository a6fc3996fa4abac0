// Package derive works out a vehicle from a survey of its irons.
//
// A vehicle is a network of fastenings. Every timber and iron is a box with a
// place; every fastening is a line through a run of them. What was read (sizes
// and holes of irons, grips), what is taken for granted (faces that touch, bolts
// on the middle line, a pair that is alike) and whatever else is known become
// observations of one weighted adjustment (see internal/adjust). Out of it come
// the sizes and places, each with its standard uncertainty and how it is known,
// the readings that contradict the rest, and what nothing determines.
//
// Lengths are in millimetres; the vehicle's frame is that of package vehicle.
package derive

import (
	"errors"
	"fmt"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// Vehicle derives the vehicle that a survey describes. A contradiction, an open
// dimension or a part that cannot be made is a finding of the vehicle, not an
// error. Errors are a timber or a climate that is not known.
func Vehicle(s *survey.Survey, woods timber.Catalogue) (*vehicle.Vehicle, error) {
	st, err := study(s, woods)
	if err != nil {
		return nil, err
	}
	return st.Vehicle, nil
}

// A fit is the adjusted network with the readings that were set aside.
type fit struct {
	*adjust.Solution
	network  *network
	strength []*adjust.Solution     // by quantity.Known: from evidence at least that strong
	turned   []*explanation         // whole irons explained
	suspects []suspect              // single readings set aside
	unknowns map[int]quantity.Known // how each is known, once asked for
}

// adjust solves the network; blunders are explained first, so that they do not
// spread into the sizes.
func (n *network) adjust() (*fit, error) {
	sol, err := adjust.Solve(n.problem)
	if err != nil {
		return nil, fmt.Errorf("the readings could not be brought together: %w", err)
	}
	if sol, err = n.taper(sol); err != nil {
		return nil, err
	}
	if len(n.windows) > 0 {
		if sol, err = n.settle(); err != nil {
			return nil, err
		}
	}
	f := &fit{Solution: sol, network: n}
	if err := n.explain(f); err != nil {
		return nil, err
	}
	return f, n.byStrength(f)
}

// A TimberError is a timber that a survey names and the catalogue has not.
type TimberError struct {
	File string
	At   survey.Position
	Part string
	Err  error
}

func (e *TimberError) Error() string {
	return fmt.Sprintf("%s:%d:%d: the timber of %s: %v", e.File, e.At.Line, e.At.Column, e.Part, e.Err)
}

func (e *TimberError) Unwrap() error { return e.Err }

// findTimbers reports every part whose timber is not known.
func findTimbers(s *survey.Survey, woods timber.Catalogue) error {
	var faults []error
	for _, p := range s.Parts {
		if p.Status == vehicle.LeftOpen {
			continue
		}
		name := p.Timber
		if name == "" {
			name = s.Wood.Timber
		}
		if _, err := woods.Find(name); err != nil {
			faults = append(faults, &TimberError{s.File, p.At, p.ID, err})
		}
	}
	for _, w := range s.Wheels {
		for _, name := range []string{w.Nave, w.Spoke} {
			if _, err := woods.Find(name); name != "" && err != nil {
				faults = append(faults, &TimberError{s.File, w.At, w.ID, err})
			}
		}
	}
	return errors.Join(faults...)
}
