package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"lostwood/internal/delivery"
	"lostwood/internal/fit"
	"lostwood/internal/listing"
	"lostwood/internal/load"
	"lostwood/internal/vehicle"
)

func runOffer(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("offer", "[SURVEY]", "Offers every part up to its place: whether bolts, holes, joints and moving parts go together,\n"+
		"in every season, before anything is cut. Ends with 1 where something cannot go together.", out)
	all := f.Bool("all", false, "tell what is only noted, too")
	order := f.Bool("order", false, "list an order in which it goes together instead")
	leave := f.Bool("leave", false, "list what to leave on, or unbored, until offered up instead")
	bolts := f.Bool("bolts", false, "list what every bolt holds and what to buy instead")
	loads := f.Bool("loads", false, "list what everything weighs and how it bears its load instead")
	rest, how, err := listed(f, args, 0, 1)
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
	r, l, unfit, err := offer(j)
	if err != nil {
		return err
	}
	if err := writeOffer(out, j.vehicle, r, l, how, asks{*all, *order, *leave, *bolts, *loads}); err != nil {
		return err
	}
	if n := len(fit.Fails(r.Remarks)); n > 0 {
		return fmt.Errorf("%s cannot go together as it stands: %s; %s", j.vehicle.Name, times(n, "thing"), times(len(unfit), "part"))
	}
	return nil
}

// asks are what of the report was asked for.
type asks struct{ all, order, leave, bolts, loads bool }

func writeOffer(out io.Writer, v *vehicle.Vehicle, r *fit.Report, l *load.Report, how listing.Format, a asks) error {
	switch {
	case a.order && how == listing.Table:
		return fit.WriteSteps(out, v, r)
	case a.order:
		return fit.StepsList(v, r).Write(out, how)
	case a.leave:
		return fit.LeaveList(v, r).Write(out, how)
	case a.bolts:
		return fit.BoltsList(v, r).Write(out, how)
	case a.loads:
		return writeLists(out, l.Lists(), how)
	case how != listing.Table:
		return fit.RemarksList(v, r.Remarks).Write(out, how)
	case a.all:
		return fit.Write(out, v, r, fit.Full)
	}
	return fit.Write(out, v, r, fit.Short)
}

// writeLists writes lists one below the other.
func writeLists(out io.Writer, all []*listing.List, how listing.Format) error {
	for i, l := range all {
		if i > 0 {
			fmt.Fprintln(out)
		}
		if err := l.Write(out, how); err != nil {
			return err
		}
	}
	return nil
}

// offer offers a vehicle up, works out how it bears its load, and marks the parts
// that do not go together.
func offer(j job) (*fit.Report, *load.Report, []*vehicle.Item, error) {
	r, err := fit.Of(j.vehicle, j.woods, j.study)
	if err != nil {
		return nil, nil, nil, err
	}
	l, err := load.Of(j.vehicle, j.woods)
	if err != nil {
		return nil, nil, nil, err
	}
	r.Remarks = fit.InOrder(append(r.Remarks, l.Remarks...))
	return r, l, fit.Mark(j.vehicle, r.Remarks), nil
}

func times(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// offeredWords is what make says of the offering up.
func offeredWords(r *fit.Report, unfit []*vehicle.Item, how delivery.Unfit) string {
	n := 0
	for _, m := range r.Remarks {
		if m.Gravity == vehicle.LookAt {
			n++
		}
	}
	words := fmt.Sprintf("Offered up: %s to look at before cutting; lostwood offer tells them.\n", times(n, "thing"))
	if len(unfit) == 0 {
		return words + "\n"
	}
	what := "marked so"
	if how == delivery.WithholdUnfit {
		what = "withheld"
	}
	words += fmt.Sprintf("%s cannot go together as they stand, and their meshes and patterns are %s:\n", times(len(unfit), "part"), what)
	for _, it := range unfit {
		words += "  - " + partName(it) + ": " + it.Fails[0] + "\n"
	}
	return words + "\n"
}

func partName(it *vehicle.Item) string {
	if it.Hand == vehicle.Alike {
		return fmt.Sprintf("%02d %s", it.Number, it.Name)
	}
	return fmt.Sprintf("%02d %s %s", it.Number, it.Name, strings.ToUpper(it.Hand.String()))
}

func withheld(unfit []*vehicle.Item) string {
	return fmt.Sprintf("%s withheld, because they cannot go together as they stand; without --strict they are made and marked", times(len(unfit), "part"))
}
