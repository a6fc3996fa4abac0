// Package drawing makes the dimensioned drawings of a vehicle: a sheet for each
// part, and the general arrangement of the whole.
//
// Views are exact: edges and outlines come from the parts' solids, and what lies
// behind something is dashed or left out by internal/sight. Line types follow
// ISO 128-2, letters ISO 3098, paper and frame ISO 216 and ISO 5457, scales
// ISO 5455, dimensions ISO 129-1, the title's fields ISO 7200. Figures are in the
// survey's unit. Nothing here computes a size: a guess stands in brackets, with the word.
package drawing

import (
	"lostwood/internal/sheet"
	"lostwood/parts"
	"lostwood/parts/form"
)

// Length is a distance in millimetres.
type Length = parts.Length

// Heights of letters, after ISO 3098.
const (
	tiny   Length = 1.8 // what a field of the title is
	small  Length = 2.5 // figures, tables
	normal Length = 3.5 // captions, the title's fields
	large  Length = 5
	huge   Length = 10 // NEAR and OFF
)

// narrow is the width of a narrow line; a wide one has twice that (ISO 128-2).
const narrow Length = 0.25

func at(x, y Length) form.Point { return form.Point{X: x, Y: y} }

// A board is a sheet being drawn on.
type board struct {
	*sheet.Sheet
	letters *sheet.Lettering
}

// say sets words from a place to the right.
func (b board) say(p form.Point, words string, height Length, w sheet.Weight) sheet.Word {
	word := b.letters.Word(p, words, height, w, sheet.Across)
	b.Words = append(b.Words, word)
	return word
}

// upward sets words from a place up.
func (b board) upward(p form.Point, words string, height Length, w sheet.Weight) sheet.Word {
	word := b.letters.Word(p, words, height, w, sheet.Upward)
	b.Words = append(b.Words, word)
	return word
}

// middled sets words with their middle at a place.
func (b board) middled(p form.Point, words string, height Length, w sheet.Weight) sheet.Word {
	p.X -= b.letters.Width(words, height, w) / 2
	return b.say(p, words, height, w)
}

// fitted sets words no longer than room, smaller where they must be.
func (b board) fitted(p form.Point, words string, height Length, w sheet.Weight, room Length) sheet.Word {
	if long := b.letters.Width(words, height, w); long > room {
		height *= room / long
	}
	return b.say(p, words, height, w)
}
