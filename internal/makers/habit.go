package makers

import "math"

// A habit is how a maker divides sizes among the marks of a rule: the share
// made to whole units, to halves and so on (a half may fall on a whole one),
// and the share on no mark at all.
type habit struct {
	shares []float64 // for each division of the unit
	off    float64
	finest int     // index of the finest division with a share
	weight float64 // fixed beforehand; a unit's habits sum to one
}

// fewOff is the share of sizes off the marks even of a maker who keeps to them.
const fewOff = 0.03

// likings are what each division is used for, against the next coarser one;
// one so large has the finest division alone, its marks used all alike. That
// makers like coarse marks better is common practice, no source.
func likings() []float64 { return []float64{0.5, 1, math.Inf(1)} }

// offs are the shares off the marks that are weighed, with their weights.
func offs() [][2]float64 {
	return [][2]float64{{fewOff, 9. / 13}, {0.15, 3. / 13}, {0.35, 1. / 13}}
}

// habits lists those that are weighed for a unit of n divisions. Each finest
// division has the same weight, whatever the likings among those above it.
func habits(n int) []habit {
	var out []habit
	for finest := range n {
		liked := likings()
		if finest == 0 {
			liked = liked[:1] // there is nothing to like better
		}
		for _, liking := range liked {
			for _, off := range offs() {
				out = append(out, habit{
					shares: sharesOf(n, finest, liking, 1-off[0]),
					off:    off[0],
					finest: finest,
					weight: off[1] / float64(n*len(liked)),
				})
			}
		}
	}
	return out
}

// sharesOf divides what is on marks among the divisions down to the finest.
func sharesOf(n, finest int, liking, on float64) []float64 {
	shares := make([]float64, n)
	if math.IsInf(liking, 1) {
		shares[finest] = on
		return shares
	}
	sum := 0.
	for j := range finest + 1 {
		shares[j] = math.Pow(liking, float64(j))
		sum += shares[j]
	}
	for j := range shares {
		shares[j] *= on / sum
	}
	return shares
}
