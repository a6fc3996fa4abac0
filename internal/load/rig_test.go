package load

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A rig is a vehicle put together by hand, box by box, in millimetres.
type rig struct{ *vehicle.Vehicle }

func newRig() rig {
	return rig{&vehicle.Vehicle{
		Name: "Trial wagon", Issue: "A", Unit: quantity.Millimetres,
		Moisture: vehicle.Moisture{Service: 12, Driest: 12, Wettest: 12},
	}}
}

func place(x, y, z float64, run vehicle.Run) *vehicle.Place {
	p := &vehicle.Place{}
	for i, v := range [3]float64{x, y, z} {
		p.At[i] = quantity.Size{Value: quantity.Length(v), Known: quantity.Measured}
	}
	switch run {
	case vehicle.Across: // its first end is the near one
		p.Axes = [3][3]float64{{0, -1, 0}, {1, 0, 0}, {0, 0, 1}}
	case vehicle.Upright:
		p.Axes = [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}
	default: // the fore one
		p.Axes = [3][3]float64{{-1, 0, 0}, {0, -1, 0}, {0, 0, 1}}
	}
	return p
}

// timber adds a squared timber whose first end, first side and under side stand at x, y and z.
func (r rig) timber(id, wood string, run vehicle.Run, at [3]float64, size [3]float64, work ...parts.Feature) *vehicle.Part {
	it := &vehicle.Item{
		ID: id, Name: capital(id), Run: run, NumberOff: 1, Timber: wood,
		Stick: parts.Stick{Body: parts.Square(quantity.Length(size[0]), quantity.Length(size[1]), quantity.Length(size[2])), Features: work},
	}
	p := &vehicle.Part{ID: id, Name: capital(id), Run: run, Timber: wood, Item: it, Place: place(at[0], at[1], at[2], run)}
	it.Parts = []*vehicle.Part{p}
	r.Items, r.Parts = append(r.Items, it), append(r.Parts, p)
	return p
}

func (r rig) iron(id, kind string, run vehicle.Run, at [3]float64, size [3]float64) *vehicle.Iron {
	i := &vehicle.Iron{ID: id, Name: capital(id), Kind: kind, Run: run, Place: place(at[0], at[1], at[2], run)}
	for k, name := range [3]string{"long", "wide", "thick"} {
		i.Sizes = append(i.Sizes, vehicle.Dimension{Name: name, Axis: parts.Axis(k + 1), Size: quantity.Size{Value: quantity.Length(size[k])}})
	}
	r.Irons = append(r.Irons, i)
	return i
}

// bolt adds one of no weight to speak of, straight down.
func (r rig) bolt(x, y, z float64, through ...string) *vehicle.Fastening {
	f := &vehicle.Fastening{ID: fmt.Sprint(len(r.Fastenings) + 1), What: "rivet", Diameter: 1e-3, Way: [3]float64{0, 0, -1}}
	for i, v := range [3]float64{x, y, z} {
		f.Head[i].Value = quantity.Length(v)
	}
	for _, t := range through {
		f.Through = append(f.Through, vehicle.Stop{ID: t})
	}
	r.Fastenings = append(r.Fastenings, f)
	return f
}

// frame stands two stiff sills on two axles 2 m apart, right over the wheels,
// so that what lies across or between them bends alone.
func (r rig) frame() {
	for i, id := range []string{"fore-axle", "hind-axle"} {
		r.iron(id, "axle", vehicle.Across, [3]float64{-2000*float64(i) - 100, 500, 500}, [3]float64{1000, 200, 200})
	}
	for i, id := range []string{"near-sill", "off-sill"} {
		y := 550 - 1000*float64(i)
		r.iron(id, "rail", vehicle.Along, [3]float64{200, y, 700}, [3]float64{2400, 100, 400})
		for k, axle := range []string{"fore-axle", "hind-axle"} {
			r.bolt(-2000*float64(k), y-50, 1100, id, axle)
		}
	}
}

// bars lay stiff iron bars across the sills.
func (r rig) bars(at ...float64) {
	for i, x := range at {
		id := fmt.Sprintf("bar-%d", i+1)
		r.iron(id, "rail", vehicle.Across, [3]float64{x - 50, 550, 1100}, [3]float64{1100, 100, 400})
		r.bolt(x, 500, 1500, id, "near-sill")
		r.bolt(x, -500, 1500, id, "off-sill")
	}
}

func woods(t require.TestingT) timber.Catalogue {
	w, err := timber.Published()
	require.NoError(t, err)
	return w
}

func (r rig) report(t *testing.T) *Report {
	t.Helper()
	got, err := Of(r.Vehicle, woods(t))
	require.NoError(t, err)
	return got
}

func (r *Report) beam(t require.TestingT, id string) Beam {
	for _, b := range r.Beams {
		if b.Part.ID == id {
			return b
		}
	}
	require.Fail(t, "no beam "+id)
	return Beam{}
}

func hole(id string, x, y, diameter float64) parts.Hole {
	return parts.Hole{ID: id, What: "bolt hole", Face: parts.Upper, At: form.Point{X: quantity.Length(x), Y: quantity.Length(y)}, Diameter: quantity.Length(diameter)}
}
