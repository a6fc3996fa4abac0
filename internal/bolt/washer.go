package bolt

// A WasherSeries is one of the two breadths of plain washer.
type WasherSeries int

// The series of ASME B18.21.1, type A.
const (
	Narrow WasherSeries = iota // N
	Wide                       // W: the one for wood
)

// A WasherSize is the size of a plain washer. Old wrought ones were punched from
// what sheet there was: measure them.
type WasherSize struct {
	Inside, Outside Length // diameters
	Thickness       Length // basic
	Limits          Limits // of the thickness: their middle is not the basic one
}

// washers are inches, after the diameter of the bolt: inside, outside, thickness
// and its greatest and least, narrow and then wide.
//
// ASME B18.21.1-2009, type A plain washers, in Machinery's Handbook, 31st
// edition, pp. 1694-1695.
var washers = [...]struct {
	bolt Length
	size [2][5]Length
}{
	{1. / 4, [2][5]Length{{.281, .625, .065, .080, .051}, {.312, .734, .065, .080, .051}}},
	{5. / 16, [2][5]Length{{.344, .688, .065, .080, .051}, {.375, .875, .083, .104, .064}}},
	{3. / 8, [2][5]Length{{.406, .812, .065, .080, .051}, {.438, 1.000, .083, .104, .064}}},
	{7. / 16, [2][5]Length{{.469, .922, .065, .080, .051}, {.500, 1.250, .083, .104, .064}}},
	{1. / 2, [2][5]Length{{.531, 1.062, .095, .121, .074}, {.562, 1.375, .109, .132, .086}}},
	{5. / 8, [2][5]Length{{.656, 1.312, .095, .121, .074}, {.688, 1.750, .134, .160, .108}}},
	{3. / 4, [2][5]Length{{.812, 1.469, .134, .160, .108}, {.812, 2.000, .148, .177, .122}}},
}

// Washer returns the plain washer for a bolt of diameter d; there is no
// pattern for a diameter that is not listed.
func Washer(d Length, series WasherSeries) (WasherSize, Source) {
	if series != Narrow && series != Wide {
		return WasherSize{}, Unlisted
	}
	i, s := find(d, len(washers), func(i int) Length { return washers[i].bolt * inch })
	if s == Unlisted {
		return WasherSize{}, s
	}
	w := washers[i].size[series]
	return WasherSize{
		Inside: w[0] * inch, Outside: w[1] * inch, Thickness: w[2] * inch,
		Limits: Limits{Max: w[3] * inch, Min: w[4] * inch},
	}, s
}
