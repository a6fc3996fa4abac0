package load

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
)

// Trial wagons side by side, and ten times as many: how the time grows is
// printed, and never tested.
func BenchmarkOf(b *testing.B) {
	for _, wagons := range []int{4, 40} {
		b.Run(fmt.Sprintf("%d timbers", 6*wagons), func(b *testing.B) {
			all := newRig()
			for k := range wagons {
				one := trialWagon()
				named := func(id string) string { return fmt.Sprint(id, "-", k) }
				aside := 5000 * quantity.Length(k)
				for _, p := range one.Parts {
					p.ID = named(p.ID)
					p.Place.At[1].Value += aside
				}
				for _, i := range one.Irons {
					i.ID = named(i.ID)
					i.Place.At[1].Value += aside
				}
				for _, f := range one.Fastenings {
					f.Head[1].Value += aside
					for s := range f.Through {
						f.Through[s].ID = named(f.Through[s].ID)
					}
				}
				all.Parts, all.Irons, all.Fastenings = append(all.Parts, one.Parts...), append(all.Irons, one.Irons...), append(all.Fastenings, one.Fastenings...)
			}
			for b.Loop() {
				_, err := Of(all.Vehicle, woods(b))
				require.NoError(b, err)
			}
		})
	}
}
