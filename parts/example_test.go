package parts_test

import (
	"fmt"

	"lostwood/internal/quantity"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A bolster with its king-bolt hole and one bolt's hole, and what there is to
// do on it.
func Example() {
	const in = quantity.Inch
	bolster := parts.Bolster{
		Long: 37 * in, Wide: 3 * in, Deep: 3.5 * in,
		KingBolt: .8125 * in, Chamfer: .25 * in, ChamferStop: 3 * in,
		Work: []parts.Feature{parts.Hole{
			ID: "fastening 12", What: "bolt hole", Face: parts.Upper,
			At: form.Point{X: 9.5 * in, Y: 1.5 * in}, Diameter: .5625 * in,
			Seat: &parts.SquareSeat{Width: .515 * in, Depth: .281 * in},
		}},
	}
	if err := bolster.Validate(); err != nil {
		fmt.Println(err)
		return
	}
	stick := bolster.Stick()
	for _, op := range stick.Operations()[:3] {
		fmt.Printf("%s: %s a %s on the %s face, %.1f from the end\n", op.Ref, op.Work, op.What, op.Face, op.At.X.Inches())
	}
	fmt.Printf("%.2f board feet of wood left\n", parts.Net(stick).BoardFeet())
	// Output:
	// fastening 12: bore a bolt hole on the upper face, 9.5 from the end
	// fastening 12: mortise a square seat on the upper face, 9.5 from the end
	// king-bolt hole: bore a king-bolt hole on the upper face, 18.5 from the end
	// 2.65 board feet of wood left
}

// A fault is told by the dimension's name, as the survey writes it.
func ExampleFelloe_Validate() {
	felloe := parts.Felloe{Radius: 500, Wide: 38, Deep: 50, Felloes: 6, Spokes: 13, Gap: 50}
	fmt.Println(felloe.Validate())
	// Output:
	// felloe: spokes is 13; it can be 12 to 12 (each felloe takes the same number)
	// felloe: gap is 50.0 mm (1.97 in); it can be 0.0 mm (0 in) to 25.0 mm (0.984 in) (a slip of the unit?)
}

// What a survey may say of a kind of part.
func ExampleFind() {
	kind, err := parts.Find("slat")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(kind.Name+":", kind.Means)
	for _, d := range kind.Dimensions {
		fmt.Println("-", d.Name+":", d.Means)
	}
	// Output:
	// slat: a narrow board of the floor, with a space on either side
	// - long: end to end
	// - wide: across
	// - thick: through the board
	// - eased: radius of the eased upper edges
}
