package fit_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/fit"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func wagon(t testing.TB) (*derive.Study, timber.Catalogue) {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read(demo.Name, demo.Survey())
	require.NoError(t, err)
	st, err := derive.Examine(s, woods)
	require.NoError(t, err)
	return st, woods
}

// BenchmarkOffer tells what all checks cost on the orchard wagon.
func BenchmarkOffer(b *testing.B) {
	st, woods := wagon(b)
	for b.Loop() {
		_, err := fit.Of(st.Vehicle, woods, st)
		require.NoError(b, err)
	}
}

// BenchmarkOfferTenfold is ten wagons side by side in one vehicle: ten times the
// parts.
func BenchmarkOfferTenfold(b *testing.B) {
	st, woods := wagon(b)
	v := tenfold(st.Vehicle)
	for b.Loop() {
		_, err := fit.Of(v, woods, nil)
		require.NoError(b, err)
	}
}

// tenfold sets ten of a vehicle side by side, 5 m apart.
func tenfold(v *vehicle.Vehicle) *vehicle.Vehicle {
	out := *v
	out.Parts, out.Irons, out.Fastenings, out.Moves, out.Items = nil, nil, nil, nil, nil
	for k := range 10 {
		name := func(id string) string { return fmt.Sprintf("%s/%d", id, k) }
		move := func(p *vehicle.Place) *vehicle.Place {
			if p == nil {
				return nil
			}
			q := *p
			q.At[1].Value += quantity.Length(k) * 5000
			return &q
		}
		items := map[*vehicle.Item]*vehicle.Item{}
		for _, it := range v.Items {
			c := *it
			c.Parts = nil
			items[it] = &c
			out.Items = append(out.Items, &c)
		}
		for _, p := range v.Parts {
			c := *p
			c.ID, c.Place = name(p.ID), move(p.Place)
			if it := items[p.Item]; it != nil {
				c.Item = it
				it.Parts = append(it.Parts, &c)
			}
			out.Parts = append(out.Parts, &c)
		}
		for _, i := range v.Irons {
			c := *i
			c.ID, c.Place = name(i.ID), move(i.Place)
			out.Irons = append(out.Irons, &c)
		}
		for _, f := range v.Fastenings {
			c := *f
			c.ID, c.Through = name(f.ID), nil
			c.Head[1].Value += quantity.Length(k) * 5000
			for _, s := range f.Through {
				s.ID = name(s.ID)
				c.Through = append(c.Through, s)
			}
			out.Fastenings = append(out.Fastenings, &c)
		}
		for _, m := range v.Moves {
			c := m
			c.With, c.On, c.Meets = nil, nil, nil
			for _, id := range m.With {
				c.With = append(c.With, name(id))
			}
			for _, id := range m.On {
				c.On = append(c.On, name(id))
			}
			for _, id := range m.Meets {
				c.Meets = append(c.Meets, name(id))
			}
			c.At[1].Value += quantity.Length(k) * 5000
			c.Wheels = nil
			for _, w := range m.Wheels {
				w.Centre[1] += quantity.Length(k) * 5000
				c.Wheels = append(c.Wheels, w)
			}
			out.Moves = append(out.Moves, c)
		}
	}
	return &out
}
