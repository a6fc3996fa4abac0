package makers

import "lostwood/internal/quantity"

// Nearness and BeyondRule are looked at by themselves.
var (
	Nearness   = nearness
	BeyondRule = beyondRule
)

// Stretched is u with every length so many times as long.
func (u Unit) Stretched(by quantity.Length) Unit {
	u.one *= by
	return u
}
