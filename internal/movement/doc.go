// Package movement says what the wood of a vehicle does between the driest and
// the wettest month, and on the way from the day it is worked: how far each
// part goes across the grain and along it, what that does to the holes of the
// irons bolted to it, how much slack a bolt gets, and how the gaps between
// slats open and close.
//
// Sizes and places are those of the vehicle, at its service moisture. How the
// growth rings lie is not known, so that wood across the grain moves by the
// larger of radial and tangential. Iron does not move. Positive is wider.
//
// Nothing here moves a hole: it says what to slot, split or dry first.
package movement
