package main

import (
	"context"
	"io"

	"lostwood/internal/listing"
)

func runQuestions(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("questions", "[SURVEY]", "Lists what contradicts, what nothing checks, what is not known, and what to measure next.", out)
	rest, how, err := listed(f, args, 0, 1)
	if err != nil {
		return err
	}
	st, err := studied(rest)
	if err != nil {
		return err
	}
	return listing.WriteQuestions(out, st.Vehicle, st.Questions(), how)
}
