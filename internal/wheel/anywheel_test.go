package wheel_test

import (
	"math"

	"pgregory.net/rapid"

	"lostwood/internal/quantity"
	"lostwood/internal/wheel"
)

// anyWheel is a random wheel as wheels are built, worked out.
func anyWheel() *rapid.Generator[*wheel.Wheel] {
	return rapid.Custom(func(t *rapid.T) *wheel.Wheel {
		w, err := wheel.New(anySpec(t))
		if err != nil {
			t.Skip(err.Error())
		}
		return w
	})
}

func anySpec(t *rapid.T) wheel.Spec {
	between := func(name string, lo, hi float64) wheel.Length {
		return wheel.Length(lo + (hi-lo)*rapid.Float64Range(0, 1).Draw(t, name))
	}
	maybe := func(name string, lo, hi float64) wheel.Length {
		if rapid.Bool().Draw(t, "no "+name) {
			return 0
		}
		return between(name, lo, hi)
	}
	felloes := rapid.IntRange(4, 8).Draw(t, "felloes")
	height := between("height", 700, 1700)
	wide := between("tyre wide", 30, 110)
	thick := between("spoke thick", 26, 50)
	foot := between("foot wide", 30, 80)
	nave := between("nave", 180, 330)
	stagger := maybe("stagger", 4, 16)
	s := wheel.Spec{
		Use: wheel.Use(rapid.IntRange(0, 4).Draw(t, "use")), Height: height,
		Over: wheel.Over(rapid.IntRange(0, 1).Draw(t, "over")),
		Tyre: wheel.Tyre{Wide: wide, Thick: between("tyre thick", 5, 20)},
		Rim: wheel.Rim{
			Felloes: felloes, Deep: between("felloe deep", 40, 80), Gap: maybe("gap", .2, 2),
			Sole: wheel.Sole(rapid.IntRange(0, 1).Draw(t, "sole")),
		},
		Spokes: wheel.Spokes{
			Number: 2 * felloes, Stagger: stagger, FootWide: foot, FootThick: thick * 6 / 10,
			FootLong: between("foot long", 40, 70), Square: between("square", 30, 90),
			Wide: foot + between("shoulder", 1, 10), Thick: thick, TipWide: wide * 7 / 10, TipThick: thick * 8 / 10,
			Tongue: wheel.Tongue{Thick: min(wide*4/10, thick*7/10), Short: 1.5},
		},
		Nave: wheel.Nave{
			Long: between("nave long", 300, 420), Diameter: nave, Front: nave * 7 / 10, Back: nave * 8 / 10,
			SeatLong: foot + stagger + 12,
		},
		Box: wheel.Box{Large: between("box large", 36, 64), Wall: 6, In: maybe("box in", 5, 30)},
		Dish: wheel.Dish{
			Built: between("dish built", 0, 40), On: wheel.DishOn(rapid.IntRange(0, 1).Draw(t, "dish on")),
		},
		Arm:   wheel.Arm{Gather: maybe("gather", 2, 12)},
		Track: wheel.Track{Wide: between("track", 1200, 1700), Over: wheel.TrackOver(rapid.IntRange(0, 1).Draw(t, "track over"))},
	}
	if stagger != 0 {
		s.Nave.Seat = wheel.SeatSquare
	}
	s.Dish.Tyred = s.Dish.Built + between("dish more", 0, 20)
	s.Nave.Forward = s.Nave.Long * between("forward", .45, .6)
	s.Box.Small, s.Box.Long = s.Box.Large*8/10, s.Nave.Long-s.Box.In-between("before the box", 20, 80)
	s.Arm.Long, s.Arm.AtCollar, s.Arm.AtPoint = s.Box.Long+20, s.Box.Large-1, s.Box.Small-1
	s.Arm.Set = wheel.Setting(rapid.IntRange(0, 1).Draw(t, "set"))
	return s
}

func degrees(a float64) float64 { return a / float64(quantity.Degree) }

func norm(x, y, z float64) float64 { return math.Sqrt(x*x + y*y + z*z) }
