package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/timbering"
	"lostwood/internal/vehicle"
)

func runSpecies(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("species", "[PART]", "Holds woods side by side, for a part where one is named, by number, id or name.", out)
	from := f.String("survey", "", "the survey's `file`; the orchard wagon where not given")
	format := f.String("format", "table", "how to write it: table, csv or json")
	among := f.StringSlice("woods", nil, "only these `woods`, with commas between")
	region := f.String("region", "", "only woods of that `region`: US, Europe or Australia")
	rank := f.String("rank", "none", "put them in order by stiffness, strength, hardness, mass, movement or splinter")
	splinter := f.Float64("splinter", 0, "what a surviving piece weighs, in `kg/m3`")
	damp := f.Float64("splinter-moisture", 12, "its moisture when it was weighed, in percent")
	rest, err := parse(f, args, 0, 1)
	if err != nil {
		return err
	}
	how, errFormat := listing.ParseFormat(*format)
	order, errRank := cutlist.ParseRank(*rank)
	if err := errors.Join(errFormat, errRank); err != nil {
		return misuse("%v", err)
	}
	if !(*splinter >= 0 && *splinter < 2000) || !(*damp >= 0 && *damp <= 100) {
		return misuse("a splinter of %v kg/m3 at %v %% moisture cannot be; weigh it and measure it again", *splinter, *damp)
	}
	j, part, err := partOf(*from, rest)
	if err != nil {
		return err
	}
	woods, err := selected(j.woods, *among, *region)
	if err != nil {
		return err
	}
	var piece timber.Splinter
	var look string
	if part != nil {
		piece, look = timbering.Splinter(j.survey, part.ID)
	}
	if f.Changed("splinter") {
		piece.Density, piece.At = quantity.Density(*splinter), quantity.Moisture(*damp)
	}
	if f.Changed("splinter-moisture") {
		piece.At = quantity.Moisture(*damp)
	}
	c, err := cutlist.Choose(j.vehicle, part, j.woods, woods, piece, order)
	if err != nil {
		return blamed(err)
	}
	list := c.List()
	if look != "" {
		list.Foot = append(list.Foot, "", "What is left of it, as the survey says: "+strings.TrimSuffix(look, ".")+".")
	}
	return list.Write(out, how)
}

// partOf is a survey with its vehicle and woods, and the part that words name;
// none where they name none.
func partOf(file string, words []string) (job, *vehicle.Item, error) {
	var named []string
	if file != "" {
		named = []string{file}
	}
	src, err := open(named)
	if err != nil {
		return job{}, nil, err
	}
	j, err := settled(src)
	if err != nil || len(words) == 0 {
		return j, nil, err
	}
	items, err := chosen(j.vehicle, words)
	if err != nil {
		return j, nil, err
	}
	return j, items[0], nil // near and off are of one wood
}

// selected are the woods asked for; all where nothing is asked.
func selected(woods timber.Catalogue, names []string, region string) ([]timber.Species, error) {
	var out []timber.Species
	for _, n := range names {
		w, err := woods.Find(strings.TrimSpace(n))
		if err != nil {
			return nil, misuse("%v", err)
		}
		out = append(out, w)
	}
	if len(names) > 0 {
		return out, nil
	}
	regions := map[string]bool{}
	var known []string
	for _, w := range woods.Woods() {
		if w.Region != "" && !regions[w.Region] {
			regions[w.Region] = true
			known = append(known, w.Region)
		}
		if region == "" || strings.EqualFold(region, w.Region) {
			out = append(out, w)
		}
	}
	if len(out) == 0 {
		return nil, misuse("there is no wood of %s in the list; there are woods of %s", fmt.Sprintf("%q", region), strings.Join(known, ", "))
	}
	return out, nil
}
