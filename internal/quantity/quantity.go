package quantity

// An Angle is in radians.
type Angle float64

// Degree is a 360th part of a turn.
const Degree Angle = 3.14159265358979323846 / 180

// Degrees returns a in degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// An Area is in square millimetres.
type Area float64

// A Volume is in cubic millimetres.
type Volume float64

// CubicMetres returns v in cubic metres.
func (v Volume) CubicMetres() float64 { return float64(v) / 1e9 }

// BoardFoot is the trade's measure of hardwood: 144 cubic inches.
const BoardFoot Volume = 144 * 25.4 * 25.4 * 25.4

// BoardFeet returns v in board feet, by plain volume.
func (v Volume) BoardFeet() float64 { return float64(v / BoardFoot) }

// A Mass is in kilograms.
type Mass float64

// A Density is in kilograms per cubic metre.
type Density float64

// Moisture is the mass of water in wood, in percent of its ovendry mass.
type Moisture float64
