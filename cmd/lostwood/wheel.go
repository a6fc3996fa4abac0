package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"strings"

	"lostwood/internal/delivery"
	"lostwood/internal/pattern"
	"lostwood/internal/vehicle"
	"lostwood/internal/wheelwright"
)

func runWheel(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("wheel", "[WHEEL] [SURVEY]", "Tells every figure of a wheel, or of all wheels: dish before and after the tyre, gaps, nip, the tyre's\n"+
		"bar by each rule, the arm's cant, the track. WHEEL is as the survey writes it.\n"+
		"With --out it prints the wheel's sheets: gauge, templates, the nave's strip, and the rim's setting-out.", out)
	folder := f.String("out", "", "the `folder` to write the sheets into; none are written where it is not given")
	paper := f.String("paper", "A4", "what the sheets are printed on: A4, A3, A2, A1, A0, Letter or Tabloid")
	measured := f.String("measured-bar", "", "what the printer's 100 mm bars measured in mm, `across x along` the paper, such as 99.4x99.8")
	rest, err := parse(f, args, 0, 2)
	if err != nil {
		return err
	}
	sheet, err := pattern.FindPaper(*paper)
	if err != nil {
		return misuse("%v", err)
	}
	if *measured != "" {
		if sheet.Printer, err = pattern.ParsePrinter(*measured); err != nil {
			return misuse("%v", err)
		}
	}
	word, named := whichWheel(rest)
	src, err := open(named)
	if err != nil {
		return err
	}
	v, _, err := derived(src)
	if err != nil {
		return err
	}
	wheels, err := wheelsOf(v, word)
	if err != nil {
		return err
	}
	if *folder == "" {
		return listWheels(out, v, wheels)
	}
	files, err := wheelFiles(v, wheels, sheet)
	if err != nil {
		return err
	}
	return put(*folder, files, out)
}

// whichWheel sorts the words of the command line: one alone is a survey where
// there is a file of that name.
func whichWheel(words []string) (wheel string, survey []string) {
	switch len(words) {
	case 0:
		return "", nil
	case 2:
		return words[0], words[1:]
	}
	if _, err := os.Stat(words[0]); err == nil {
		return "", words
	}
	return words[0], nil
}

// wheelsOf are the vehicle's wheels of a name; all of them where none is named.
func wheelsOf(v *vehicle.Vehicle, word string) ([]*vehicle.Wheel, error) {
	if len(v.Wheels) == 0 {
		return nil, fmt.Errorf("%s: the survey tells of no whole wheel, so there is none to work out", v.Name)
	}
	if word == "" {
		return v.Wheels, nil
	}
	var ids []string
	for _, w := range v.Wheels {
		if w.ID == word || strings.EqualFold(w.Name, word) {
			return []*vehicle.Wheel{w}, nil
		}
		ids = append(ids, w.ID)
	}
	return nil, misuse("there is no wheel called %q; there are %s", word, strings.Join(ids, ", "))
}

func listWheels(out io.Writer, v *vehicle.Vehicle, wheels []*vehicle.Wheel) error {
	var all bytes.Buffer
	for i, w := range wheels {
		s, err := wheelwright.Of(v, w)
		if err != nil {
			return fmt.Errorf("the %s cannot be made as it stands:\n%w", w.Name, err)
		}
		if i > 0 {
			all.WriteString("\n\n")
		}
		if err := wheelwright.WriteList(&all, s); err != nil {
			return err
		}
	}
	_, err := all.WriteTo(out)
	return err
}

func wheelFiles(v *vehicle.Vehicle, wheels []*vehicle.Wheel, paper pattern.Paper) ([]delivery.File, error) {
	var files []delivery.File
	for _, w := range wheels {
		s, err := wheelwright.Of(v, w)
		if err != nil {
			return nil, fmt.Errorf("the %s cannot be made as it stands:\n%w", w.Name, err)
		}
		stem := vehicle.Slug(w.ID) + "_issue-" + v.IssueWord()
		for _, kind := range []struct {
			name  string
			write func(io.Writer) error
		}{
			{stem + ".pdf", func(o io.Writer) error { return wheelwright.Write(o, s, v.Date, paper) }},
			{stem + "_rim.pdf", func(o io.Writer) error { return wheelwright.WriteRim(o, v, w, paper) }},
		} {
			var b bytes.Buffer
			if err := kind.write(&b); err != nil {
				return nil, err
			}
			files = append(files, delivery.File{Path: kind.name, Data: b.Bytes()})
		}
	}
	return files, nil
}
