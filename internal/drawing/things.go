package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/sight"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// A sort is what a thing in the vehicle is.
type sort int

const (
	newTimber sort = iota
	iron
	fastening
)

// A thing is all that one balloon stands for: the timbers of an item, the irons
// of a family, the bolts of a row and its other side.
type thing struct {
	sort   sort
	mark   string
	bodies []*sight.Body
	parts  []*vehicle.Part
	irons  []*vehicle.Iron
	bolts  []*vehicle.Fastening
	item   *vehicle.Item
}

// coarse is how far a curve of the general arrangement may lie from the true one.
const coarse Length = 0.25

// A collector gathers the things of a vehicle that stand in a place.
type collector struct {
	v      *vehicle.Vehicle
	things []*thing
	byMark map[string]*thing
	shapes map[*vehicle.Item]*sight.Body
}

// thingsOf gathers all things of a vehicle in the order of its lists; those that
// nothing places have no bodies.
func thingsOf(v *vehicle.Vehicle) ([]*thing, error) {
	c := &collector{v: v, byMark: map[string]*thing{}, shapes: map[*vehicle.Item]*sight.Body{}}
	for _, it := range v.Items {
		if err := c.timbers(it); err != nil {
			return nil, err
		}
	}
	if err := c.irons(); err != nil {
		return nil, err
	}
	return c.things, c.fastenings()
}

func (c *collector) thing(s sort, key string, mark func() string) *thing {
	key = fmt.Sprint(int(s), " ", key)
	t, ok := c.byMark[key]
	if !ok {
		t = &thing{sort: s, mark: mark()}
		c.byMark[key], c.things = t, append(c.things, t)
	}
	return t
}

// timbers enters the placed timbers that an item makes.
func (c *collector) timbers(it *vehicle.Item) error {
	mark := fmt.Sprint(it.Number)
	t := c.thing(newTimber, mark, func() string { return mark })
	if t.item == nil {
		t.item = it
	}
	for _, p := range it.Parts {
		t.parts = append(t.parts, p)
		if p.Place == nil || it.Stick.Body == nil {
			continue
		}
		if c.shapes[it] == nil {
			b, err := sight.Of(it.Stick.Volume(), coarse)
			if err != nil {
				return fmt.Errorf("the %s cannot be drawn: %w", it.Name, err)
			}
			c.shapes[it] = b
		}
		t.bodies = append(t.bodies, c.shapes[it].Placed(timberPose(p, it)))
	}
	return nil
}

// timberPose puts an item's solid where a timber stands. An off timber's place is
// told in the mirror of the near one's frame, but its solid is made in its own hand.
func timberPose(p *vehicle.Part, it *vehicle.Item) sight.Pose {
	pose := poseOf(p.Place)
	if it.Hand == vehicle.Off {
		_, wide, _ := it.Stick.Body.Box()
		pose.At = pose.At.Plus(pose.Axes[1], wide)
		pose.Axes[1] = pose.Axes[1].Opposite()
	}
	return pose
}

func poseOf(p *vehicle.Place) sight.Pose {
	pose := sight.Pose{At: form.Vec{X: p.At[0].Value, Y: p.At[1].Value, Z: p.At[2].Value}}
	for i, a := range p.Axes {
		pose.Axes[i] = form.Dir{X: a[0], Y: a[1], Z: a[2]}
	}
	return pose
}

// irons enters the irons by families.
func (c *collector) irons() error {
	through := holesThrough(c.v)
	n := 0
	for _, i := range c.v.Irons {
		t := c.thing(iron, family(i.ID, i.Hand), func() string {
			n++
			return strings.ToUpper(lettered(n - 1))
		})
		t.irons = append(t.irons, i)
		volume, ok := plateVolume(i, through[i.ID])
		if i.Place == nil || !ok {
			continue
		}
		b, err := sight.Of(volume, coarse)
		if err != nil {
			return fmt.Errorf("the %s cannot be drawn: %w", strings.ToLower(i.Name), err)
		}
		t.bodies = append(t.bodies, b.Placed(poseOf(i.Place)))
	}
	return nil
}

