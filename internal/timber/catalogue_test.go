package timber_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/timber"
)

func TestFindByAnyName(t *testing.T) {
	c := published(t)
	for name, botanical := range map[string]string{
		"white ash":                     "Fraxinus americana",
		"Ash, white":                    "Fraxinus americana",
		"ash white":                     "Fraxinus americana",
		"  WHITE   ASH ":                "Fraxinus americana",
		"Fraxinus americana":            "Fraxinus americana",
		"white elm":                     "Ulmus americana",
		"Elm, American (white)":         "Ulmus americana",
		"Maple, sugar (hard)":           "Acer saccharum",
		"Rose (flooded) gum":            "Eucalyptus grandis",
		"Marri (WA red gum)":            "Corymbia calophylla",
		"Ironbark, red (mugga)":         "Eucalyptus sideroxylon",
		"Ironbark, red (narrow-leaved)": "Eucalyptus crebra",
		"hard maple":                    "Acer saccharum",
		"Yellow poplar":                 "Liriodendron tulipifera",
		"oak, northern red":             "Quercus rubra",
		"red oak":                       "Quercus rubra",
		"English oak":                   "Quercus robur/petraea",
		"Quercus petraea":               "Quercus robur/petraea",
		"Corymbia citriodora":           "Corymbia maculata/citriodora/henryi",
		"flooded gum":                   "Eucalyptus grandis",
		"mugga":                         "Eucalyptus sideroxylon",
		"Ironbark, narrow-leaved":       "Eucalyptus crebra",
		"WA red gum":                    "Corymbia calophylla",
		"black gum":                     "Nyssa sylvatica",
		"Bois d'Arc":                    "Maclura pomifera",
	} {
		s, err := c.Find(name)
		require.NoError(t, err, name)
		assert.Equal(t, botanical, s.Botanical, name)
	}
}

func TestEveryWoodIsFoundByItsOwnNames(t *testing.T) {
	c := published(t)
	assert.Len(t, c.Woods(), 43)
	for _, w := range c.Woods() {
		for _, name := range []string{w.Common, w.Botanical, strings.ToUpper(w.Common)} {
			got, err := c.Find(name)
			require.NoError(t, err, name)
			assert.Equal(t, w, got)
		}
	}
}

// A red-gum can be the forest, the river or the Western Australian one, and
// in America sweetgum: the name has to be made plain.
func TestFindRefusesNamesOfSeveralWoods(t *testing.T) {
	for name, could := range map[string][]string{
		"red gum":      {"forest red gum (Eucalyptus tereticornis)", "river red gum (Eucalyptus camaldulensis)", "marri (Corymbia calophylla)", "sweetgum (Liquidambar styraciflua)"},
		"red ironbark": {"narrow-leaved red ironbark (Eucalyptus crebra)", "mugga ironbark (Eucalyptus sideroxylon)"},
		"hickory":      {"shagbark hickory (Carya ovata)"},
		"Oak":          {"white oak (Quercus alba)", "European oak (Quercus robur/petraea)"},
		"ash":          {"white ash (Fraxinus americana)", "European ash (Fraxinus excelsior)"},
	} {
		_, err := published(t).Find(name)
		var fault *timber.AmbiguousError
		require.ErrorAs(t, err, &fault, name)
		assert.Subset(t, fault.Could, could, name)
		assert.ErrorContains(t, err, "botanical name")
	}
}

func TestFindOffersTheNearest(t *testing.T) {
	for name, near := range map[string]string{
		"whte ash":        "white ash",
		"Ash, whit":       "white ash",
		"blackbut":        "blackbutt",
		"birch":           "yellow birch",
		"silky oak":       "northern silky oak",
		"Fraxinus amerca": "white ash",
	} {
		_, err := published(t).Find(name)
		var fault *timber.UnknownError
		require.ErrorAs(t, err, &fault, name)
		require.NotEmpty(t, fault.Near, name)
		assert.Equal(t, near, fault.Near[0], name)
	}
	for _, name := range []string{"", "  ", "quebracho", strings.Repeat("x", 10000), "()", "\xff"} {
		_, err := published(t).Find(name)
		var fault *timber.UnknownError
		require.ErrorAs(t, err, &fault)
		assert.LessOrEqual(t, len(fault.Near), 3)
		assert.Less(t, len(err.Error()), 300)
	}
}

