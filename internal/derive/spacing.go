package derive

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/adjust"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// Accounts tell how every size of every item comes about, by the first timber
// that it makes, in the order of the items. What to read next is not in them:
// Questions has that for the whole vehicle.
func (st *Study) Accounts() []*vehicle.Account {
	var out []*vehicle.Account
	for _, it := range st.Vehicle.Items {
		m := st.memberOf(it.Parts[0])
		if m == nil {
			out = append(out, st.wheelAccounts(it)...)
			continue
		}
		for _, d := range m.sizes {
			out = append(out, st.reasons(st.sizeTarget(m, d)))
		}
	}
	return out
}

// wheelAccounts tell how the sizes of a wheel's own timber come about, by the
// figures of the wheel that was read.
func (st *Study) wheelAccounts(it *vehicle.Item) []*vehicle.Account {
	own := st.assembly.ofWheels[it]
	var out []*vehicle.Account
	for _, d := range it.Sizes {
		for _, n := range own.sizes {
			if n[0] != d.Name {
				continue
			}
			a := st.reasons(st.sizeTarget(own.member, named{name: n[1], unknown: own.member.size(n[1])}))
			a.Subject = it.Parts[0].ID + "." + d.Name
			out = append(out, a)
		}
	}
	return out
}

func (st *Study) memberOf(p *vehicle.Part) *member { return st.network.byID[p.ID] }

// Spacings are how far apart any two bolt holes of an item stand that are bored
// into its long faces, and any two holes of an iron.
func (st *Study) Spacings() []vehicle.Spacing {
	var out []vehicle.Spacing
	for _, it := range st.Vehicle.Items {
		if it.Run != vehicle.Round {
			out = append(out, st.itemSpacings(it)...)
		}
	}
	for _, i := range st.Vehicle.Irons {
		m := st.network.byID[i.ID]
		for a := range m.holes {
			for b := a + 1; b < len(m.holes); b++ {
				from, to := adjust.At(st.fit.X, m.holes[a]), adjust.At(st.fit.X, m.holes[b])
				out = append(out, vehicle.Spacing{
					Iron: i, A: fmt.Sprintf("hole %d", a+1), B: fmt.Sprintf("hole %d", b+1), Along: st.fit.size(to.Minus(from)),
				})
			}
		}
	}
	return out
}

// itemSpacings are those of one item, pooled over all timbers made to one number
// as the places of its work are.
func (st *Study) itemSpacings(it *vehicle.Item) []vehicle.Spacing {
	g := st.groupOf(it)
	bored := map[string]parts.Face{}
	for _, f := range it.Stick.Features {
		if h, ok := f.(parts.Hole); ok && slices.Contains(parts.LongFaces(), h.Face) {
			bored[h.ID] = h.Face
		}
	}
	var out []vehicle.Spacing
	x := st.fit.X
	for a, w := range g.works[0] {
		for b := a + 1; b < len(g.works[0]); b++ {
			from, ok := bored[w.ref]
			to, too := bored[g.works[0][b].ref]
			if !ok || !too || from != to {
				continue
			}
			apart := func(at func(w work) func([]float64) adjust.Term) func(i int) adjust.Term {
				return func(i int) adjust.Term { return at(g.works[i][b])(x).Minus(at(g.works[i][a])(x)) }
			}
			out = append(out, vehicle.Spacing{
				Item: it, A: w.ref, B: g.works[0][b].ref,
				Along:  st.assembly.pooled(g, apart(func(w work) func([]float64) adjust.Term { return w.along })),
				Across: st.assembly.pooled(g, apart(func(w work) func([]float64) adjust.Term { return w.across })),
			})
		}
	}
	return out
}

// groupOf are the timbers made to an item's number, with their work in one order.
func (st *Study) groupOf(it *vehicle.Item) group {
	var g group
	for _, m := range st.network.members {
		p := st.assembly.made[m]
		if p == nil || p.Item == nil || p.Item.Number != it.Number {
			continue
		}
		ws := st.assembly.work(m)
		slices.SortStableFunc(ws, func(a, b work) int { return strings.Compare(a.key, b.key) })
		g.members = append(g.members, m)
		g.works = append(g.works, ws)
	}
	return g
}
