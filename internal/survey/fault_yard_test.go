package survey

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Every key about making, the yard, prices, rings, timbers, splinters and
// boards tells what it cannot be.
func TestYardFaults(t *testing.T) {
	const (
		pairs   = `write each sawn and dressed, such as [["1", "13/16"], ["2", "1 3/4"]]`
		rings   = `write flat, quarter, unknown, or the degrees between the rings and the broad face, from 0 to 90, such as "30 deg"`
		elm     = "[[timber]]\nname = \"field elm\"\nsource = \"tests of 1931\"\n"
		price   = "[[price]]\namount = 9.80\nper = \"bdft\"\n"
		tooDeep = `see whether its unit is right; a bare number is in inches`
	)
	for _, f := range []faulty{
		{"planing less than nothing", "[make]\nplaning = ▲\"-1/8\"\n", `a length less than nothing, “-1/8”`, `write how long it is`},
		{"jointing in words", "[make]\njointing = ▲true\n", `true or false where a length was expected`, `write a length such as "1 3/4" or "44.5 mm"`},
		{"boards of no width", "[make]\nwidest-board = ▲\"0\"\n", `a length of nothing`, `write how long it is, or take it away`},
		{"unknown allowance", "[make]\n▲plane = \"1/8\"\n", `[make] has no “plane”`, `write planing`},
		{"waste, one for all", "[make]\nwaste = ▲25\n", `a number where waste was expected`, `write it between { and }, such as { straight = 25 }`},
		{"waste out of reason", "[make]\nwaste = { curve = ▲501 }\n", `“501”, which is out of range`, `write percent from 0 to 500, without quotes`},
		{"unknown waste", "[make]\nwaste = { ▲sawn = 40 }\n", `waste has no “sawn”`, `write curve`},
		{"make in two brackets", "[[▲make]]\n", `[[make]] with two brackets`, `write [make] once, with one bracket on each side`},
		{"thickness in words", "[yard]\nthickness = ▲\"2\"\n", `text where a list of thicknesses was expected`, pairs},
		{"thickness, one number", "[yard]\nthickness = [▲\"2\"]\n", `a thickness that is no pair`, pairs},
		{"dressed first", "[yard]\nthickness = [[\"1 3/4\", ▲\"2\"]]\n", `2 in dressed from 1 3/4 in sawn`, `write the sawn thickness first; dressed it is no thicker`},
		{"thickness in millimetres", "[yard]\nthickness = [[▲\"50\", \"44\"]]\n", `a board 50 in thick`, tooDeep},
		{"thickness twice", "[yard]\nthickness = [[\"2\", \"1 3/4\"], ▲[\"50.8 mm\", \"44 mm\"]]\n", `a second thickness of 2 in sawn`, `take one of them away`},
		{"run-out as a share", "[yard]\nrun-out = ▲0.07\n", `“0.07”, which is out of range`, `write how many, as in 1 in 15, from 1 to 100, without quotes`},
		{"sap in doubt", "[yard]\nsap = ▲\"maybe\"\n", `“maybe”, which is not known here`, `write taken or refused`},
		{"grade as a number", "[yard]\ngrade = ▲1\n", `a number where text was expected`, `write it between quotes: "1"`},
		{"currency with a price", "[yard]\ncurrency = ▲\"$ 9\"\n", `“$ 9” as a currency`, `write it short, as it is to stand before a price, such as "$"`},
		{"price of nothing", "[[▲price]]\nper = \"m3\"\n", `a price with no “amount”`, `write amount = 9.80`},
		{"price for nothing", "[[▲price]]\namount = 9.80\n", `a price with no “per”`, `write per = "bdft"`},
		{"price in quotes", "[[price]]\namount = ▲\"$9.80\"\nper = \"bdft\"\n", `text where a price was expected`, `write a number without quotes and without the currency, such as 9.80`},
		{"price below nothing", "[[price]]\namount = ▲-1\nper = \"bdft\"\n", `“-1”, which is no price`, `write a number without quotes and without the currency, such as 9.80`},
		{"price for a foot", "[[price]]\namount = 9.80\nper = ▲\"foot\"\n", `“foot”, which is not known here`, `write bdft, superft or m3`},
		{"price twice", price + "[[▲price]]\namount = 11\nper = \"m3\"\n", `a second price for every timber, first on line 20`, `take one of them away`},
		{"price in one bracket", "[▲price]\namount = 9.80\nper = \"bdft\"\n", `[price] with one bracket on each side`, `write [[price]], once for each price`},
		{"rings in words", "[part.spare]\nkind = \"stake\"\nruns = \"upright\"\nrings = ▲\"sideways\"\n", `“sideways”, which does not say how the rings lie`, rings},
		{"rings too steep", "[part.spare]\nkind = \"stake\"\nruns = \"upright\"\nrings = ▲\"100 deg\"\n", `“100 deg” where the lie of the rings was expected`, rings},
		{"rings too steep, a number", "[part.spare]\nkind = \"stake\"\nruns = \"upright\"\nrings = ▲91\n", `“91” where the lie of the rings was expected`, rings},
		{"rings by a yes", "[part.spare]\nkind = \"stake\"\nruns = \"upright\"\nrings = ▲true\n", `true or false where the lie of the rings was expected`, rings},
		{"timber without a source", "[[▲timber]]\nname = \"field elm\"\ndensity = 600\n", `a timber with no “source”`, `write source = "tests of the county college, 1931"`},
		{"timber without a name", "[[▲timber]]\nsource = \"tests of 1931\"\n", `a timber with no “name”`, `write name = "field elm"`},
		{"timber twice", elm + "[[timber]]\nname = ▲\"Field Elm\"\nsource = \"tests of 1932\"\n", `“Field Elm”, of which figures stand on line 21 too`, `put all of them under one [[timber]]`},
		{"shrinkage of no wood", elm + "radial = ▲49\ntangential = 7.8\n", `“49”, which no wood has`, `write radial shrinkage, percent, from 0.01 to 40`},
		{"shrinkage below nothing", elm + "radial = 4.9\ntangential = ▲-7.8\n", `“-7.8”, which no wood has`, `write tangential shrinkage, percent, from 0.01 to 40`},
		{"shrinkage one way", elm + "▲radial = 4.9\n", `“radial” with no “tangential”`, `write both, of the same source`},
		{"movement one way", elm + "▲moves-tangential = 0.27\n", `“moves-tangential” with no “moves-radial”`, `write both, of the same source`},
		{"movement of no wood", elm + "moves-radial = ▲17\nmoves-tangential = 0.27\n", `“17”, which no wood has`, `write radial movement, percent per percent, from 0.01 to 2`},
		{"shrinkage to something else", elm + "radial = 4.9\ntangential = 7.8\nshrinks-to = ▲\"15\"\n", `“15”, to which no shrinkage is measured`, `write "ovendry" or "12"`},
		{"shrinkage to, with none", elm + "▲shrinks-to = \"ovendry\"\n", `shrinks-to with no figure of shrinkage`, `write radial and tangential too, or take it away`},
		{"lengthwise of no wood", elm + "lengthwise = ▲9\n", `“9”, which no wood has`, `write lengthwise shrinkage, percent, from 0 to 5`},
		{"saturation of no wood", elm + "saturation = ▲12\n", `“12”, which no wood has`, `write saturation, percent moisture, from 15 to 40`},
		{"density as a share", elm + "density = ▲0.69\n", `“0.69”, which no wood has`, `write density at 12 %, kg/m3, from 50 to 1700`},
		{"density in quotes", elm + "density = ▲\"690 kg/m3\"\n", `text where a number was expected`, `write it without quotes, such as density = 690`},
		{"density without end", elm + "density = ▲inf\n", `“inf”, which is no number`, `write one such as 690`},
		{"strength in psi", elm + "strength-dry = ▲15000\n", `“15000”, which no wood has`, `write bending strength, MPa, from 1 to 500`},
		{"green strength in psi", elm + "strength-green = ▲9600\n", `“9600”, which no wood has`, `write bending strength, MPa, from 1 to 500`},
		{"stiffness in MPa", elm + "stiffness-dry = ▲12000\n", `“12000”, which no wood has`, `write stiffness, GPa, from 0.1 to 60`},
		{"green stiffness in MPa", elm + "stiffness-green = ▲9900\n", `“9900”, which no wood has`, `write stiffness, GPa, from 0.1 to 60`},
		{"hardness in kN", elm + "hardness-dry = ▲5.9\n", `“5.9”, which no wood has`, `write hardness, N, from 10 to 50000`},
		{"green hardness in kN", elm + "hardness-green = ▲4.3\n", `“4.3”, which no wood has`, `write hardness, N, from 10 to 50000`},
		{"hardness of neither", elm + "▲hardness = 5900\n", `a timber has no “hardness”`, `write hardness-dry`},
		{"other names as a number", elm + "also = [▲1]\n", `a number where text was expected`, `put it between quotes`},
		{"splinter of nothing", "[[▲splinter]]\ndensity = 690\n", `a splinter with no “part”`, `write part = "reach"`},
		{"splinter unlooked at", "[[▲splinter]]\npart = \"sill\"\n", `a splinter with no word of its weight or its look`, `write density = 690, or look = "pale, with large pores", or both`},
		{"splinter of no part", "[[splinter]]\npart = ▲\"sil\"\ndensity = 690\n", `“sil”, which is no iron and no part here`, `did you mean sill?`},
		{"splinter of an iron", "[[splinter]]\npart = ▲\"plate\"\ndensity = 690\n", `a splinter of “plate”, which is an iron`, `write the part of wood that it is of`},
		{"splinter twice", "[[splinter]]\npart = \"near-sill\"\ndensity = 690\n[[splinter]]\npart = ▲\"sill\"\ndensity = 700\n", `a second splinter of “sill”, first on line 20`, `keep the one that was weighed best, or write the mean of both`},
		{"splinter as a share", "[[splinter]]\npart = \"sill\"\ndensity = ▲0.69\n", `“0.69”, which is out of range`, `write kg/m3 from 50 to 1700, without quotes`},
		{"splinter soaked", "[[splinter]]\npart = \"sill\"\ndensity = 690\nmoisture = ▲101\n", `“101”, which is out of range`, `write moisture in percent from 0 to 100, without quotes`},
		{"splinter not weighed", "[[splinter]]\npart = \"sill\"\nlook = \"pale\"\n▲moisture = 9\n", `the moisture of a splinter that was not weighed`, `write its density too, or take moisture away`},
		{"board bone dry", "[[board]]\nid = \"b1\"\ntimber = \"white oak\"\nthick = \"2\"\nwide = \"9\"\nlong = \"8 ft\"\nmoisture = ▲0\n", `“0”, which is out of range`, `write moisture in percent from 1 to 100, without quotes`},
		{"board in millimetres", "[[board]]\nid = \"b1\"\ntimber = \"white oak\"\nthick = ▲\"50\"\nwide = \"9\"\nlong = \"8 ft\"\n", `a board 50 in thick`, tooDeep},
	} {
		f.text = front + things + f.text
		t.Run(f.name, f.run)
	}
}

// [wood] takes the same words for rings.
func TestWoodRingsFault(t *testing.T) {
	faulty{
		"", front + "rings = ▲\"upright\"\n" + things, `“upright”, which does not say how the rings lie`,
		`write flat, quarter, unknown, or the degrees between the rings and the broad face, from 0 to 90, such as "30 deg"`,
	}.run(t)
}

// Every fault of a timber is told at once, each on its own line.
func TestTimberFaultsTogether(t *testing.T) {
	_, err := read("wagon.toml", []byte(front+things+"[[timber]]\nname = \"field elm\"\nradial = 49\nstiffness-dry = 12000\n"), fakeKinds())
	var faults *Faults
	require.ErrorAs(t, err, &faults)
	var lines []int
	for _, f := range faults.List {
		lines = append(lines, f.At.Line)
	}
	require.Equal(t, []int{20, 22, 22, 23}, lines)
}
