package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"runtime"
	"sync"

	"github.com/spf13/pflag"

	"lostwood/internal/delivery"
	"lostwood/internal/pattern"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A plotting is how patterns are to be drawn.
type plotting struct {
	as     string
	paper  pattern.Paper
	cutter pattern.Cutter
}

func runPatterns(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("patterns", "PART...", "Draws the parts that are named at full size, by number, id or name; all for every part.\n"+
		"A felloe comes with the setting-out of its whole rim.", out)
	from := f.String("survey", "", "the survey's `file`; the orchard wagon where not given")
	folder := f.String("out", ".", "the `folder` to write into")
	paper := f.String("paper", "A4", "what a PDF is printed on: A4, A3, A2, A1, A0, Letter, Tabloid, or roll and its width")
	roll := f.String("roll", "", "print on a roll of this `width` instead, such as \"24 in\" or 610; nothing is joined")
	measured := f.String("measured-bar", "", "what the printer's 100 mm bars measured in mm, `across x along` the paper, such as 99.4x99.8: sheets are drawn to come out true on it")
	as := f.String("as", "pdf", "pdf (sheets to print), svg (one drawing), or dxf (one drawing a worked face)")
	cutter := f.String("cutter", "", "the `diameter` of the router's cutter, for dxf, such as \"8 mm\": inside corners have its radius, and what is left for hand is listed")
	rest, err := parse(f, args, 1, 1000)
	if err != nil {
		return err
	}
	how, err := plottingOf(f, *as, *paper, *roll, *measured, *cutter)
	if err != nil {
		return err
	}
	v, items, err := asked(*from, rest)
	if err != nil {
		return err
	}
	files, err := drawnAll(v, items, how)
	if err != nil {
		return err
	}
	return put(*folder, files, out)
}

// plottingOf reads the options, and refuses those that contradict one another.
func plottingOf(f *pflag.FlagSet, as, paper, roll, measured, cutter string) (plotting, error) {
	if as != "pdf" && as != "svg" && as != "dxf" {
		return plotting{}, misuse("--as %s is no kind of drawing; pdf, svg or dxf would do", as)
	}
	how := plotting{as: as}
	if roll != "" {
		if f.Changed("paper") {
			return plotting{}, misuse("--paper and --roll name two papers; leave one away")
		}
		paper = "roll " + roll
	}
	var err error
	if how.paper, err = pattern.FindPaper(paper); err != nil {
		return plotting{}, misuse("%v", err)
	}
	if measured != "" {
		if how.paper.Printer, err = pattern.ParsePrinter(measured); err != nil {
			return plotting{}, misuse("%v", err)
		}
	}
	if cutter == "" {
		return how, nil
	}
	if as != "dxf" {
		return plotting{}, misuse("--cutter is for the router's drawings; add --as dxf")
	}
	d, err := quantity.ParseLength(cutter, quantity.Millimetres)
	if err != nil {
		return plotting{}, misuse("--cutter: %v", err)
	}
	how.cutter = pattern.Cutter(d)
	return how, nil
}

// asked derives the survey and finds the items that words name.
func asked(from string, words []string) (*vehicle.Vehicle, []*vehicle.Item, error) {
	var named []string
	if from != "" {
		named = []string{from}
	}
	src, err := open(named)
	if err != nil {
		return nil, nil, err
	}
	v, _, err := derived(src)
	if err != nil {
		return nil, nil, err
	}
	items, err := chosen(v, words)
	return v, items, err
}

// drawnAll draws items side by side, and gives their files in the items' order:
// all of them, or none.
func drawnAll(v *vehicle.Vehicle, items []*vehicle.Item, how plotting) ([]delivery.File, error) {
	files := make([][]delivery.File, len(items))
	faults := make([]error, len(items))
	var workers sync.WaitGroup
	turns := make(chan int)
	for range min(runtime.GOMAXPROCS(0), len(items)) {
		workers.Go(func() {
			for i := range turns {
				files[i], faults[i] = how.drawn(v, items[i])
			}
		})
	}
	for i := range items {
		turns <- i
	}
	close(turns)
	workers.Wait()
	var all []delivery.File
	for i := range items {
		if faults[i] != nil {
			return nil, fmt.Errorf("%s: %w", items[i].Name, faults[i])
		}
		all = append(all, files[i]...)
	}
	return all, nil
}

// drawn makes the drawings of one item.
func (how plotting) drawn(v *vehicle.Vehicle, it *vehicle.Item) ([]delivery.File, error) {
	stem := v.Stem(it)
	var files []delivery.File
	write := func(name string, draw func(io.Writer) error) error {
		var b bytes.Buffer
		err := draw(&b)
		files = append(files, delivery.File{Path: name, Data: b.Bytes()})
		return err
	}
	var err error
	switch how.as {
	case "svg":
		err = write(stem+".svg", func(w io.Writer) error { return pattern.WriteSVG(w, v, it) })
	case "pdf":
		err = write(stem+".pdf", func(w io.Writer) error { return pattern.Write(w, v, it, how.paper) })
		if err == nil && pattern.HasRim(it) {
			err = write(stem+"_rim.pdf", func(w io.Writer) error { return pattern.WriteRim(w, v, it, how.paper) })
		}
	case "dxf":
		for _, face := range pattern.WorkedFaces(it) {
			name := fmt.Sprintf("%s_%s.dxf", stem, vehicle.Slug(it.FaceWords(face)))
			if err := write(name, func(w io.Writer) error { return pattern.WriteDXF(w, v, it, face, how.cutter) }); err != nil {
				return nil, err
			}
		}
		err = write(stem+"_for-hand.txt", func(w io.Writer) error { return pattern.WriteHandWork(w, v, it, how.cutter) })
	}
	return files, err
}
