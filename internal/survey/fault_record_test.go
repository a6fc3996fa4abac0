package survey

import (
	"testing"

	"github.com/stretchr/testify/require"
)

const leave = "[[approval]]\nparts = [\"sill\", \"cross-bar-2\"]\noffice = \"the curator\"\nissue = \"A\"\ndate = 2026-11-14\n"

func TestRecord(t *testing.T) {
	s, err := read("wagon.toml", []byte(front+things+leave+
		"[[settled]]\nabout = \"sill-plate\"\nhow = \"read again\"\n[record]\nobject = \"7.1\"\nleft-undone = [\"paint not analysed\"]\n"), fakeKinds())
	require.NoError(t, err)
	require.Equal(t, Record{Object: "7.1", LeftUndone: []string{"paint not analysed"}}, s.Record)
	require.Len(t, s.Approvals, 1)
	require.Equal(t, "cross-bar-2", s.Approvals[0].Parts[1].ID)
	require.Equal(t, "A", s.Approvals[0].Issue)
	require.Equal(t, "read again", s.Settled[0].How)
}

func TestRecordFaults(t *testing.T) {
	const of = "[[approval]]\noffice = \"the curator\"\nissue = \"A\"\ndate = 2026-11-14\n"
	for _, f := range []faulty{
		{"of no part", of + "parts = ▲[]\n", `an approval of no parts`, `write the ids of parts, such as parts = ["sill", "bolster"]`},
		{"of an iron", of + "parts = ▲\"sill-plate\"\n", `an approval of “sill-plate”, which is an iron`, `write the id of a part`},
		{"of a stranger", of + "parts = ▲\"crossbar\"\n", `“crossbar”, which is no iron and no part here`, `did you mean cross-bar?`},
		{"without office", "[[▲approval]]\nparts = \"sill\"\nissue = \"A\"\ndate = 2026-11-14\n", `an approval with no “office”`, `write office = "the curator of vehicles"`},
		{"settled how", "[[▲settled]]\nabout = \"sill\"\n", `what was settled with no “how”`, `write how = "read again by two people; the first reading was from the wrong end"`},
	} {
		f.text = front + things + f.text
		t.Run(f.name, f.run)
	}
}
