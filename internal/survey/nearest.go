package survey

import (
	"slices"
	"strings"
)

// longestWord bounds the words that are compared for likeness, and
// mostCompared how many of them, so that a file of nonsense is told as fast as
// an honest one.
const (
	longestWord  = 40
	mostCompared = 2000
)

// nearest returns the known word that was most likely meant, or nothing.
func nearest(word string, known []string) string {
	word = strings.ToLower(strings.TrimSpace(word))
	if word == "" || len(word) > longestWord || len(known) > mostCompared {
		return ""
	}
	best, far := "", 1+len(word)/3
	for _, k := range known {
		if len(k) > longestWord {
			continue
		}
		d := slips(word, strings.ToLower(k))
		if d < far || d == far && best == "" {
			best, far = k, d
		}
	}
	return best
}

// slips counts the slips of the pen between two words: letters left out, put
// in, mistaken, or two neighbours changed over.
func slips(a, b string) int {
	if d := len(a) - len(b); d > 2+len(a)/3 || -d > 2+len(a)/3 {
		return len(a) + len(b)
	}
	var before, last, row [longestWord + 1]int
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := range len(a) {
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}

// meant says which known word would do instead of word: the nearest, or all of
// them where none is near and they are few.
func meant(word string, known []string, verb string) string {
	if w := nearest(word, known); w != "" {
		return "did you mean " + w + "?"
	}
	const few = 30
	if len(known) == 0 || len(known) > few {
		return ""
	}
	return verb + " " + listed(slices.Clone(known), "or")
}
