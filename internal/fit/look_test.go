package fit_test

import (
	"fmt"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/fit"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
)

func TestLook(t *testing.T) {
	woods, err := timber.Published()
	require.NoError(t, err)
	data := demo.Survey()
	if f := os.Getenv("LOOK"); f != "" {
		data, err = os.ReadFile(f)
		require.NoError(t, err)
	}
	s, err := survey.Read("demo", data)
	require.NoError(t, err)
	st, err := derive.Examine(s, woods)
	require.NoError(t, err)
	at := time.Now()
	r, err := fit.Of(st.Vehicle, woods, st)
	require.NoError(t, err)
	fmt.Println(time.Since(at), r.Counts)
	for _, m := range r.Remarks {
		fmt.Println(m.Gravity, "|", m.Check, "|", m.Subject, "|", m.Says, m.Do, m.Place)
	}
}

func TestLeave(t *testing.T) {
	woods, _ := timber.Published()
	s, err := survey.Read("demo", demo.Survey())
	require.NoError(t, err)
	st, err := derive.Examine(s, woods)
	require.NoError(t, err)
	r, err := fit.Of(st.Vehicle, woods, st)
	require.NoError(t, err)
	for _, b := range r.Steps {
		fmt.Printf("%+v\n", b)
	}
}
