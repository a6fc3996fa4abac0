package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"lostwood/internal/delivery"
	"lostwood/internal/listing"
	"lostwood/internal/pattern"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

func runMake(ctx context.Context, args []string, out, errs io.Writer) error {
	f := flags("make", "[SURVEY]", "Makes meshes, full-size patterns, the cutting list and the record of a vehicle.", out)
	folder := f.String("out", "", "the `folder` to write; out/ and the vehicle's name where not given")
	paper := f.String("paper", "A4", "what patterns are printed on: A4, A3, A2, A1, A0, Letter, Tabloid, or roll and its width")
	tolerance := f.Float64("tolerance", 0.05, "how far a mesh may lie from the true surface, in `mm`")
	strict := f.Bool("strict", false, "withhold the meshes and patterns of parts that do not go together, and end with 1 where there are any")
	rest, err := parse(f, args, 0, 1)
	if err != nil {
		return err
	}
	sheet, err := pattern.FindPaper(*paper)
	if err != nil {
		return misuse("%v", err)
	}
	if err := tolerable(*tolerance); err != nil {
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
	v := j.vehicle
	if err := makeable(v); err != nil {
		return err
	}
	if *folder == "" {
		*folder = filepath.Join("out", v.Slug)
	}
	offered, loaded, unfit, err := offer(j)
	if err != nil {
		return err
	}
	how := delivery.MarkUnfit
	if *strict {
		how = delivery.WithholdUnfit
	}
	order := ordered(src, j)
	order.Paper, order.Tolerance = sheet, quantity.Length(*tolerance)*quantity.Millimetre
	order.Offered, order.Loaded, order.Unfit = offered, loaded, how
	files, err := made(ctx, order, errs)
	if err != nil {
		return err
	}
	if err := delivery.Put(*folder, files); err != nil {
		return err
	}
	if _, err = fmt.Fprintf(out, "%s\n%s%d files are in %s\n", listing.Closing(v), offeredWords(offered, unfit, how), len(files), *folder); err != nil {
		return err
	}
	if *strict && len(unfit) > 0 {
		return errors.New(withheld(unfit))
	}
	return nil
}

// ordered is the order of all that a survey comes to.
func ordered(src source, j job) delivery.Order {
	return delivery.Order{
		Vehicle: j.vehicle, Survey: src.data, Woods: j.woods, Settings: j.settings,
		Reasons: delivery.Reasons{Accounts: j.study.Accounts(), Questions: j.study.Questions(), Spacings: j.study.Spacings()},
	}
}

// made makes an order, and shows how far it has come.
func made(ctx context.Context, o delivery.Order, errs io.Writer) ([]delivery.File, error) {
	show := newProgress(errs)
	defer show.end()
	o.Progress = show.step
	return delivery.Make(ctx, o)
}

// wholly is the order of all that a survey comes to, made as usual, once every
// part can be made.
func wholly(src source) (delivery.Order, job, error) {
	j, err := settled(src)
	if err != nil {
		return delivery.Order{}, j, err
	}
	if err := makeable(j.vehicle); err != nil {
		return delivery.Order{}, j, err
	}
	offered, loaded, _, err := offer(j)
	if err != nil {
		return delivery.Order{}, j, err
	}
	o := ordered(src, j)
	o.Offered, o.Loaded, o.Unfit = offered, loaded, delivery.MarkUnfit
	o.Tolerance = 0.05 * quantity.Millimetre
	o.Paper, err = pattern.FindPaper("A4")
	return o, j, err
}

// A notMade lists the parts that cannot be made.
type notMade struct{ vehicle *vehicle.Vehicle }

func (e *notMade) Error() string {
	var b strings.Builder
	b.WriteString("Nothing was made, because not every part can be:\n")
	for _, f := range e.vehicle.Findings {
		if f.Concern == vehicle.Unmakeable {
			fmt.Fprintf(&b, "  line %d: %s\n", f.Line, f.Says)
		}
	}
	b.WriteString(`A part that is not to be made yet can be left out with status = "left open".`)
	return b.String()
}

func makeable(v *vehicle.Vehicle) error {
	for _, f := range v.Findings {
		if f.Concern == vehicle.Unmakeable {
			return &notMade{v}
		}
	}
	return nil
}
