// Package load says what a vehicle weighs and how it bears its load: the mass of
// every timber and iron, where it all balances, what stands on each axle and
// wheel, and how far every timber is bent, sheared and pressed by the load that
// its survey states, set beside what clear wood of its species bears.
//
// The vehicle is taken for a grid of beams that cross: every timber and
// iron that lies level is a beam of its true section, every upright one a stiff
// post. A fastening or a joint makes two of them go down together and leaves
// each free to turn; faces that only touch push and do not pull. So the shares
// come from how stiff each is and what holds it, and none is guessed. Wheels do
// not give way. A timber that is held or laden at both sides of its middle line
// can lean and twist; the others keep level. Nothing is tied sideways or
// lengthwise, and irons do not join with the wood to one deeper beam.
//
// Lengths are millimetres in the vehicle's frame, forces newtons, stresses
// megapascals. Nothing here passes or fails a part: it compares.
package load

// gravity is the weight of a kilogram, N: the standard value.
const gravity = 9.80665
