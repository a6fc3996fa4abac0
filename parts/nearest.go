package parts

import "slices"

// nearest is the word that is fewest letters away from what was written; of
// two as near, the earlier in the alphabet.
func nearest(written string, words []string) string {
	best, least := "", -1
	for _, w := range slices.Sorted(slices.Values(words)) {
		if d := changes(written, w); least < 0 || d < least {
			best, least = w, d
		}
	}
	return best
}

// changes counts the letters to put in, leave out or exchange to make b of a.
func changes(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range from {
		corner := row[0]
		row[0] = i + 1
		for j, y := range to {
			swap := corner
			if x != y {
				swap++
			}
			corner = row[j+1]
			row[j+1] = min(swap, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(to)]
}
