package mesh
import ("fmt";"lostwood/internal/solid")
func Debug(s *solid.Solid, tol float64, try int, snap float64) {
	h := newCarving(s, style{tolerance: tol*.97, try: try, snap: snap}).skinned(tol)
	fmt.Println(h.paired())
	h.straighten()
	held := map[knot]bool{}
	for _, r := range h.rims { held[r.from]=true }
		now := *h
		now.settle(held)
		now.gather()
		by := map[int][]rim{}
		for _, r := range now.rims { by[r.patch]=append(by[r.patch], r)}
		for p := range h.patches {
			rs := by[p]
			if len(rs)==0 {continue}
			_, err := now.fill(rs)
			if err != nil {
				sf := s.Surfaces()[h.patches[p].surface]
				fmt.Println("patch", p, sf.Kind, sf.Major, sf.Minor, h.normals[p], len(rs), err)
				for _, r := range rs {
					fmt.Printf("   %d->%d %v len %.2g\n", r.from, r.to, now.at[r.from], now.long(r))
				}
			}
		}
}
