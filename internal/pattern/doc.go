// Package pattern sets timber parts out at full size: sheets of paper to prick
// through from, a page for the screen, and files for a router.
//
// A pattern is one drawing of the part's faces unfolded (see internal/outline),
// with every piece of work named and how sure its place is, cut into sheets that
// join. Millimetres throughout, x to the right and y up, on the drawing and on
// each sheet alike. Nothing here computes a shape or a size.
package pattern

import "lostwood/parts"

// Length is a distance in millimetres.
type Length = parts.Length