// family is an iron's or a timber's id without its hand and its number in a row.
func family(id string, h vehicle.Hand) string {
	if h != vehicle.Alike {
		id = strings.TrimPrefix(id, h.String()+"-")
	}
	if k := strings.LastIndexByte(id, '-'); k > 0 && strings.Trim(id[k+1:], "0123456789") == "" {
		id = id[:k]
	}
	return id
}

// fastenings enters the bolts and clips by their numbers.
func (c *collector) fastenings() error {
	for _, f := range c.v.Fastenings {
		mark, _, _ := strings.Cut(strings.TrimSuffix(strings.TrimSuffix(f.ID, " near"), " off"), ".")
		t := c.thing(fastening, mark, func() string { return mark })
		t.bolts = append(t.bolts, f)
		pose, ok := boltPose(f)
		if !ok {
			continue
		}
		var volumes []form.Volume
		switch {
		case f.What == "clip":
			inside, across, placed := c.clasped(f)
			if !placed {
				continue
			}
			pose.Axes[0] = across
			pose.Axes[1] = form.Frame{U: pose.Axes[2], V: across}.W()
			volumes = clipVolumes(inside, f.Grip.Value)
		case f.Diameter > 0:
			volumes = boltVolumes(f)
		}
		for _, v := range volumes {
			b, err := sight.Of(v, coarse/3)
			if err != nil {
				return fmt.Errorf("fastening %s cannot be drawn: %w", f.ID, err)
			}
			t.bodies = append(t.bodies, b.Placed(pose))
		}
	}
	return nil
}

// boltPose stands a fastening on its head, z towards its nut.
func boltPose(f *vehicle.Fastening) (sight.Pose, bool) {
	w := form.Dir{X: f.Way[0], Y: f.Way[1], Z: f.Way[2]}
	if w == (form.Dir{}) || !(f.Grip.Value > 0) || math.IsInf(float64(f.Grip.Value), 0) {
		return sight.Pose{}, false
	}
	for _, h := range f.Head {
		if h.Known == quantity.Unknown {
			return sight.Pose{}, false
		}
	}
	u := form.Dir{X: 1}
	if math.Abs(w.X) > 0.5 {
		u = form.Dir{Y: 1}
	}
	v := form.Frame{U: w, V: u}.W()
	return sight.Pose{At: form.Vec{X: f.Head[0].Value, Y: f.Head[1].Value, Z: f.Head[2].Value}, Axes: [3]form.Dir{u, v, w}}, true
}

// clasped is the timber that a clip goes round: how wide it is between the legs,
// and the way across it.
func (c *collector) clasped(f *vehicle.Fastening) (inside Length, across form.Dir, ok bool) {
	for _, s := range f.Through {
		k := slices.IndexFunc(c.v.Parts, func(p *vehicle.Part) bool { return p.ID == s.ID })
		if k < 0 || c.v.Parts[k].Place == nil {
			continue
		}
		p := c.v.Parts[k]
		for _, d := range p.Sizes {
			if d.Axis < 2 { // along the grain
				continue
			}
			a := p.Place.Axes[int(d.Axis)-1]
			if math.Abs(a[0]*f.Way[0]+a[1]*f.Way[1]+a[2]*f.Way[2]) < 0.5 {
				return d.Value, form.Dir{X: a[0], Y: a[1], Z: a[2]}, d.Value > 0
			}
		}
	}
	return 0, form.Dir{}, false
}

// name is what a thing is called.
func (t *thing) name() string {
	switch t.sort {
	case newTimber:
		return capital(t.item.Name)
	case iron:
		i := t.irons[0]
		words := i.Name
		if i.Hand != vehicle.Alike {
			words = strings.TrimPrefix(strings.ToLower(words), i.Hand.String()+" ")
		}
		return capital(strings.TrimRight(words, " 0123456789"))
	}
	f := t.bolts[0]
	_, words, _ := strings.Cut(f.Title, ": ")
	words = strings.NewReplacer("near ", "", "off ", "").Replace(words)
	return capital(words)
}
