package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"lostwood/internal/cutlist"
	"lostwood/internal/delivery"
	"lostwood/internal/listing"
	"lostwood/internal/movement"
	"lostwood/internal/order"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/timbering"
	"lostwood/internal/vehicle"
)

// cutting is what the cut command was asked.
type cutting struct {
	options                           *pflag.FlagSet
	format, file, currency, moves     string
	totals, order                     bool
	planing, jointing, trimming, bend *string
	kerf, board                       *string
	straight, curve, bent             float64
	prices, thicknesses, rings        []string
	grade, note                       string
	runOut                            float64
	heartwood                         bool
}

func runCut(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("cut", "[SURVEY]", "Lists what to cut, sawn and finished, what to buy, and the order to the sawmill.\n"+
		"What an option says overrules the survey; what neither says is as shown.", out)
	c := cuttingFlags(f)
	rest, err := parse(f, args, 0, 1)
	if err != nil {
		return err
	}
	how, err := c.check()
	if err != nil {
		return err
	}
	src, err := open(rest)
	if err != nil {
		return err
	}
	j, err := settled(src)
	if err != nil {
		return err
	}
	if c.moves != "" {
		return c.move(out, j.vehicle, j.woods, how)
	}
	settings, err := c.settings(j)
	if err != nil {
		return err
	}
	list, err := cutlist.MakeWith(j.vehicle, j.woods, settings)
	if err != nil {
		return blamed(err)
	}
	if c.pdf() {
		return c.print(out, j.vehicle, j.woods, list)
	}
	return c.write(out, list, how)
}

func (c *cutting) pdf() bool { return strings.EqualFold(c.format, "pdf") }

// check refuses options that do not go together.
func (c *cutting) check() (listing.Format, error) {
	switch {
	case c.totals && c.order, c.moves != "" && (c.totals || c.order):
		return 0, misuse("--totals, --order and --moves each ask for a list of their own; ask for one after the other")
	case c.file != "" && !c.pdf():
		return 0, misuse("--out names the file of a pdf; add --format pdf, or leave it out")
	case c.pdf() && c.totals:
		return 0, misuse("the totals are no sheet of their own; --order prints what the sawmill is to quote for")
	case c.pdf() && c.moves != "":
		return 0, misuse("--moves is no sheet of its own; the cutting list's pdf holds what to heed of it")
	case c.pdf():
		return listing.Table, nil
	}
	how, err := listing.ParseFormat(c.format)
	if err != nil {
		return 0, misuse("%v; or pdf", err)
	}
	return how, nil
}

// blamed puts a setting or allowance that cannot be down to the command line,
// and all else to the survey.
func blamed(err error) error {
	var setting *cutlist.SettingError
	var allowance *cutlist.AllowanceError
	if errors.As(err, &setting) || errors.As(err, &allowance) {
		return misuse("%v", err)
	}
	return err
}

func cuttingFlags(f *pflag.FlagSet) *cutting {
	c := &cutting{options: f}
	usual := cutlist.Usual()
	f.StringVar(&c.format, "format", "table", "how to write it: table, csv, json or pdf")
	f.StringVar(&c.file, "out", "", "the `file` of a pdf; named after the vehicle where not given")
	f.BoolVar(&c.totals, "totals", false, "only the totals by species and thickness")
	f.BoolVar(&c.order, "order", false, "the order to the sawmill")
	f.StringVar(&c.moves, "moves", "", "instead: what the wood does, of `what`: parts, spacings, gaps, grips, or all")
	mm := func(l quantity.Length) string { return fmt.Sprintf("%g mm", l.Millimetres()) }
	c.planing = f.String("planing", mm(usual.Planing), "left on each face; `lengths` here are in the survey's unit where none is written")
	c.jointing = f.String("jointing", mm(usual.Jointing), "left on each edge")
	c.trimming = f.String("trimming", mm(usual.Trimming), "left on each end")
	c.bend = f.String("bend-trimming", mm(usual.BendTrimming), "left on each end of a bend")
	c.kerf = f.String("kerf", "0 mm", "what the saw takes; 0 leaves it within the waste")
	c.board = f.String("widest-board", mm(usual.WidestBoard), "the widest that boards come")
	f.Float64Var(&c.straight, "waste-straight", 100*usual.StraightWaste, "bought over straight pieces, in `percent`")
	f.Float64Var(&c.curve, "waste-curve", 100*usual.CurveWaste, "bought over sawn curves, in `percent`")
	f.Float64Var(&c.bent, "waste-bend", 100*usual.BendWaste, "bought over bends, in `percent`")
	f.StringArrayVar(&c.rings, "rings", nil, "how the rings lie: flat, quarter, degrees; or of one part: `reach=quarter`")
	f.StringArrayVar(&c.thicknesses, "thickness", nil, "a thickness the yard keeps, sawn and dressed: `2=1 3/4`")
	f.StringArrayVar(&c.prices, "price", nil, "what timber costs: `white oak 8/4=9.80/bdft`; per bdft, superft or m3")
	f.StringVar(&c.currency, "currency", "", "printed before a price")
	f.StringVar(&c.grade, "grade", "", "the grade to ask for, in the yard's `words`")
	f.Float64Var(&c.runOut, "run-out", 0, "ask for grain running out no more than 1 in so `many`")
	f.BoolVar(&c.heartwood, "no-sap", false, "ask for wood without sapwood")
	f.StringVar(&c.note, "note", "", "anything else to ask of the sawmill")
	return c
}

