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
	show := newProgress(errs)
	files, err := delivery.Make(ctx, delivery.Order{
		Vehicle: v, Survey: src.data, Woods: j.woods, Settings: j.settings, Paper: sheet,
		Tolerance: quantity.Length(*tolerance) * quantity.Millimetre, Progress: show.step,
		Offered: offered, Loaded: loaded, Unfit: how,
		Reasons: delivery.Reasons{Accounts: j.study.Accounts(), Questions: j.study.Questions(), Spacings: j.study.Spacings()},
	})
	show.end()
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
