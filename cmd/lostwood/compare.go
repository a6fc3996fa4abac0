package main

import (
	"context"
	"io"

	"lostwood/internal/compare"
	"lostwood/internal/delivery"
)

func runCompare(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("compare", "OLD NEW", "Compares two issues of a survey: what moved, by how much against its give or take,\n"+
		"which parts must be approved again, and which files are to be called back from whom.", out)
	rest, how, err := listed(f, args, 1, 2)
	if err != nil {
		return err
	}
	if len(rest) < 2 {
		return misuse("compare wants two surveys, the older first; there is only %q", rest[0])
	}
	var both [2]job
	for i, name := range rest {
		src, err := open([]string{name})
		if err != nil {
			return err
		}
		if both[i], err = settled(src); err != nil {
			return err
		}
	}
	c := compare.Vehicles(both[0].vehicle, both[1].vehicle)
	old := delivery.Order{Vehicle: both[0].vehicle, Woods: both[0].woods, Settings: both[0].settings}
	paths, err := delivery.Paths(old)
	if err != nil {
		return err
	}
	return c.Write(out, c.Stale(paths), how)
}
