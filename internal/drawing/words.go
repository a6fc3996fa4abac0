package drawing

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// guessed says whether nobody may take a size for known.
func guessed(k quantity.Known) bool { return k >= quantity.Guess }

// figure is a length as drawings have it: without the unit, which stands in the title.
func figure(v *vehicle.Vehicle, l Length) string {
	words := quantity.Format(l, v.Unit)
	switch v.Unit {
	case quantity.Feet:
		return words
	case quantity.Millimetres:
		return strings.TrimSuffix(strings.TrimSuffix(words, " mm"), ".0")
	}
	if i := strings.LastIndexByte(words, ' '); i > 0 {
		return words[:i]
	}
	return words
}

// marked is a figure; where it is a guess it stands in brackets, with the word.
func marked(v *vehicle.Vehicle, l Length, k quantity.Known) string {
	if !guessed(k) {
		return figure(v, l)
	}
	return "[" + figure(v, l) + " " + k.String() + "]"
}

// unitWords says what figures without a unit are in.
func unitWords(u quantity.Unit) string {
	return [...]string{
		quantity.Inches: "inches", quantity.Feet: "feet and inches", quantity.Millimetres: "millimetres",
		quantity.Centimetres: "centimetres", quantity.Metres: "metres",
	}[u]
}

// giveOrTake is a size's doubt as people say it; empty where there is none to tell.
func giveOrTake(s quantity.Size, u quantity.Unit) string {
	_, tail, _ := strings.Cut(s.Words(u), ", give or take ")
	return tail
}

// handWord is NEAR or OFF, or nothing.
func handWord(h vehicle.Hand) string { return strings.ToUpper(h.String()) }

// number is a drawing's number: that of the item, and its hand.
func number(i *vehicle.Item) string {
	if i.Hand == vehicle.Alike {
		return fmt.Sprintf("%02d", i.Number)
	}
	return fmt.Sprintf("%02d %s", i.Number, handWord(i.Hand))
}

func day(v *vehicle.Vehicle) string {
	if v.Date.IsZero() {
		return ""
	}
	return v.Date.Format("2 January 2006")
}

// survey names the survey by the first of its hash.
func surveyMark(v *vehicle.Vehicle) string { return v.Hash[:min(12, len(v.Hash))] }

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// counted is a number of things.
func counted(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return fmt.Sprintf("%d %ss", n, of)
}
