package timber

import (
	_ "embed"
	"errors"
	"fmt"
	"slices"
	"strings"
)

//go:embed species.csv
var embedded string

// A Catalogue is a list of woods. It does not change: With returns another.
type Catalogue struct {
	woods []Species
}

// Published returns the woods that come with the program. Its error is a fault
// of the program's own table.
func Published() (Catalogue, error) {
	woods, err := ReadTable(strings.NewReader(embedded))
	if err != nil {
		return Catalogue{}, fmt.Errorf("the table of woods: %w", err)
	}
	return Catalogue{woods}, nil
}

// Woods returns every wood, in the table's order.
func (c Catalogue) Woods() []Species { return slices.Clone(c.woods) }

// With returns c with own woods. One whose common or botanical name is already
// there is laid over it: what it states replaces what stood there, and shrinkage,
// movement, weight and strengths each as a whole, so that figures of two
// conventions never mix. The error reports every figure no wood could have.
func (c Catalogue) With(own ...Species) (Catalogue, error) {
	woods := slices.Clone(c.woods)
	var faults []error
	for _, s := range own {
		if err := s.Validate(); err != nil {
			faults = append(faults, err)
			continue
		}
		at := slices.IndexFunc(woods, func(w Species) bool { return sameWood(w, s) })
		if at < 0 {
			woods = append(woods, s)
			continue
		}
		woods[at] = overlay(woods[at], s)
	}
	if err := errors.Join(faults...); err != nil {
		return Catalogue{}, err
	}
	return Catalogue{woods}, nil
}

func sameWood(a, b Species) bool {
	same := func(x, y string) bool { return x != "" && nameKey(x) == nameKey(y) }
	return same(a.Common, b.Common) || same(a.Botanical, b.Botanical)
}

// overlay returns base with what over states.
func overlay(base, over Species) Species {
	out := base
	pick := func(to *string, from string) {
		if from != "" {
			*to = from
		}
	}
	pick(&out.Common, over.Common)
	pick(&out.Botanical, over.Botanical)
	pick(&out.Region, over.Region)
	pick(&out.Note, over.Note)
	out.Also = append(slices.Clone(base.Also), over.Also...)
	if base.Common != out.Common {
		out.Also = append(out.Also, base.Common)
	}
	out.Shrink, out.Move = overlayShrinkage(base, over)
	if w := over.Weight; w.Basic.Known() || w.At12.Known() || w.Density12.Known() || w.GreenHeart.Known() || w.GreenSapwood.Known() {
		out.Weight = over.Weight
	}
	if over.Green != (Strength{}) || over.Dry != (Strength{}) {
		out.Green, out.Dry = over.Green, over.Dry
	}
	if over.Meeting.Known() {
		out.Meeting = over.Meeting
	}
	if over.Groups != (Groups{}) {
		out.Groups = over.Groups
	}
	if over.Durability.Words != "" {
		out.Durability = over.Durability
	}
	if over.Drying != (AirDrying{}) {
		out.Drying = over.Drying
	}
	if over.Bending != (Bending{}) {
		out.Bending = over.Bending
	}
	return out
}

// overlayShrinkage keeps each convention whole: new shrinkage drops the old
// movement coefficients with the old shrinkage.
func overlayShrinkage(base, over Species) (Shrinkage, Movement) {
	shrink, move := base.Shrink, base.Move
	if s := over.Shrink; s.Radial.Known() || s.Tangential.Known() || s.Volumetric.Known() {
		shrink.To, shrink.Radial, shrink.Tangential, shrink.Volumetric = s.To, s.Radial, s.Tangential, s.Volumetric
		move = over.Move
	}
	if m := over.Move; m.Radial.Known() || m.Tangential.Known() {
		move = m
	}
	if over.Shrink.Lengthwise.Known() {
		shrink.Lengthwise = over.Shrink.Lengthwise
	}
	if over.Shrink.Saturation.Known() {
		shrink.Saturation = over.Shrink.Saturation
	}
	return shrink, move
}
