package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"runtime"
	"sync"

	"lostwood/internal/cutlist"
	"lostwood/internal/delivery"
	"lostwood/internal/drawing"
	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
)

// A wanted drawing is one file, or one a sheet.
type wanted struct {
	stem string
	as   string
	draw func() ([]sheet.Sheet, error)
}

func runDrawings(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("drawings", "[PART...]", "Draws the parts that are named to scale, with their dimensions and how we know them, by number, id\n"+
		"or name. Without a name it draws every part, and the general arrangement of the vehicle.", out)
	from := f.String("survey", "", "the survey's `file`; the orchard wagon where not given")
	folder := f.String("out", ".", "the `folder` to write into")
	paper := f.String("paper", "", "what to draw on: A4, A3, A2, A1, A0, Letter or Tabloid; "+delivery.PartPaper+" for parts and "+delivery.GeneralPaper+" for the whole where not given")
	angle := f.String("angle", drawing.Third.String(), "how the views stand about the front view: third or first")
	as := f.String("as", "pdf", "pdf, or svg (one file a sheet)")
	general := f.Bool("general", false, "draw the general arrangement, with the parts that are named or alone")
	names, err := parse(f, args, 0, 1000)
	if err != nil {
		return err
	}
	if *as != "pdf" && *as != "svg" {
		return misuse("--as %s is no kind of drawing; pdf or svg would do", *as)
	}
	part, whole, err := makings(*paper, *angle)
	if err != nil {
		return misuse("%v", err)
	}
	if len(names) == 0 && !*general {
		names, *general = []string{"all"}, true
	}
	v, items, err := sized(*from, names, &part)
	if err != nil {
		return err
	}
	var all []wanted
	for _, it := range items {
		all = append(all, wanted{v.Stem(it) + "_drawing", *as, func() ([]sheet.Sheet, error) { return drawing.Part(v, it, part) }})
	}
	if *general {
		all = append(all, wanted{delivery.GeneralStem(v), *as, func() ([]sheet.Sheet, error) { return drawing.General(v, whole) }})
	}
	files, err := sheeted(v, all)
	if err != nil {
		return err
	}
	return put(*folder, files, out)
}

// makings reads how parts and the whole are to be drawn.
func makings(paper, angle string) (part, whole drawing.Making, err error) {
	a, err := drawing.FindAngle(angle)
	if err != nil {
		return part, whole, err
	}
	named := func(usual string) (drawing.Making, error) {
		if paper != "" {
			usual = paper
		}
		p, err := drawing.FindPaper(usual)
		return drawing.Making{Paper: p, Angle: a}, err
	}
	if part, err = named(delivery.PartPaper); err != nil {
		return part, whole, err
	}
	whole, err = named(delivery.GeneralPaper)
	return part, whole, err
}

// sized derives the survey, finds the items that are named, and tells the
// drawings what sizes they are sawn to.
func sized(from string, names []string, m *drawing.Making) (*vehicle.Vehicle, []*vehicle.Item, error) {
	var survey []string
	if from != "" {
		survey = []string{from}
	}
	src, err := open(survey)
	if err != nil {
		return nil, nil, err
	}
	j, err := settled(src)
	if err != nil {
		return nil, nil, err
	}
	items, err := chosen(j.vehicle, names)
	if err != nil {
		return nil, nil, err
	}
	if j.settings.Allowances == (cutlist.Allowances{}) {
		j.settings.Allowances = cutlist.Usual()
	}
	list, err := cutlist.MakeWith(j.vehicle, j.woods, j.settings)
	if err != nil {
		return nil, nil, err
	}
	m.Sawn = delivery.SawnSizes(list)
	return j.vehicle, items, nil
}

// sheeted makes all files side by side, and gives them in order.
func sheeted(v *vehicle.Vehicle, all []wanted) ([]delivery.File, error) {
	made := make([][]delivery.File, len(all))
	faults := make([]error, len(all))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(all)) {
		workers.Go(func() {
			for i := range next {
				made[i], faults[i] = all[i].files(v)
			}
		})
	}
	for i := range all {
		next <- i
	}
	close(next)
	workers.Wait()
	var files []delivery.File
	for i := range all {
		if faults[i] != nil {
			return nil, faults[i]
		}
		files = append(files, made[i]...)
	}
	return files, nil
}

// files are a drawing's: one PDF, or an SVG for each of its sheets.
func (w wanted) files(v *vehicle.Vehicle) ([]delivery.File, error) {
	sheets, err := w.draw()
	if err != nil {
		return nil, err
	}
	if w.as == "pdf" {
		var b bytes.Buffer
		err := drawing.WritePDF(&b, v, w.stem, sheets)
		return []delivery.File{{Path: w.stem + ".pdf", Data: b.Bytes()}}, err
	}
	var files []delivery.File
	for i, s := range sheets {
		var b bytes.Buffer
		if err := drawing.WriteSVG(&b, v, w.stem, s); err != nil {
			return nil, err
		}
		name := w.stem
		if i > 0 {
			name += fmt.Sprintf("_sheet-%d", i+1)
		}
		files = append(files, delivery.File{Path: name + ".svg", Data: b.Bytes()})
	}
	return files, nil
}
