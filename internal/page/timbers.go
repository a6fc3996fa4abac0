package page

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// timbers enters every timber that stands in the vehicle. An off one's frame is
// the mirror of the near one's, so that both share the near one's skin.
func (s *stage) timbers() error {
	for _, p := range s.model.Vehicle.Parts {
		if p.Item == nil || p.Item.Shape == nil {
			s.unseen = append(s.unseen, p.Name)
			continue
		}
		if p.Place == nil {
			continue // in a wheel
		}
		stick := p.Item.Shape.Stick()
		k, err := s.mesh(fmt.Sprint("item ", p.Item.Number), stick.Volume)
		if err != nil {
			return fmt.Errorf("%s: %w", p.Name, err)
		}
		t := s.timberThing(p, k, stick)
		t.Matrix, t.Give = placeMatrix(p.Place), gives(p.Place)
		t.Placed = int(weakest(quantity.Measured, p.Place.At[:]...))
		s.scene.Things = append(s.scene.Things, t)
	}
	return nil
}

// timberThing is all of a timber but where it stands.
func (s *stage) timberThing(p *vehicle.Part, k int, stick parts.Stick) thing {
	return thing{
		ID: p.ID, Name: p.Name, Sort: "timber", Record: recordID(p.Item), Of: recordID(p.Item), Mesh: k, Turns: s.turns(p.ID),
		Known: int(mainKnown(p.Item.Sizes)), Timber: s.timber(p.Timber), Status: int(p.Status), Concern: s.concern(p.ID, p.Item.ID, p.Name),
		Box: boxOf(stick.Body), BoxGive: boxGive(p.Item), Anchors: timberAnchors(p.Item, stick),
	}
}

// recordID is what the record calls an item.
func recordID(it *vehicle.Item) string {
	id := fmt.Sprintf("item-%d", it.Number)
	if it.Hand != vehicle.Alike {
		id += "-" + it.Hand.String()
	}
	return id
}

// mainKnown is how the least known of the sizes that make a timber's box is
// known; what is only worked on it, such as a chamfer, is left aside.
func mainKnown(sizes []vehicle.Dimension) quantity.Known {
	known := quantity.Measured
	for _, d := range sizes {
		if d.Axis != parts.NoAxis || d.Name == "radius" {
			known = max(known, d.Known)
		}
	}
	return known
}

func boxGive(it *vehicle.Item) [3]float64 {
	g := [3]float64{-1, -1, -1}
	for _, d := range it.Sizes {
		if k := axisIndex(d.Axis); k >= 0 {
			g[k] = give(d.Doubt)
		}
	}
	return g
}

func axisIndex(a parts.Axis) int {
	switch a {
	case parts.AlongX:
		return 0
	case parts.AcrossY:
		return 1
	case parts.UpZ:
		return 2
	}
	return -1
}

// timberAnchors are the centres of the holes' mouths and of the two ends.
func timberAnchors(it *vehicle.Item, stick parts.Stick) []anchor {
	var out []anchor
	for _, f := range stick.Features {
		h, ok := f.(parts.Hole)
		if !ok {
			continue
		}
		frame := h.Face.Frame(stick.Body)
		out = append(out, holeAnchor(it, h, frame, "in the "+it.FaceWords(handed(h.Face, it.Hand))))
	}
	box := boxOf(stick.Body)
	if it.Run != vehicle.Round {
		for end, face := range []parts.Face{parts.FirstEnd, parts.SecondEnd} {
			at := rounded(float64(end)*box[0], box[1]/2, box[2]/2)
			out = append(out, anchor{Name: "middle of the " + it.FaceWords(face), At: at, Give: scaledGive(at, box, boxGive(it))})
		}
	}
	return out
}

// handed is the face of a near or single part as an item of that hand has it.
func handed(f parts.Face, h vehicle.Hand) parts.Face {
	if h == vehicle.Off && (f == parts.FirstSide || f == parts.SecondSide) {
		return f.Opposite()
	}
	return f
}

func holeAnchor(it *vehicle.Item, h parts.Hole, frame form.Frame, where string) anchor {
	p := frame.At(h.At.X, h.At.Y, 0)
	a := anchor{Name: fmt.Sprintf("%s, %s, %s", h.What, h.ID, where), Ref: h.ID, At: rounded(p.X.Millimetres(), p.Y.Millimetres(), p.Z.Millimetres())}
	if strings.HasSuffix(h.ID, h.What) {
		a.Name = fmt.Sprintf("%s %s", h.ID, where)
	}
	a.Give = scaledGive(a.At, boxOf(it.Shape.Stick().Body), boxGive(it))
	for _, f := range it.Features {
		if f.Ref != h.ID {
			continue
		}
		for k, d := range [3][2]float64{{frame.U.X, frame.V.X}, {frame.U.Y, frame.V.Y}, {frame.U.Z, frame.V.Z}} {
			if d[0] != 0 {
				a.Give[k] = give(f.Along.Doubt)
			}
			if d[1] != 0 {
				a.Give[k] = give(f.Across.Doubt)
			}
		}
	}
	return a
}

// scaledGive is how sure a place on a box is, from the box's own origin: of each
// size's give or take its share.
func scaledGive(at, box, boxGive [3]float64) (g [3]float64) {
	for k := range g {
		if g[k] = 0; box[k] > 0 && boxGive[k] > 0 {
			g[k] = round(boxGive[k] * at[k] / box[k])
		}
	}
	return g
}

// concern is the gravest of what is found about a thing; -1 for nothing.
func (s *stage) concern(names ...string) int {
	worst := -1
	for _, f := range s.model.findings() {
		for _, n := range names {
			if n != "" && strings.EqualFold(f.Subject, n) && (worst < 0 || int(f.Concern) < worst) {
				worst = int(f.Concern)
			}
		}
	}
	return worst
}

// findings are the vehicle's and the model's own.
func (m Model) findings() []vehicle.Finding {
	return append(append([]vehicle.Finding(nil), m.Vehicle.Findings...), m.Findings...)
}
