package main

import (
	"bytes"
	"context"
	"testing"

	"github.com/stretchr/testify/require"
)

// The exit codes are those that the README and the help give.
func TestExitCodes(t *testing.T) {
	for _, c := range []struct {
		args []string
		want code
	}{
		{[]string{"help"}, done},
		{[]string{"sizes", "--help"}, done},
		{[]string{"survey"}, done},
		{nil, misused},
		{[]string{"meke"}, misused},
		{[]string{"sizes", "--nonsense"}, misused},
		{[]string{"check", "testdata/nowhere.toml"}, misused},
		{[]string{"check", "run_test.go"}, atFault},
	} {
		var out, errs bytes.Buffer
		require.Equal(t, c.want, run(context.Background(), c.args, &out, &errs), "%v: %s", c.args, errs.String())
		if c.want != done {
			require.NotEmpty(t, errs.String())
		}
	}
}

// A run that is stopped changes nothing.
func TestStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	folder := t.TempDir() + "/wagon"
	var out, errs bytes.Buffer
	require.Equal(t, atFault, run(ctx, []string{"make", "--out", folder}, &out, &errs))
	require.Contains(t, errs.String(), "nothing was changed")
	require.NoDirExists(t, folder)
}
