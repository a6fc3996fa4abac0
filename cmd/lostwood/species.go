package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
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
	how, err := listing.ParseFormat(*format)
	if err != nil {
		return misuse("%v", err)
	}
	order, err := cutlist.ParseRank(*rank)
	if err != nil {
		return misuse("%v", err)
	}
	if !(*splinter >= 0 && *splinter < 2000) || !(*damp >= 0 && *damp <= 100) {
		return misuse("a splinter of %v kg/m3 at %v %% moisture cannot be; weigh it and measure it again", *splinter, *damp)
	}
	var named []string
	if *from != "" {
		named = []string{*from}
	}
	src, err := open(named)
	if err != nil {
		return err
	}
	v, woods, err := derived(src)
	if err != nil {
		return err
	}
	list, err := selected(woods, *among, *region)
	if err != nil {
		return err
	}
	var part *vehicle.Item
	if len(rest) > 0 {
		items, err := chosen(v, rest)
		if err != nil {
			return err
		}
		part = items[0] // near and off are of one wood
	}
	piece := timber.Splinter{Density: quantity.Density(*splinter), At: quantity.Moisture(*damp)}
	c, err := cutlist.Choose(v, part, woods, list, piece, order)
	if err != nil {
		return misuse("%v", err)
	}
	return c.List().Write(out, how)
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
		if !regions[w.Region] {
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
