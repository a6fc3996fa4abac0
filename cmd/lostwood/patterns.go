package main

import (
	"bytes"
	"context"
	"fmt"
	"io"

	"lostwood/internal/delivery"
	"lostwood/internal/pattern"
	"lostwood/internal/vehicle"
)

func runPatterns(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("patterns", "PART...", "Draws the parts that are named at full size, by number, id or name; all for every part.", out)
	from := f.String("survey", "", "the survey's `file`; the orchard wagon where not given")
	folder := f.String("out", ".", "the `folder` to write into")
	paper := f.String("paper", "A4", "what a PDF is printed on: A4, A3, A2, A1, A0, Letter, Tabloid, or roll and its width")
	as := f.String("as", "pdf", "pdf (sheets to print), svg (one drawing), or dxf (one drawing a worked face)")
	rest, err := parse(f, args, 1, 1000)
	if err != nil {
		return err
	}
	if *as != "pdf" && *as != "svg" && *as != "dxf" {
		return misuse("--as %s is no kind of drawing; pdf, svg or dxf would do", *as)
	}
	sheet, err := pattern.FindPaper(*paper)
	if err != nil {
		return misuse("%v", err)
	}
	v, items, err := asked(*from, rest)
	if err != nil {
		return err
	}
	for _, it := range items {
		files, err := drawn(v, it, *as, sheet)
		if err != nil {
			return fmt.Errorf("%s: %w", it.Name, err)
		}
		if err := put(*folder, files, out); err != nil {
			return err
		}
	}
	return nil
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

// drawn makes the drawings of one item.
func drawn(v *vehicle.Vehicle, it *vehicle.Item, as string, paper pattern.Paper) ([]delivery.File, error) {
	stem := v.Stem(it)
	var b bytes.Buffer
	switch as {
	case "svg":
		err := pattern.WriteSVG(&b, v, it)
		return []delivery.File{{Path: stem + ".svg", Data: b.Bytes()}}, err
	case "pdf":
		err := pattern.Write(&b, v, it, paper)
		return []delivery.File{{Path: stem + ".pdf", Data: b.Bytes()}}, err
	}
	var files []delivery.File
	for _, face := range pattern.WorkedFaces(it) {
		var b bytes.Buffer
		if err := pattern.WriteDXF(&b, v, it, face); err != nil {
			return nil, err
		}
		files = append(files, delivery.File{Path: fmt.Sprintf("%s_%s.dxf", stem, vehicle.Slug(it.FaceWords(face))), Data: b.Bytes()})
	}
	return files, nil
}