// settings are the survey's with the options that were given laid over them,
// every fault of those told at once.
func (c *cutting) settings(j job) (cutlist.Settings, error) {
	s, unit := j.settings, j.vehicle.Unit
	var faults []string
	fail := func(name string, err error) {
		if err != nil {
			faults = append(faults, fmt.Sprintf("--%s: %v", name, err))
		}
	}
	c.allowances(&s.Allowances, unit, fail)
	c.wanted(&s.Wanted)
	s.Rings = timbering.OverruleRings(s.Rings, parsed(c.rings, "rings", cutlist.ParsePartRings, fail))
	if c.said("thickness") {
		s.Stock = parsed(c.thicknesses, "thickness", func(text string) (timber.Nominal, error) { return cutlist.ParseThickness(text, unit) }, fail)
	}
	prices := parsed(c.prices, "price", func(text string) (cutlist.Price, error) { return cutlist.ParsePrice(text, j.survey.Yard.Currency) }, fail)
	s.Prices = timbering.OverrulePrices(s.Prices, prices, j.woods)
	if c.said("currency") {
		for i := range s.Prices {
			s.Prices[i].Currency = c.currency
		}
	}
	if len(faults) > 0 {
		return s, misuse("%s", strings.Join(faults, "\n"))
	}
	return s, nil
}

// parsed reads every value of an option.
func parsed[T any](texts []string, name string, parse func(string) (T, error), fail func(name string, err error)) []T {
	var out []T
	for _, text := range texts {
		v, err := parse(text)
		fail(name, err)
		out = append(out, v)
	}
	return out
}

// said reports whether an option was given.
func (c *cutting) said(name string) bool { return c.options.Changed(name) }

// wanted reads what is asked of the sawmill.
func (c *cutting) wanted(w *cutlist.Wanted) {
	if c.said("grade") {
		w.Grade = c.grade
	}
	if c.said("run-out") {
		w.RunOut = c.runOut
	}
	if c.said("note") {
		w.Note = c.note
	}
	if c.said("no-sap") {
		w.Sap = cutlist.SapTaken
		if c.heartwood {
			w.Sap = cutlist.SapRefused
		}
	}
}

// allowances reads what is left on and what is wasted.
func (c *cutting) allowances(a *cutlist.Allowances, unit quantity.Unit, fail func(name string, err error)) {
	for _, l := range []struct {
		name string
		text *string
		to   *quantity.Length
	}{
		{"planing", c.planing, &a.Planing},
		{"jointing", c.jointing, &a.Jointing},
		{"trimming", c.trimming, &a.Trimming},
		{"bend-trimming", c.bend, &a.BendTrimming},
		{"kerf", c.kerf, &a.Kerf},
		{"widest-board", c.board, &a.WidestBoard},
	} {
		if !c.said(l.name) {
			continue
		}
		v, err := quantity.ParseLength(*l.text, unit)
		fail(l.name, err)
		*l.to = v
	}
	for _, w := range []struct {
		name    string
		percent float64
		to      *float64
	}{
		{"waste-straight", c.straight, &a.StraightWaste},
		{"waste-curve", c.curve, &a.CurveWaste},
		{"waste-bend", c.bent, &a.BendWaste},
	} {
		if c.said(w.name) {
			*w.to = w.percent / 100
		}
	}
}

func (c *cutting) write(out io.Writer, list *cutlist.List, how listing.Format) error {
	switch {
	case c.totals:
		return list.Totals().Write(out, how)
	case c.order:
		return list.Order().Write(out, how)
	}
	if err := list.Cutting().Write(out, how); err != nil || how != listing.Table {
		return err
	}
	fmt.Fprintln(out)
	return list.Totals().Write(out, how)
}

// move lists what the wood does.
func (c *cutting) move(out io.Writer, v *vehicle.Vehicle, woods timber.Catalogue, how listing.Format) error {
	r, err := movement.Of(v, woods)
	if err != nil {
		return err
	}
	lists := []struct {
		word string
		list *listing.List
	}{{"parts", r.PartsList()}, {"spacings", r.SpacingsList()}, {"gaps", r.GapsList()}, {"grips", r.GripsList()}}
	if strings.EqualFold(c.moves, "all") {
		if how != listing.Table {
			return misuse("a csv or json holds one list; name one: --moves parts, spacings, gaps or grips")
		}
		for _, l := range lists {
			if err := l.list.Write(out, how); err != nil {
				return err
			}
			fmt.Fprintln(out)
		}
		for _, f := range r.Findings {
			fmt.Fprintf(out, "  - %s\n", f.Says)
		}
		return nil
	}
	for _, l := range lists {
		if strings.EqualFold(c.moves, l.word) {
			return l.list.Write(out, how)
		}
	}
	return misuse("--moves %s is not known; parts, spacings, gaps, grips or all would do", c.moves)
}

// print makes the sheet as a PDF.
func (c *cutting) print(out io.Writer, v *vehicle.Vehicle, woods timber.Catalogue, list *cutlist.List) error {
	var sheet bytes.Buffer
	what := "cutting-list"
	if c.order {
		what = "sawmill-order"
		if err := order.WriteOrder(&sheet, list); err != nil {
			return err
		}
	} else {
		moves, err := movement.Of(v, woods)
		if err != nil {
			return err
		}
		var heed []string
		for _, f := range moves.Findings {
			heed = append(heed, f.Says)
		}
		if err := order.WriteCutting(&sheet, list, heed); err != nil {
			return err
		}
	}
	name := c.file
	if name == "" {
		name = v.Slug + "_issue-" + v.IssueWord() + "_" + what + ".pdf"
	}
	if err := delivery.PutFile(name, sheet.Bytes()); err != nil {
		return err
	}
	_, err := fmt.Fprintln(out, name)
	return err
}
