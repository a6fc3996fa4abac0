package drawing

import (
	"fmt"
	"strings"

	"lostwood/internal/sheet"
	"lostwood/parts/form"
)

// An Angle is where the views stand about the front view (ISO 5456-2).
type Angle int

// The angles.
const (
	Third Angle = iota // each view stands on the side it is seen from
	First              // each stands on the side away from that
)

// String is the word on the command line.
func (a Angle) String() string { return [...]string{"third", "first"}[a] }

// FindAngle reads the word.
func FindAngle(word string) (Angle, error) {
	for _, a := range []Angle{Third, First} {
		if strings.EqualFold(strings.TrimSpace(word), a.String()) {
			return a, nil
		}
	}
	return Third, fmt.Errorf("%q is no way to place views; third or first would do", word)
}

// symbol draws the angle's sign of ISO 5456-2, a cut cone in two views, in a box
// 15 mm long and 8 high from a corner.
func (b board) symbol(a Angle, p form.Point) {
	const small, big, long = Length(2), Length(4), Length(7)
	mid := p.Y + big
	circles, cone := p.X+big, p.X+2*big+1.5
	if a == First {
		circles, cone = p.X+long+1.5+big, p.X
	}
	b.Circle(sheet.Wide, at(circles, mid), small)
	b.Circle(sheet.Wide, at(circles, mid), big-0.4)
	// In both the circles show the cone from its small end, on the left: in third
	// angle they stand there, in first on the other side.
	left, right := small, big-0.4
	b.Lines = append(b.Lines, sheet.Line{Pen: sheet.Wide, Closed: true, Run: form.Polygon(
		at(cone, mid-left), at(cone+long, mid-right), at(cone+long, mid+right), at(cone, mid+left))})
	b.Straight(sheet.Centre, at(cone-0.8, mid), at(cone+long+0.8, mid))
	b.Straight(sheet.Centre, at(circles-big-0.2, mid), at(circles+big+0.2, mid))
	b.Straight(sheet.Centre, at(circles, mid-big-0.2), at(circles, mid+big+0.2))
}
