package survey

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/vehicle"
)

// Masses in pounds and kilograms (a pound is 0.45359237 kg, by definition),
// and how each load lies.
func TestLoads(t *testing.T) {
	text := strings.Replace(front, "unit = \"in\"\n", "unit = \"in\"\ntrack = \"4 ft 8\"\n", 1) + things + `[[load]]
name = "apple boxes"
mass = "1,200 lb ± 100"
on = ["cross-bar", "near-sill"]
middle = "12"
shock = 1.5
[[load]]
name = "persons"
mass = "80.5 ± 10 kg"
number = 2
on = "bolster"
lies = "in places"
[[load]]
name = "a foot on the edge"
mass = "180 lbs"
on = "cross-bar"
lies = "Hind edge"
within = "10"
[[load]]
name = "hubs"
mass = "40 kg +/- 2"
on = "sill-plate"
always = true
`
	s, err := read("wagon.toml", []byte(text), fakeKinds())
	require.NoError(t, err)
	assert.InDelta(t, 56*25.4, float64(s.Track), 1e-9)
	require.Len(t, s.Loads, 4)
	boxes, persons, foot, hubs := s.Loads[0], s.Loads[1], s.Loads[2], s.Loads[3]
	assert.InDelta(t, 1200*.45359237, float64(boxes.Mass), 1e-9)
	assert.InDelta(t, 100*.45359237, float64(boxes.Doubt), 1e-9)
	assert.Equal(t, "near-sill", boxes.On[1].ID)
	assert.InDelta(t, 304.8, float64(boxes.Middle), 1e-9)
	assert.InDelta(t, 1.5, boxes.Shock, 0)
	assert.Equal(t, vehicle.Spread, boxes.Lies)
	assert.Equal(t, 1, boxes.Number)
	assert.InDelta(t, 80.5, float64(persons.Mass), 1e-12)
	assert.InDelta(t, 10, float64(persons.Doubt), 1e-12)
	assert.Equal(t, vehicle.InPlaces, persons.Lies)
	assert.Equal(t, 2, persons.Number)
	assert.InDelta(t, 1, persons.Shock, 0)
	assert.Equal(t, vehicle.HindEdge, foot.Lies)
	assert.InDelta(t, 254, float64(foot.Within), 1e-9)
	assert.Equal(t, vehicle.Standing, hubs.Always)
	assert.InDelta(t, 2, float64(hubs.Doubt), 1e-12)
}

// Every key of a load tells what it cannot be.
func TestLoadFaults(t *testing.T) {
	const (
		mass  = `write a number and lb or kg between quotes, such as "1200 lb" or "1200 lb ± 100"`
		apple = "[[load]]\nname = \"apples\"\nmass = \"100 kg\"\n"
		on    = "on = \"cross-bar\"\n"
	)
	load := func(line string) string { return "[[load]]\nname = \"apples\"\non = \"cross-bar\"\n" + line }
	for _, f := range []faulty{
		{"no name", "[[▲load]]\nmass = \"100 kg\"\n" + on, `a load with no “name”`, `write name = "apple boxes"`},
		{"no mass", "[[▲load]]\nname = \"apples\"\n" + on, `a load with no “mass”`, `write mass = "1200 lb ± 100"`},
		{"no place", strings.Replace(apple, "[[", "[[▲", 1), `a load with no “on”`, `write on = ["slat-in", "slat-out"]`},
		{"mass with no unit", load("mass = ▲\"1200\"\n"), `“1200”, which is no mass in lb or kg`, mass},
		{"mass as a number", load("mass = ▲1200\n"), `a number where a mass was expected`, mass},
		{"mass in tons", load("mass = ▲\"2 tons\"\n"), `“2 tons”, which is no mass in lb or kg`, mass},
		{"mass of nothing", load("mass = ▲\"0 lb\"\n"), `“0 lb”, which is no mass`, mass},
		{"mass in two units", load("mass = ▲\"2 lb 3 kg\"\n"), `“2 lb 3 kg”, which is no mass`, mass},
		{"mass below nothing", load("mass = ▲\"-5 kg\"\n"), `“-5 kg”, which is no mass`, mass},
		{"mass with half a doubt", load("mass = ▲\"5 kg ±\"\n"), `“5 kg ±”, which is no mass`, mass},
		{"mass of a ship", load("mass = ▲\"90,000 lb\"\n"), `“90,000 lb”, more than any horse-drawn vehicle carries`, `see whether the figure and its unit are right`},
		{"on nothing", apple + "on = ▲[]\n", `an empty list of what the load lies on`, `write the ids of parts, such as on = ["slat-in", "slat-out"]`},
		{"on no part", apple + "on = [\"sill\", ▲\"crossbar\"]\n", `“crossbar”, which is no iron and no part here`, `did you mean cross-bar?`},
		{"on a wheel", apple + "on = ▲\"felloe\"\n", `a load on “felloe”, which goes round in a wheel`, `write the axle of that wheel`},
		{"lies anyhow", apple + on + "lies = ▲\"anyhow\"\n", `“anyhow”, which is not known here`, `write spread, in places, fore edge, hind edge, near edge or off edge`},
		{"seated on three", apple + on + "lies = ▲\"in places\"\n", `a load in places along 3 parts`, `write the one part it is along, and one [[load]] for each part`},
		{"seated on a pair", apple + "on = \"sill\"\nlies = ▲\"in places\"\n", `a load in places along 2 parts`, `write the one part it is along, and one [[load]] for each part`},
		{"edge with no reach", strings.Replace(apple, "[[", "[[▲", 1) + on + "lies = \"hind edge\"\n", `a load at the hind edge with no “within”`, `write how far in from the edge it reaches: within = "10"`},
		{"reach with no edge", apple + on + "▲within = \"10\"\n", `“within” of a load that is not at an edge`, `write lies = "hind edge", or another edge, or take it away`},
		{"shock of a fall", apple + on + "shock = ▲12\n", `“12”, which is out of range`, `write in times its weight, from 1 to 5, without quotes`},
		{"shock of what stands", apple + on + "always = true\n▲shock = 2\n", `a shock of what is always there`, `take it away; the vehicle's own weight is taken at rest`},
		{"number of none", apple + on + "number = ▲0\n", `“0”, which is out of range`, `write a whole number from 1 to 200, without quotes`},
		{"always in words", apple + on + "always = ▲\"yes\"\n", `text where true or false was expected`, `write true or false, without quotes`},
		{"another word", apple + on + "▲impact = 2\n", `a load has no “impact”`, `write shock`},
		{"twice", apple + on + "[[load]]\nname = ▲\"Apples\"\nmass = \"1 kg\"\n" + on, `a second load called “Apples”, first on line 20`, `call one of them something else`},
		{"in one bracket", "[▲load]\nname = \"apples\"\nmass = \"1 kg\"\n" + on, `[load] with one bracket on each side`, `write [[load]], once for each load`},
	} {
		f.text = front + things + f.text
		t.Run(f.name, f.run)
	}
	faulty{
		"track of nothing", strings.Replace(front, "unit = \"in\"\n", "unit = \"in\"\ntrack = ▲\"0\"\n", 1) + things,
		`a length of nothing`, `write how long it is, or take it away`,
	}.run(t)
}
