package wheel

import "lostwood/parts"

// A Figure is one size that a Spec can state.
type Figure struct {
	Name  string // "foot-wide"
	Means string // what it spans
	In    parts.Measured
	Need  parts.Need
	// The figure as it stands, by what it is measured in.
	Length Length
	Count  int
	Angle  Angle
}

// Figures are all of a Spec's sizes, in the order a wheelwright asks for them.
// Those of bands are named after the band's place: "band-1-wide".
func (s Spec) Figures() []Figure {
	fs := s.rimFigures()
	fs = append(fs, s.spokeFigures()...)
	fs = append(fs, s.naveFigures()...)
	fs = append(fs, s.bandFigures()...)
	return append(fs, s.armFigures()...)
}

func length(name, means string, need parts.Need, l Length) Figure {
	return Figure{Name: name, Means: means, In: parts.InLength, Need: need, Length: l}
}

func count(name, means string, n int) Figure {
	return Figure{Name: name, Means: means, In: parts.InCount, Need: parts.Required, Count: n}
}

func (s Spec) rimFigures() []Figure {
	return []Figure{
		length("height", "the finished wheel's diameter, "+s.Over.String(), parts.Required, s.Height),
		length("tyre-wide", "the tyre, across", parts.Required, s.Tyre.Wide),
		length("tyre-thick", "the tyre, through", parts.Required, s.Tyre.Thick),
		length("tyre-bolt", "holes for the tyre bolts, one a felloe", parts.Optional, s.Tyre.Bolt),
		length("nip", "how much shorter the tyre's inside is than the wooden rim's girth", parts.Optional, s.Tyre.Nip),
		count("felloes", "how many make up the rim", s.Rim.Felloes),
		length("felloe-wide", "a felloe, across; as wide as the tyre where left out", parts.Optional, s.Rim.Wide),
		length("felloe-deep", "a felloe, from belly to sole", parts.Required, s.Rim.Deep),
		length("gap", "left open at each joint before the tyre is on", parts.Optional, s.Rim.Gap),
		length("dowel", "diameter of the dowel in each joint", parts.Optional, s.Rim.Dowel),
		length("dowel-deep", "how far the dowel goes into either felloe", parts.Optional, s.Rim.DowelDeep),
		length("eased", "radius of the eased edges of the belly", parts.Optional, s.Rim.Eased),
		length("dish-built", "dish before the tyre is on, "+s.Dish.On.String(), parts.Optional, s.Dish.Built),
		length("dish", "dish with the tyre on, "+s.Dish.On.String(), parts.Optional, s.Dish.Tyred),
	}
}

func (s Spec) spokeFigures() []Figure {
	k := s.Spokes
	return []Figure{
		count("spokes", "how many the wheel has", k.Number),
		length("stagger", "between the middles of the two mortise circles, along the axle", parts.Optional, k.Stagger),
		length("foot-wide", "a spoke's foot, front to back", parts.Required, k.FootWide),
		length("foot-thick", "a spoke's foot, round the nave", parts.Required, k.FootThick),
		length("foot-long", "a spoke's foot, from its shoulder to its inner end", parts.Required, k.FootLong),
		length("foot-point", "a foot's width at its inner end; parallel where left out", parts.Optional, k.FootPoint),
		length("spoke-square", "how far a spoke is left square beyond its shoulder", parts.Optional, k.Square),
		length("spoke-wide", "a spoke at its shoulder, front to back", parts.Required, k.Wide),
		length("spoke-thick", "a spoke at its shoulder, round the wheel", parts.Required, k.Thick),
		length("tip-wide", "a spoke at the felloe, front to back", parts.Required, k.TipWide),
		length("tip-thick", "a spoke at the felloe, round the wheel", parts.Required, k.TipThick),
		length("tongue", "a tongue's diameter or side; "+k.Tongue.Form.String(), parts.Required, k.Tongue.Thick),
		length("tongue-short", "how far a tongue stops below the sole", parts.Optional, k.Tongue.Short),
	}
}

func (s Spec) naveFigures() []Figure {
	n, b := s.Nave, s.Box
	return []Figure{
		length("nave-long", "the nave, end to end", parts.Required, n.Long),
		length("nave", "the nave's diameter in the middle of the mortises", parts.Required, n.Diameter),
		length("nave-front", "the nave's diameter at its front end", parts.Required, n.Front),
		length("nave-back", "the nave's diameter at its back end", parts.Required, n.Back),
		length("nave-forward", "from midway between the mortise circles to the nave's front end", parts.Required, n.Forward),
		length("seat-long", "what is turned for the spokes' shoulders, along the axle", parts.Required, n.SeatLong),
		length("box-long", "the box, end to end", parts.Required, b.Long),
		length("box-large", "the box's bore at the back", parts.Required, b.Large),
		length("box-small", "the box's bore at the front", parts.Required, b.Small),
		length("box-wall", "thickness of the box's iron", parts.Required, b.Wall),
		length("box-in", "from the nave's back end to the box's", parts.Optional, b.In),
		length("back-recess", "diameter bored behind the box", parts.Optional, b.BackRecess),
		length("front-recess", "diameter bored before the box", parts.Optional, b.FrontRecess),
	}
}

func (s Spec) armFigures() []Figure {
	a := s.Arm
	return []Figure{
		length("arm-long", "the axle arm, from the collar's face to its point", parts.Optional, a.Long),
		length("arm-collar", "the arm's diameter at the collar", parts.Optional, a.AtCollar),
		length("arm-point", "the arm's diameter at its point", parts.Optional, a.AtPoint),
		{Name: "cant", Means: "how far the arm falls to its point; " + a.Set.String(), In: parts.InDegrees, Need: parts.Optional, Angle: a.Cant},
		length("gather", "how far forward the arm points, over half the wheel's height", parts.Optional, a.Gather),
		length("track", "between the wheels on the ground, "+s.Track.Over.String(), parts.Optional, s.Track.Wide),
	}
}
