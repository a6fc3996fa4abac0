package main

import (
	"context"
	"errors"
	"io"

	"lostwood/internal/derive"
	"lostwood/internal/listing"
)

func runWhy(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("why", "PART.SIZE [SURVEY]", "Tells how a size comes about: what says so, what each alone would say, what contradicts,\n"+
		"what nothing checks. PART is as the survey writes it (reach, near-reach, cross-bar-2), SIZE one of\n"+
		"its sizes (deep), places (top, fore, mid-x), or what is bored or cut in it (\"fastening 5\").", out)
	rest, how, err := listed(f, args, 1, 2)
	if err != nil {
		return err
	}
	st, err := studied(rest[1:])
	if err != nil {
		return err
	}
	accounts, err := st.Why(rest[0])
	if unknown := (*derive.NameError)(nil); errors.As(err, &unknown) {
		return misuse("%v", err)
	}
	if err != nil {
		return err
	}
	return listing.WriteWhy(out, accounts, st.Vehicle.Unit, how)
}

// studied is the study of the survey that was named, or of the one that comes
// with the program.
func studied(named []string) (*derive.Study, error) {
	src, err := open(named)
	if err != nil {
		return nil, err
	}
	s, woods, err := known(src)
	if err != nil {
		return nil, err
	}
	return derive.Examine(s, woods)
}
