package timbering

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
)

// faults gathers what is wrong with a survey that was read.
type faults struct {
	survey *survey.Survey
	list   []survey.Fault
}

func (f *faults) add(at survey.Position, found, want string) {
	f.list = append(f.list, survey.Fault{At: at, Found: found, Want: want})
}

// err is all of them in the order of the file; nil where there is none.
func (f *faults) err() error {
	if len(f.list) == 0 {
		return nil
	}
	slices.SortStableFunc(f.list, func(a, b survey.Fault) int {
		return cmp.Or(cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	return &survey.Faults{File: f.survey.File, List: f.list}
}

// Check tells what the survey says of timber that cannot be worked with: an
// allowance that no shop leaves, a price for a timber that no part is of, or for
// a thickness that the yard has not. The error is a *[survey.Faults].
func Check(s *survey.Survey, woods timber.Catalogue) error {
	f := faults{survey: s}
	f.allowances()
	stock, err := yardStock(s)
	if err != nil {
		return err
	}
	for _, p := range s.Prices {
		f.price(p, woods, known(s, stock))
	}
	return f.err()
}

// allowances holds each length alone against what a shop can leave.
func (f *faults) allowances() {
	for _, l := range lengths(f.survey) {
		if l.said == nil {
			continue
		}
		a := cutlist.Usual()
		*l.place(&a) = l.said.Value
		if bad := (*cutlist.AllowanceError)(nil); errors.As(a.Validate(), &bad) {
			f.add(l.said.At, fmt.Sprintf("%s: %.4g%s", bad.Name, bad.Got, bad.In), fmt.Sprintf("write one from %g to %g%s", bad.Min, bad.Max, bad.In))
		}
	}
}

func (f *faults) price(p survey.Price, woods timber.Catalogue, stock []timber.Nominal) {
	if p.Timber != "" {
		var timbers []string
		used := false
		for i := range f.survey.Parts {
			name := timberOf(f.survey, &f.survey.Parts[i])
			used = used || same(woods, name, p.Timber)
			if !slices.Contains(timbers, name) {
				timbers = append(timbers, name)
			}
		}
		if !used {
			f.add(p.TimberAt, "a price for "+quantity.Quote(p.Timber)+", which no part is of", "the parts are of "+strings.Join(timbers, ", ")+"; write one of those, or take the price away")
		}
	}
	if p.Thickness == "" {
		return
	}
	if _, ok := findThickness(p.Thickness, stock, f.survey.Unit); !ok {
		var names []string
		for _, n := range stock {
			names = append(names, n.Name)
		}
		f.add(p.ThicknessAt, "a price for "+quantity.Quote(p.Thickness)+", which is no thickness kept", "write one of "+strings.Join(names, ", "))
	}
}