func TestOwnWoodIsAdded(t *testing.T) {
	own := timber.Species{
		Common: "common pear", Botanical: "Pyrus communis",
		Shrink: timber.Shrinkage{Radial: timber.Given(3.9, "own sample"), Tangential: timber.Given(11.3, "own sample")},
	}
	c, err := published(t).With(own)
	require.NoError(t, err)
	got, err := c.Find("pear, common")
	require.NoError(t, err)
	assert.Equal(t, own, got)
	_, err = published(t).Find("common pear")
	require.Error(t, err, "the published list has not changed")
}

func TestOwnFiguresAreLaidOver(t *testing.T) {
	c, err := published(t).With(timber.Species{
		Common: "Ash, white", Weight: timber.Weight{Density12: timber.Given(640, "weighed")},
	})
	require.NoError(t, err)
	assert.Len(t, c.Woods(), 43)
	got, err := c.Find("white ash")
	require.NoError(t, err)
	d, basis, err := got.Density(12)
	require.NoError(t, err)
	assert.InDelta(t, 640, float64(d), 1e-9)
	assert.Equal(t, timber.Derived, basis.Standing)
	assert.InDelta(t, 7.8, got.Shrink.Tangential.Value, 0, "what was not stated stays")

	// New shrinkage drops the old unit shrinkage: conventions never mix.
	c, err = published(t).With(timber.Species{
		Botanical: "Eucalyptus pilularis",
		Shrink:    timber.Shrinkage{To: timber.GreenToOvendry, Tangential: timber.Given(10, "own sample"), Saturation: timber.Given(28, "own sample")},
	})
	require.NoError(t, err)
	got, err = c.Find("blackbutt")
	require.NoError(t, err)
	assert.Equal(t, timber.Movement{}, got.Move)
	assert.InDelta(t, 90, float64(resize(t, got, 100, 28, 0, timber.Tangential)), 1e-9)
	assert.False(t, got.Shrink.Radial.Known())
}

func TestOwnFiguresNoWoodCouldHave(t *testing.T) {
	_, err := published(t).With(
		timber.Species{Common: "balloon", Weight: timber.Weight{Density12: timber.Given(1, "")}},
		timber.Species{},
		timber.Species{Common: "sponge", Shrink: timber.Shrinkage{Radial: timber.Given(0, "")}},
	)
	require.Error(t, err)
	for _, part := range []string{"balloon", "neither a common nor a botanical name", "sponge: radial"} {
		assert.ErrorContains(t, err, part)
	}
}

func TestFiguresThatWereNotFoundAreMissing(t *testing.T) {
	s := find(t, "Osage-orange")
	assert.False(t, s.Shrink.Radial.Known())
	assert.False(t, s.Shrink.Tangential.Known())
	assert.InDelta(t, 9.2, s.Shrink.Volumetric.Value, 0)
	assert.Equal(t, timber.Seen, s.Weight.Density12.Standing, "849 is no 1120 x 0.85: it was printed")
	assert.Equal(t, timber.Derived, find(t, "white ash").Weight.Density12.Standing)
}

// The flags of the table: what was recalled is never shown as seen.
func TestStandingOfFigures(t *testing.T) {
	for _, w := range published(t).Woods() {
		if w.Region == "Europe" || w.Common == "river red gum" {
			for _, f := range []timber.Figure{w.Shrink.Radial, w.Shrink.Tangential, w.Weight.Density12, w.Green.Rupture, w.Dry.Rupture, w.Dry.Stiffness} {
				assert.NotEqual(t, timber.Seen, f.Standing, w.Common)
			}
		}
		for _, f := range []timber.Figure{
			w.Shrink.Radial, w.Shrink.Tangential, w.Shrink.Volumetric, w.Move.Radial, w.Move.Tangential, w.Weight.Basic,
			w.Weight.At12, w.Weight.Density12, w.Green.Rupture, w.Green.Stiffness, w.Green.Hardness, w.Dry.Rupture,
			w.Dry.Stiffness, w.Dry.Hardness, w.Bending.Strap, w.Bending.Free, w.Meeting,
		} {
			if f.Known() {
				assert.NotEmpty(t, f.Source, w.Common)
				assert.NotZero(t, f.Value, w.Common)
			} else {
				assert.Zero(t, f, w.Common)
			}
		}
		assert.NotEqual(t, timber.Seen, w.Bending.Strap.Standing, "limiting radii are all recalled")
		require.NoError(t, w.Validate())
	}
	hickory := find(t, "shagbark hickory")
	assert.Equal(t, timber.FromMemory, hickory.Shrink.Tangential.Standing)
	assert.Equal(t, timber.Seen, hickory.Weight.At12.Standing)
	assert.Equal(t, "Wood Handbook tables 4-3 and 13-5, from memory", hickory.Shrink.Tangential.Basis().String())
}

