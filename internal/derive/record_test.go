package derive

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// An approval of a part still proposed, and of another issue, is told of.
func TestApprovalsThatDoNotBear(t *testing.T) {
	woods, err := timber.Published()
	require.NoError(t, err)
	text := string(demo.Survey()) + "\n[[approval]]\nparts = [\"reach\"]\noffice = \"the curator\"\nissue = \"0\"\ndate = 2026-10-01\n"
	s, err := survey.Read("wagon", []byte(text))
	require.NoError(t, err)
	v, err := Vehicle(s, woods)
	require.NoError(t, err)
	require.Equal(t, []string{"near-reach", "off-reach"}, v.Record.Approvals[0].Parts)
	require.Equal(t, "the curator", v.Record.Approval("off-reach").Office)
	require.Nil(t, v.Record.Approval("brake-beam"))
	said := ""
	for _, f := range v.Findings {
		if f.Concern == vehicle.Advice {
			said += f.Says + "\n"
		}
	}
	require.Contains(t, said, "is of issue 0, and this is issue A")
	require.Equal(t, 2, strings.Count(said, "is approved by the curator, but its line says proposed"), said)
}
