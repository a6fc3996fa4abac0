package fit

import (
	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// ironThing is an iron as a plain solid: a bar of its length, width and
// thickness with its holes. A socket is hollow from end to end.
func (c *check) ironThing(i *vehicle.Iron) *thing {
	b, ok := boxOf(i.Sizes)
	if !ok {
		return nil
	}
	t := &thing{id: i.ID, name: lower(i.Name), iron: i}
	t.place, t.mirrored = frameOf(i.Place)
	long, wide, thick := named(i.Sizes, parts.AlongX), named(i.Sizes, parts.AcrossY), named(i.Sizes, parts.UpZ)
	var cuts []form.Volume
	for k, h := range i.Holes {
		d := c.holeIn(i.ID, k+1)
		cuts = append(cuts, form.Prism{
			Frame:   form.Frame{U: form.Dir{X: 1}, V: form.Dir{Y: 1}},
			Profile: form.Circle(form.Point{X: h.Value, Y: wide / 2}, d/2), From: -1, To: thick + 1,
		})
		t.bores = append(t.bores, bore{
			at: t.point(h.Value, wide/2, 0), way: t.way(form.Dir{Z: 1}), diameter: d, number: k + 1,
		})
	}
	if m := sizeNamed(i.Sizes, "mouth"); i.Kind == "socket" && m > 0 && m < wide {
		side := (wide - m) / 2
		cuts = append(cuts, block(form.Vec{X: -1, Y: side, Z: side}, form.Vec{X: long + 1, Y: wide - side, Z: thick + 1}))
	}
	if len(cuts) > 0 {
		b = form.Difference{From: b, Cut: cuts}
	}
	t.shape = t.set(b)
	return t
}

// holeIn is how wide an iron's hole is: its bolt with the play that bolts have; a
// quarter of an inch where no bolt is known to go through.
func (c *check) holeIn(id string, number int) quantity.Length {
	for _, f := range c.vehicle.Fastenings {
		for _, s := range f.Through {
			if s.ID == id && s.Hole == number && f.Diameter > 0 {
				return bolt.Hole(f.Diameter)
			}
		}
	}
	return quantity.Inch / 4
}

func named(ds []vehicle.Dimension, a parts.Axis) quantity.Length {
	for _, d := range ds {
		if d.Axis == a {
			return d.Value
		}
	}
	return 0
}

func sizeNamed(ds []vehicle.Dimension, name string) quantity.Length {
	for _, d := range ds {
		if d.Name == name {
			return d.Value
		}
	}
	return 0
}
