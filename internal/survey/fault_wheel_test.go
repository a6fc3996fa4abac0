package survey_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/survey"
)

const wheeled = `[vehicle]
name = "Barrow"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
timber = "white oak"
bought = 20
service = "9 .. 14"
[iron]
axle = { kind = "axle", runs = "across", thick = "1 1/4", wide = "1 1/4", long = "38" }
tyre = { kind = "tyre", girth = "125 21/32", wide = "1 1/2", thick = "3/8" }
[part]
bed = { kind = "axle bed", runs = "across" }
rim = { kind = "felloe", runs = "round", felloes = 7 }
[wheel]
`

// Whatever is wrong with a wheel is told with what would do.
func TestWheelFaults(t *testing.T) {
	for line, says := range map[string]string{
		`fore = { felloes = 6, spokes = 13 }`:               "13 spokes in 6 felloes",
		`fore = { spokes = 12 }`:                            "a wheel with no “felloes”",
		`fore = { felloes = 6, tyre = "axle" }`:             "as the tyre of “fore”, which it is not",
		`fore = { felloes = 6, axle = "tyre" }`:             "as the axle of “fore”, which it is not",
		`fore = { felloes = 6, felloe = "bed" }`:            "which is no felloe",
		`fore = { felloes = 6, felloe = "rim" }`:            "7 felloes under “rim” and 6 in the wheel",
		`fore = { felloes = 6, over = "tyre" }`:             "what a height is over, and no height",
		`fore = { felloes = 6, of = "off" }`:                "“of” for a wheel that is no pair",
		`fore = { felloes = 6, twin = "hind" }`:             "as a twin, which is no other wheel here",
		`fore = { felloes = 6, hub = "7" }`:                 "write nave",
		`fore = { felloes = 6, nave = "0" }`:                "a length of nothing",
		`fore = { felloes = 6, use = "chariot" }`:           "which is not known here",
		`fore = { felloes = 6, nave = "7 ± 1/8 sometimes"}`: "no way of knowing",
		`tyre = { felloes = 6 }`:                            "the id of another thing too",
	} {
		_, err := survey.Read("barrow.toml", []byte(wheeled+line+"\n"))
		require.Error(t, err, line)
		require.Contains(t, err.Error(), says, line)
	}
	s, err := survey.Read("barrow.toml", []byte(wheeled+`fore = { pair = true, of = "off", felloes = 6, tyre = "tyre", dish = "0", height = "40 like" }`+"\n"))
	require.NoError(t, err)
	require.Equal(t, 12, s.Wheels[0].Spokes)
	require.Len(t, s.Wheels[0].Stated, 2)
}
