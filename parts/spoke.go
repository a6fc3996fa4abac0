package parts

import (
	"math"

	"lostwood/internal/quantity"
)

// A Spoke stands between nave and felloe. Its x runs from its foot to its
// tongue, y round the wheel and z to the wheel's front; its middle line runs
// straight along the middle of its stock.
type Spoke struct {
	Long Length // from shoulder to shoulder, on its middle line
	// Wide and Thick are the stock of its square: front to back and round the
	// wheel. TipWide and TipThick are the oval's at the tongue's shoulder.
	Wide, Thick       Length
	TipWide, TipThick Length
	Square            Length // how far it is left square beyond the foot's shoulder
	// The foot is FootLong from its inner end to the shoulder, FootThick round the
	// nave, FootWide front to back at the shoulder and FootPoint at its inner end; 0
	// is parallel.
	FootLong, FootWide, FootThick, FootPoint Length
	// Shoulder and TipShoulder are how far the two shoulders are out of square:
	// where positive, the front edge lies further towards the tongue.
	Shoulder, TipShoulder Angle
	Tongue, TongueLong    Length // its diameter or side, and from its shoulder to its end
	TongueSection         HoleSection
	Work                  []Feature
}

func spokeKind() Kind {
	k := Kind{
		Name:  "spoke",
		Means: "a spoke of a wheel, from nave to felloe",
		Dimensions: []Dimension{
			{"thick", "its square, round the wheel", AcrossY, InLength, Required},
			{"wide", "its square, front to back", UpZ, InLength, Required},
			{"between", "from shoulder to shoulder, on its middle line", NoAxis, InLength, Required},
			{"tip-wide", "at the tongue's shoulder, front to back", NoAxis, InLength, Required},
			{"tip-thick", "at the tongue's shoulder, round the wheel", NoAxis, InLength, Required},
			{"square", "how far it is left square beyond the foot's shoulder", NoAxis, InLength, Required},
			{"foot-long", "its foot, from its shoulder to its inner end", NoAxis, InLength, Required},
			{"foot-wide", "its foot at the shoulder, front to back", NoAxis, InLength, Required},
			{"foot-thick", "its foot, round the nave", NoAxis, InLength, Required},
			{"foot-point", "its foot at the inner end, front to back; parallel where left out", NoAxis, InLength, Optional},
			{"shoulder", "how far the foot's shoulder is out of square for the dish, its front edge to the tongue", NoAxis, InDegrees, Optional},
			{"tip-shoulder", "how far the tongue's shoulder is out of square, its front edge to the tongue", NoAxis, InDegrees, Optional},
			{"tongue", "diameter of the tongue", NoAxis, InLength, Optional},
			{"tongue-square", "side of a square tongue, in place of a round one", NoAxis, InLength, Optional},
			{"tongue-long", "the tongue, from its shoulder to its end", NoAxis, InLength, Required},
		},
	}
	return k.built(func(m Measures) Part {
		l := m.Lengths
		s := Spoke{
			Long: l["between"], Wide: l["wide"], Thick: l["thick"], TipWide: l["tip-wide"], TipThick: l["tip-thick"],
			Square: l["square"], FootLong: l["foot-long"], FootWide: l["foot-wide"], FootThick: l["foot-thick"],
			FootPoint: l["foot-point"], Shoulder: m.Angles["shoulder"], TipShoulder: m.Angles["tip-shoulder"],
			Tongue: l["tongue"], TongueLong: l["tongue-long"], Work: m.Work,
		}
		if side := l["tongue-square"]; side != 0 {
			s.Tongue, s.TongueSection = side, SquareHole
		}
		return s
	})
}

// Kind is as in Part.
func (s Spoke) Kind() string { return "spoke" }

// stands is how much of the square's edge a shaped piece leaves standing on either
// side, at the least: a shoulder that the saw can follow.
const stands Length = .5

// Validate is as in Part.
func (s Spoke) Validate() error {
	l := limits{part: s.Kind()}
	l.need("thick", s.Thick, thinnest, thickest, slip)
	l.need("wide", s.Wide, thinnest, thickest, slip)
	l.need("between", s.Long, shortest, longest, slip)
	l.need("foot-long", s.FootLong, 5, longest, slip)
	l.need("tongue-long", s.TongueLong, 5, longest, slip)
	l.degrees("shoulder", s.Shoulder, 20*quantity.Degree, "no wheel is dished so far")
	l.degrees("tip-shoulder", s.TipShoulder, 20*quantity.Degree, "no wheel is dished so far")
	if l.sound() {
		s.checkShape(&l)
	}
	return l.stick(s.Stick(), nil)
}

func (s Spoke) checkShape(l *limits) {
	const shoulder = "the shoulder must stand out all round"
	l.need("foot-wide", s.FootWide, 3, s.Wide-2*stands, shoulder)
	l.need("foot-thick", s.FootThick, 3, s.Thick-2*stands, shoulder)
	l.may("foot-point", s.FootPoint, s.FootWide/2, s.FootWide, "a foot tapers slightly to its inner end")
	l.need("tip-wide", s.TipWide, 3, s.Wide-2*stands, "a spoke tapers to the felloe")
	l.need("tip-thick", s.TipThick, 3, s.Thick-2*stands, "a spoke tapers to the felloe")
	slant := func(a Angle) Length { return s.Wide / 2 * Length(math.Abs(math.Tan(float64(a)))) }
	l.need("square", s.Square, slant(s.Shoulder)+2, s.Long-slant(s.TipShoulder)-10, "the shoulder ends in the square, and the oval begins there")
	if s.TongueSection == SquareHole {
		// The corners stand within the oval.
		most := 1 / math.Hypot(1/float64(s.TipWide-2*stands), 1/float64(s.TipThick-2*stands))
		l.need("tongue-square", s.Tongue, 3, Length(most), "the shoulder must stand out at the tongue's corners")
		return
	}
	l.need("tongue", s.Tongue, 3, min(s.TipWide, s.TipThick)-2*stands, shoulder)
}

// Stick is as in Part.
func (s Spoke) Stick() Stick {
	tip := s.FootLong + s.Long
	fs := append([]Feature{}, s.Work...)
	return Stick{
		Body: Square(tip+s.TongueLong, s.Thick, s.Wide),
		Features: append(fs,
			Foot{
				ID: "foot", Long: s.FootLong, Wide: s.FootWide, Thick: s.FootThick, Point: s.FootPoint, Shoulder: s.Shoulder,
			},
			Tapered{
				ID: "oval", From: s.FootLong + s.Square, To: tip, TipWide: s.TipWide, TipThick: s.TipThick, Slant: s.TipShoulder,
			},
			Tongue{ID: "tongue", Long: s.TongueLong, Thick: s.Tongue, Section: s.TongueSection, Shoulder: s.TipShoulder},
		),
		FaceSide: Upper, FaceEdge: FirstSide,
	}
}
