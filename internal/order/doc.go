// Package order prints the two sheets that wood is bought and sawn by: the
// joiner's cutting list and the sawmill's order, each a PDF on A4 upright.
//
// Lengths on the page are in millimetres from its upper left corner. Words are
// wrapped, never cut off; a row too high for what is left of a page goes on
// on the next. Nothing is reckoned here: see internal/cutlist.
package order
