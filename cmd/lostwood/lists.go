package main

import (
	"context"
	"fmt"
	"io"

	"lostwood/internal/listing"
	"lostwood/internal/survey"
)

func runCheck(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("check", "SURVEY", "Says what is wrong with a survey. Nothing is made.", out)
	rest, err := parse(f, args, 1, 1)
	if err != nil {
		return err
	}
	src, err := open(rest)
	if err != nil {
		return err
	}
	s, _, err := known(src)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "%s: no fault found in %d irons, %d parts and %d fastenings.\n",
		src.name, len(s.Irons), len(s.Parts), len(s.Fastenings))
	return err
}

func runSizes(_ context.Context, args []string, out, errs io.Writer) error {
	f := flags("sizes", "[SURVEY]", "Lists every size, its give or take, and how we know.", out)
	intended := f.Bool("intended", false, "set beside each size the one its maker likely meant, where that can be told")
	rest, how, err := listed(f, args, 0, 1)
	if err != nil {
		return err
	}
	src, err := open(rest)
	if err != nil {
		return err
	}
	v, _, err := derived(src)
	if err != nil {
		return err
	}
	if *intended {
		return listing.Intended(v).Write(out, how)
	}
	if err := listing.Sizes(v).Write(out, how); err != nil {
		return err
	}
	if how == listing.Table {
		_, err = fmt.Fprintf(out, "\n%s", listing.Closing(v))
		return err
	}
	_, err = fmt.Fprint(errs, listing.Closing(v))
	return err
}

func runSurvey(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("survey", "", "Prints how a survey is written.", out)
	if _, err := parse(f, args, 0, 0); err != nil {
		return err
	}
	_, err := io.WriteString(out, survey.Reference())
	return err
}
