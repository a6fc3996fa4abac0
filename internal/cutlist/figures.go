package cutlist

import (
	"fmt"

	"lostwood/internal/quantity"
)

// Figures are the three sizes of a piece as lists show them, without their
// unit; one that stands on a guess has a ? behind it.
type Figures struct{ Long, Wide, Thick string }

func (s Size) figures(u quantity.Unit, g guesses) Figures {
	return Figures{plain(s.Long, u) + mark(g.long), plain(s.Wide, u) + mark(g.wide), plain(s.Thick, u) + mark(g.thick)}
}

// FinishedFigures are those of the finished part, in service.
func (l *List) FinishedFigures(n Line) Figures {
	return n.Finished.figures(l.vehicle.Unit, n.guessedBox())
}

// WorkedFigures are what the squared stock must measure on the day it is worked,
// rounded up to a 32nd of an inch or a tenth of a millimetre.
func (l *List) WorkedFigures(n Line) Figures {
	step := finest(l.vehicle.Unit)
	s := Size{roundUp(n.Worked.Long, step), roundUp(n.Worked.Wide, step), roundUp(n.Worked.Thick, step)}
	return s.figures(l.vehicle.Unit, n.guessedBlank())
}

// Figure is a length as lists show it, without its unit.
func (l *List) Figure(of quantity.Length) string { return plain(of, l.vehicle.Unit) }

// LongFigure is a length as a yard says it: 7 ft 3 in; 2365 mm without its unit.
func (l *List) LongFigure(of quantity.Length) string {
	if imperial(l.vehicle.Unit) {
		return quantity.FeetInches(of, 4)
	}
	return plain(of, l.vehicle.Unit)
}

// UnitName is the unit that lists are in: in, mm.
func (l *List) UnitName() string { return shown(l.vehicle.Unit).String() }

// Measure is a volume in the yard's measure, with its unit.
func (l *List) Measure(v quantity.Volume) string {
	if imperial(l.vehicle.Unit) {
		return fmt.Sprintf("%.2f bd ft", v.BoardFeet())
	}
	return fmt.Sprintf("%.4f m3", v.CubicMetres())
}

// Timber is the wood's name as the trade has it.
func (n Line) Timber() string { return n.timber() }

// Title is the part's name with its hand as it is marked: “reach NEAR”.
func (n Line) Title() string { return titled(n.Item) }

// WorkedAt is the moisture of the day the wood is worked.
func (l *List) WorkedAt() quantity.Moisture { return worked(l.vehicle.Moisture) }

// Stands says what in words a stock is: “8/4 (2 in)”, “105 mm, to order”.
func (l *List) Stands(s Stock) string {
	words := s.Name
	if rough := named(s.Rough, l.vehicle.Unit); rough != words {
		words += " (" + rough + ")"
	}
	if s.Kept == ToOrder {
		words += ", to order"
	}
	return words
}
