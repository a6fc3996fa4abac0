package mesh_test

import (
	"fmt"
	"math/rand"
	"os"
	"strconv"
	"testing"
	"time"

	"lostwood/internal/mesh"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
)

func TestZZ(t *testing.T) {
	from, _ := strconv.Atoi(os.Getenv("FROM"))
	to, _ := strconv.Atoi(os.Getenv("TO"))
	bad := 0
	slow := time.Duration(0)
	for seed := from; seed < to; seed++ {
		r := chance{rand.New(rand.NewSource(int64(seed)))}
		v := r.any()
		if r.one(2) {
			v = r.place().volume(v)
		}
		s, err := solid.New(v)
		if err != nil {
			fmt.Println(seed, err)
			continue
		}
		for _, tol := range []quantity.Length{.05, .02} {
			t0 := time.Now()
			m, err := mesh.Of(s, tol)
			d := time.Since(t0)
			if d > slow {
				slow = d
				if d > 300*time.Millisecond {
					fmt.Println(seed, "slow", d, len(m.Triangles))
				}
			}
			if err != nil {
				bad++
				fmt.Println(seed, tol, err)
				continue
			}
			if os.Getenv("MEASURE") == "" {
				continue
			}
			g := measured(s, m, 1, 3000)
			T := float64(tol)
			if g.dev > T*1.001+1e-4 || g.cover > T*1.5 || g.edge > T*1.5 || g.corner > 1e-4 || g.wrong > 0 || g.crossed > 0 || g.stray > 2*T || os.Getenv("ALL") != "" {
				bad++
				fmt.Printf("%d %v tris %d dev %.4f cover %.4f edge %.4f corner %.2g stray %.2g wrong %d crossed %d samples %v | %v %v %v\n", seed, tol, len(m.Triangles), g.dev, g.cover, g.edge, g.corner, g.stray, g.wrong, g.crossed, g.samples, g.devAt, g.coverAt, g.edgeAt)
			}
		}
	}
	fmt.Println("bad", bad, slow)
}
