package survey

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A faulty survey has one fault, where its mark ▲ stands.
type faulty struct{ name, text, found, want string }

func (f faulty) run(t *testing.T) {
	text, at := marked(t, f.text)
	s, err := read("wagon.toml", []byte(text), fakeKinds())
	require.Nil(t, s, "a survey with a fault produces nothing")
	var faults *Faults
	require.ErrorAs(t, err, &faults)
	require.Equal(t, []Fault{{At: at, Found: f.found, Want: f.want}}, faults.List)
}
