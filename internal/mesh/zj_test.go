package mesh_test
import ("testing";"fmt";"math";"os";"strconv";"time";"lostwood/internal/mesh";"lostwood/parts/form";"lostwood/internal/solid";"lostwood/internal/quantity")
func jitter(r chance, v form.Volume) form.Volume {
	j := func(p form.Vec) form.Vec { s := math.Pow(10, -9+6*r.Float64()); return vec(float64(p.X)+s*(2*r.Float64()-1), float64(p.Y)+s*(2*r.Float64()-1), float64(p.Z)+s*(2*r.Float64()-1)) }
	each := func(vs []form.Volume) []form.Volume { out := make([]form.Volume, len(vs)); for i := range vs { out[i] = jitter(r, vs[i]) }; return out }
	switch v := v.(type) {
	case form.Prism: v.Frame.Origin = j(v.Frame.Origin); return v
	case form.Revolved: v.Frame.Origin = j(v.Frame.Origin); return v
	case form.Half: v.At = j(v.At); return v
	case form.Union: return form.Union(each(v))
	case form.Intersection: return form.Intersection(each(v))
	case form.Difference: return form.Difference{From: jitter(r, v.From), Cut: each(v.Cut)}
	}
	return v
}
func TestZJ(t *testing.T){
	from,_ := strconv.Atoi(os.Getenv("FROM")); to,_ := strconv.Atoi(os.Getenv("TO"))
	bad := 0; worst := time.Duration(0)
	for seed := from; seed<to; seed++ {
		r := chanceOf(int64(seed))
		v := r.any()
		if r.one(2) { v = r.place().volume(v) }
		v = jitter(r, v)
		s, err := solid.New(v)
		if err != nil { fmt.Println(seed, err); continue }
		for _, tol := range []quantity.Length{.05,.02} {
		t0 := time.Now()
		m, err := mesh.Of(s, tol)
		worst = max(worst, time.Since(t0))
		if err != nil { bad++; fmt.Println(seed, tol, err); continue }
		if os.Getenv("MEASURE")=="" {continue}
		g := measured(s, m, 1, 1000)
		T := float64(tol)
		if g.dev > T*1.001+1e-4 || g.cover > T*1.5 || g.edge>T*1.5 || g.wrong>0 || g.crossed > 0 {
			fmt.Printf("%d %v tris %d dev %.4f cover %.4f edge %.4f corner %.2g stray %.2g tilt %.0f wrong %d crossed %d samples %v | %v %v %v\n", seed, tol, len(m.Triangles), g.dev, g.cover, g.edge, g.corner, g.stray, g.tilt, g.wrong, g.crossed, g.samples, g.devAt, g.coverAt, g.edgeAt)
		}
		}
	}
	fmt.Println("bad", bad, worst)
}
func TestZScale(t *testing.T) {
	var cuts []form.Volume
	for i := range 200 { cuts = append(cuts, bore(float64(i)*11-1100, float64(i%3)*11-11, 4)) }
	s := compiled(t, cutFrom(block(-1200,-25,-22,1200,25,22), cuts...))
	t0 := time.Now()
	m, err := mesh.Of(s, .05)
	fmt.Println(len(m.Triangles), err, time.Since(t0))
}

func TestZK(t *testing.T){
	from,_ := strconv.Atoi(os.Getenv("FROM")); to,_ := strconv.Atoi(os.Getenv("TO"))
	snaps := []float64{1e-4,1e-5,1e-6,1e-7,1e-8,1e-9,1e-10}
	bad := make([]int, len(snaps)); all := 0
	for seed := from; seed<to; seed++ {
		r := chanceOf(int64(seed))
		v := r.any()
		if r.one(2) { v = r.place().volume(v) }
		v = jitter(r, v)
		s, err := solid.New(v)
		if err != nil { fmt.Println(seed, err); continue }
		ok := false
		msg := ""
		for i, snap := range snaps {
			_, err := mesh.Once(s, .05, 0, snap)
			if err != nil { bad[i]++; msg += fmt.Sprintf("   %g %v\n", snap, err) } else {ok = true}
		}
		if !ok { all++; fmt.Println(seed, "\n"+msg) }
	}
	fmt.Println(bad, all)
}
