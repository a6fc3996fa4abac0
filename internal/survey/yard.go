package survey

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"lostwood/internal/quantity"
)

const yardMeans = "What your sawmill or merchant keeps, and what to ask of it."

// A Yard is what the sawmill keeps and is asked for.
type Yard struct {
	Thicknesses []Thickness // those of the trade where none is stated
	Grade       string      // in its own words
	RunOut      float64     // the grain may run out 1 in so many at most; 0 where not stated
	Sap         Sap         // empty where not stated
	Note        string
	Currency    string // as printed before a price
}

// A Thickness is one that a yard keeps.
type Thickness struct {
	At            Position
	Sawn, Dressed quantity.Length
}

// Sap says whether sapwood is taken.
type Sap string

// Whether sapwood is taken.
const (
	SapTaken   Sap = "taken"
	SapRefused Sap = "refused"
)

func yardKeys() []key[Yard] {
	return []key[Yard]{
		{
			name: "thickness", also: "thicknesses stock boards", example: `[["1", "13/16"], ["2", "1 3/4"]]`,
			means: "the thicknesses it keeps, each sawn and then dressed; they replace those of the trade",
			take:  (*reader).thicknesses,
		},
		{
			name: "grade", also: "quality", example: `"first quality"`, means: "the grade to ask for, in its words",
			take: intoText(func(y *Yard) *string { return &y.Grade }),
		},
		{
			name: "run-out", also: "runout slope straightness", example: "15", means: "how straight the grain must be: it may run out 1 in so many at most",
			take: func(r *reader, v *node, y *Yard) {
				if f, ok := r.number(v, "how many, as in 1 in 15,", 1, 100); ok {
					y.RunOut = f
				}
			},
		},
		{
			name: "sap", also: "sapwood", example: `"refused"`, means: "sapwood: taken or refused; it rots soon in any timber",
			take: intoWord([]Sap{SapTaken, SapRefused}, func(y *Yard) *Sap { return &y.Sap }),
		},
		{
			name: "note", also: "notes remark", example: `"the two long ones from one tree"`, means: "anything else to ask of it",
			take: intoText(func(y *Yard) *string { return &y.Note }),
		},
		{
			name: "currency", also: "money", example: `"$"`, means: "what is printed before a price",
			take: (*reader).currency,
		},
	}
}

func (r *reader) yard(n *node) { readGroup(r, n, "[yard]", yardKeys(), &r.s.Yard) }

// thicknesses takes pairs of a sawn and a dressed thickness.
func (r *reader) thicknesses(v *node, y *Yard) {
	const want = "write each sawn and dressed, such as [[\"1\", \"13/16\"], [\"2\", \"1 3/4\"]]"
	if v.shape != listShape || len(v.items) == 0 {
		r.mistaken(v, "a list of thicknesses", want)
		return
	}
	for _, p := range v.items {
		if p.shape != listShape || len(p.items) != 2 {
			r.fault(p.at, "a thickness that is no pair", want)
			continue
		}
		sawn, okSawn := r.plainLength(p.items[0], positive)
		dressed, okDressed := r.plainLength(p.items[1], positive)
		switch {
		case !okSawn || !okDressed || r.unsure:
		case sawn >= thickestBoard:
			r.fault(p.items[0].at, "a board "+r.show(sawn)+" thick", "see whether its unit is right; a bare number is in "+unitWord(r.unit()))
		case dressed > sawn:
			r.fault(p.items[1].at, r.show(dressed)+" dressed from "+r.show(sawn)+" sawn", "write the sawn thickness first; dressed it is no thicker")
		default:
			r.thickness(y, Thickness{At: r.at(p), Sawn: sawn, Dressed: dressed})
		}
	}
}

func (r *reader) thickness(y *Yard, t Thickness) {
	for _, before := range y.Thicknesses {
		if before.Sawn == t.Sawn {
			r.faultAt(t.At, "a second thickness of "+r.show(t.Sawn)+" sawn", "take one of them away")
			return
		}
	}
	y.Thicknesses = append(y.Thicknesses, t)
}

func (r *reader) currency(v *node, y *Yard) {
	const longest = 8
	s, ok := r.text(v)
	if !ok {
		return
	}
	if utf8.RuneCountInString(s) > longest || strings.ContainsFunc(s, func(c rune) bool { return unicode.IsSpace(c) || unicode.IsDigit(c) }) {
		r.fault(v.at, quote(s)+" as a currency", "write it short, as it is to stand before a price, such as \"$\"")
		return
	}
	y.Currency = s
}
