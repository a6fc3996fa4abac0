package survey

import (
	"fmt"

	"lostwood/internal/vehicle"
)

// mostAlike is more than any row of a vehicle: spokes and slats are fewer.
const mostAlike = 200

// runsKey is the line that says which way a thing lies.
func runsKey[T any](place func(*T) *vehicle.Run, means string) key[T] {
	return key[T]{
		name: "runs", also: "run direction lies", example: `"along"`, means: means,
		take: func(r *reader, v *node, to *T) {
			words := []string{vehicle.Along.String(), vehicle.Across.String(), vehicle.Upright.String(), vehicle.Round.String()}
			w, ok := r.word(v, words)
			for i := range words {
				if ok && words[i] == w {
					*place(to) = vehicle.Run(i)
				}
			}
		},
	}
}

func pairKey[T any](place func(*T) *Sides) key[T] {
	return key[T]{
		name: "pair", also: "both sides", example: "true", means: "true for one of a near and off pair",
		take: intoChoice(Pair, Single, place),
	}
}

func numberKey[T any](place func(*T) *int) key[T] {
	return key[T]{
		name: "number", also: "count off quantity", example: "3",
		means: "how many alike in a row, fore to hind or near to off",
		take:  intoWhole(1, mostAlike, place),
	}
}

// counted puts a number before a word: 1 hole, 3 holes.
func counted(n int, word string) string {
	switch n {
	case 0:
		return "no " + word + "s"
	case 1:
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
