package quantity

// Times returns the area of a rectangle l by w.
func (l Length) Times(w Length) Area { return Area(float64(l) * float64(w)) }

// SquareInches returns a in square inches.
func (a Area) SquareInches() float64 { return float64(a) / float64(Inch*Inch) }

// SquareFeet returns a in square feet.
func (a Area) SquareFeet() float64 { return a.SquareInches() / 144 }

// SquareMetres returns a in square metres.
func (a Area) SquareMetres() float64 { return float64(a) / 1e6 }

// Deep returns the volume of a plate of that area and depth.
func (a Area) Deep(depth Length) Volume { return Volume(float64(a) * float64(depth)) }

// CubicFeet returns v in cubic feet.
func (v Volume) CubicFeet() float64 { return float64(v) / float64(Foot*Foot*Foot) }

// Mass returns the mass of v at density d.
func (d Density) Mass(v Volume) Mass { return Mass(float64(d) * v.CubicMetres()) }

// Pound is the avoirdupois pound, by definition.
const Pound Mass = 0.45359237

// Pounds returns m in pounds.
func (m Mass) Pounds() float64 { return float64(m / Pound) }

// PoundsPerCubicFoot returns d in pounds per cubic foot.
func (d Density) PoundsPerCubicFoot() float64 {
	return d.Mass(Volume(Foot * Foot * Foot)).Pounds()
}
