package timber_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// What people read when a figure is missing or cannot be.
func TestErrorsSpeakPlainly(t *testing.T) {
	_, err := find(t, "sweetgum").Resize(100, 12, math.MaxFloat32, timber.Radial)
	assert.EqualError(t, err, "moisture, percent: 3.40282e+38; it must lie between 0 and 600")
	_, _, err = find(t, "sweetgum").Density(12)
	assert.EqualError(t, err, "sweetgum: density or specific gravity not found in any source here; give the wood's density at 12 % moisture")
	_, err = published(t).Find("whte ash")
	assert.EqualError(t, err, "wood “whte ash” is not in the list; the nearest there: white ash; or give its own figures")
	_, err = published(t).Find("red ironbark")
	assert.EqualError(t, err, "“red ironbark” could be narrow-leaved red ironbark (Eucalyptus crebra), or mugga ironbark (Eucalyptus sideroxylon); write the one meant, or its botanical name")
	_, _, err = find(t, "white ash").Density(400)
	assert.EqualError(t, err, "white ash: moisture, percent: 400; it must lie between 0 and 116.883; full of water it holds 117")
	_, err = timber.EMC(timber.Celsius(math.NaN()), 0.5)
	assert.ErrorContains(t, err, "temperature, degrees Celsius: NaN")
	_, err = timber.ReadTable(unreadable{})
	assert.ErrorContains(t, err, "line 1")
	assert.EqualError(t, &timber.TableError{Line: 3, Column: "note", Fault: "empty"}, "line 3, column note: empty")
	assert.EqualError(t, &timber.RangeError{What: "load", Got: 2, Min: math.Inf(-1), Max: 1}, "load: 2; it must be 1 or less")
	assert.EqualError(t, &timber.RangeError{What: "load", Got: 0, Min: 1, Max: math.Inf(1)}, "load: 0; it must be 1 or more")
	assert.EqualError(t, &timber.RangeError{What: "load", Got: math.NaN(), Min: math.Inf(-1), Max: math.Inf(1)}, "load: NaN; it must be a number")
}

// unreadable fails at once.
type unreadable struct{}

func (unreadable) Read([]byte) (int, error) { return 0, assert.AnError }

func TestWordsOfChoices(t *testing.T) {
	assert.Equal(t, "from memory", timber.FromMemory.String())
	assert.Equal(t, "Standing(9)", timber.Standing(9).String())
	assert.Equal(t, "grain not known", timber.Worst.String())
	assert.Equal(t, "Direction(-1)", timber.Direction(-1).String())
	assert.Equal(t, "not found", timber.Basis{}.String())
	assert.Equal(t, "table", timber.Basis{Source: "table", Standing: timber.Seen}.String())
	assert.Equal(t, "scales, given", timber.Given(1, "scales").Basis().String())
}

func TestEveryOwnFigureIsLaidOver(t *testing.T) {
	own := timber.Species{
		Common: "Ash, white", Botanical: "Fraxinus americana", Also: []string{"hill ash"}, Region: "here", Note: "tested",
		Shrink:     timber.Shrinkage{Lengthwise: timber.Given(0.3, "own"), Saturation: timber.Given(28, "own")},
		Move:       timber.Movement{Kind: timber.HandbookOwn, Radial: timber.Given(0.2, "own")},
		Dry:        timber.Strength{Rupture: timber.Given(90, "own")},
		Meeting:    timber.Given(26, "own"),
		Groups:     timber.Groups{Green: 3},
		Durability: timber.Text{Words: "resistant"},
		Drying:     timber.AirDrying{Least: 10, Most: 20, Basis: timber.Basis{Source: "own", Standing: timber.Own}},
		Bending:    timber.Bending{Words: "splits"},
	}
	c, err := published(t).With(own)
	require.NoError(t, err)
	got, err := c.Find("hill ash")
	require.NoError(t, err)
	assert.InDelta(t, 7.8, got.Shrink.Tangential.Value, 0, "shrinkage that was not stated stays")
	got.Shrink.Radial, got.Shrink.Tangential, got.Shrink.Volumetric = timber.Figure{}, timber.Figure{}, timber.Figure{}
	own.Also = []string{"American ash", "American white ash", "hill ash", "white ash"}
	own.Weight = find(t, "white ash").Weight
	assert.Equal(t, own, got)
}

// Shrinkage to 12 % with a saturation under the service moistures: straight
// from 12 % to green, and never more than the green size.
func TestSeasonedWoodOfLowSaturation(t *testing.T) {
	s := find(t, "blackbutt")
	s.Shrink.Saturation = timber.Given(17, "own sample")
	assert.InDelta(t, 92.7, float64(resize(t, s, 100, 17, 12, timber.Tangential)), 1e-9)
	assert.InDelta(t, (100+92.7)/2, float64(resize(t, s, 100, 17, 14.5, timber.Tangential)), 1e-9)
	assert.Equal(t, quantity.Length(100), resize(t, s, 100, 17, 90, timber.Tangential))
}