// Wood Handbook 2010 table 4-3 (seen) and Queensland Government species pages (seen).
func TestPublishedShrinkage(t *testing.T) {
	for name, want := range map[string][2]float64{
		"white ash": {4.9, 7.8}, "white oak": {5.6, 10.5}, "northern red oak": {4.0, 8.6}, "American elm": {4.2, 9.5},
		"sugar maple": {4.8, 9.9}, "yellow-poplar": {4.6, 8.2}, "sweetgum": {5.3, 10.2}, "coast Douglas-fir": {4.8, 7.6},
		"blackbutt": {4.3, 7.3}, "tallowwood": {3.7, 6.1}, "brush box": {4.4, 9.7}, "jarrah": {4.8, 7.4},
	} {
		s := find(t, name)
		assert.Equal(t, want, [2]float64{s.Shrink.Radial.Value, s.Shrink.Tangential.Value}, name)
		assert.Equal(t, timber.Seen, s.Shrink.Tangential.Standing, name)
	}
}

func TestReadTableTellsEveryFault(t *testing.T) {
	const head = "common,also,botanical,region,shrink_to,radial_pct,tangential_pct,volumetric_pct,move_basis,move_radial_pct_per_1mc,move_tangential_pct_per_1mc,sg_basic,sg_12,density12_kgm3,green_heart_pct,green_sap_pct,mor_green_mpa,mor_12_mpa,moe_green_gpa,moe_12_gpa,janka_green_n,janka_12_n,meet_pct,strength_groups,durability,drying_days,bend_strap_mm,bend_free_mm,bend_note,source_shrink,source_density,source_strength,source_durability,from_memory_fields,note\n"
	_, err := timber.ReadTable(strings.NewReader(head +
		"pear,,,,green,four,11,,C,,,,,,,,,,,,,,,S9,,60,,,,,,,,radial,\n" +
		"plum,,,,OD,99,,,,,,,,,,,,,,,,,,,,,,,,,,,,,\n"))
	var fault *timber.TableError
	require.ErrorAs(t, err, &fault)
	for _, part := range []string{"line 2, column shrink_to", "“four” is not a number", "column move_basis", "“S9”", "“60” is not two numbers", "“radial” is no heading", "line 3: plum: radial shrinkage"} {
		assert.ErrorContains(t, err, part)
	}
	for text, part := range map[string]string{
		"":                       "first line",
		"common,colour,common\n": "colour",
		head + "pear,\n":         "fewer cells",
		head + "\"pear\n":        "quote",
		strings.Replace(head, "note", "notes", 1): "notes",
	} {
		_, err := timber.ReadTable(strings.NewReader(text))
		require.ErrorAs(t, err, &fault, text)
		assert.ErrorContains(t, err, part)
	}
	woods, err := timber.ReadTable(strings.NewReader("\ufeff" + head))
	require.NoError(t, err)
	assert.Empty(t, woods)
}

func FuzzReadTable(f *testing.F) {
	f.Add("common,also\nash,white\n")
	f.Add("")
	f.Fuzz(func(t *testing.T, text string) {
		woods, err := timber.ReadTable(strings.NewReader(text))
		if err != nil {
			require.Empty(t, woods)
			return
		}
		for _, w := range woods {
			require.NoError(t, w.Validate())
		}
	})
}

func FuzzFind(f *testing.F) {
	c, err := timber.Published()
	require.NoError(f, err)
	f.Add("white ash")
	f.Add("Ash, ()")
	f.Fuzz(func(t *testing.T, name string) {
		if s, err := c.Find(name); err == nil {
			require.NotEmpty(t, s.Common)
		}
	})
}
