package timber_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

func considered(t *testing.T, task timber.Task, name string) timber.Candidate {
	t.Helper()
	c, err := task.Consider(find(t, name))
	require.NoError(t, err)
	return c
}

// Wood Handbook table 5-3 (seen): white ash at 12 %: 103 MPa, 12.0 GPa. Table
// 4-3 and 4-11: 1 litre weighs 0.675 kg at 12 % by the formula; 10 in wide from
// 9 to 14 % moves 254 x (1 - .078 x 16/30 - 1 + .078 x 21/30) / (1 - .078 x 18/30) = 3.464 mm.
func TestWhiteAshInATask(t *testing.T) {
	task := timber.Task{Net: 1e6, Broad: 10 * quantity.Inch, Service: 12, Driest: 9, Wettest: 14}
	c := considered(t, task, "white ash")
	assert.InDelta(t, 12000, c.Stiffness.Value, 1e-9)
	assert.InDelta(t, 103, c.Strength.Value, 1e-9)
	assert.InDelta(t, 0.675, c.Mass.Value, 0.0005)
	assert.InDelta(t, 254*0.078*5/30/(1-0.078*18/30), c.Moves.Value, 1e-9)
	assert.Equal(t, timber.Seen, c.Stiffness.Basis.Standing)
	assert.Equal(t, timber.FromMemory, c.Lasts.Standing)
	assert.Nil(t, c.Bend)
	assert.False(t, c.Heavier.Known())
}

// What is not known is said, with the reason, and does not take the rest with it.
func TestUnknownQualitiesSayWhy(t *testing.T) {
	task := timber.Task{Net: 1e6, Broad: 100, Service: 14, Driest: 9, Wettest: 14}
	c := considered(t, task, "wych elm") // no shrinkage in any source here
	assert.False(t, c.Moves.Known())
	var missing *timber.NoFigureError
	require.ErrorAs(t, c.Moves.Why, &missing)
	assert.True(t, c.Strength.Known() || c.Density.Known())
	assert.Contains(t, c.Cautions, "how it moves is not known: do not put irons across its grain until a sample has been watched")

	// Sydney blue gum's own strength is known only at 12 %: at 14 it is the pair of its groups.
	c = considered(t, task, "Sydney blue gum")
	assert.Contains(t, c.Strength.Basis.Source, "strength group")

	// Sweetgum has shrinkage and nothing of strength.
	c = considered(t, task, "sweetgum")
	assert.False(t, c.Stiffness.Known())
	assert.False(t, c.Mass.Known())
	assert.True(t, c.Moves.Known())
}

// A splinter of 690 kg/m3 at 12 % may be white ash (675 by the formula, 2 %
// lighter), and is not yellow-poplar.
func TestSplinter(t *testing.T) {
	task := timber.Task{Service: 12, Driest: 12, Wettest: 12, Splinter: timber.Splinter{Density: 690, At: 12}}
	ash := considered(t, task, "white ash")
	assert.InDelta(t, -2.2, ash.Heavier.Value, 0.1)
	assert.False(t, ash.UnlikeSplinter())
	assert.True(t, considered(t, task, "yellow-poplar").UnlikeSplinter())
}

// A bend tighter than the wood takes is warned of (limits from memory of
// Stevens and Turner), and one without a limit is to be proved first.
func TestBendInATask(t *testing.T) {
	task := timber.Task{Service: 12, Driest: 12, Wettest: 12, BendRadius: 76, BendThick: 25}
	require.NotNil(t, considered(t, task, "white oak").Bend)
	assert.Empty(t, considered(t, task, "white oak").Bend.Warnings)
	assert.NotEmpty(t, considered(t, task, "white ash").Bend.Warnings)
	assert.Contains(t, considered(t, task, "yellow-poplar").Cautions, "no bending limit is known for it: prove it on two trial pieces")
	_, err := timber.Task{Service: -1}.Consider(find(t, "white ash"))
	require.Error(t, err)
}
