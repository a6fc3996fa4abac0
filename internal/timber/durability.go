package timber

import "strings"

// durable holds the words for each printed class of durability of heartwood,
// and what else is meant by it. Lives of classes 1 and 4 are as the Queensland
// pages give them; of 2 and 3, and the words of EN 350, from memory.
var durable = map[string]string{
	"slight/non":           "slightly or not resistant to decay",
	"moderately resistant": "moderately resistant to decay",
	"resistant":            "resistant to decay",
	"very resistant":       "very resistant to decay",
	"AG1":                  "above ground class 1 (over 40 years)",
	"AG2":                  "above ground class 2 (15 to 40 years)",
	"AG3":                  "above ground class 3 (7 to 15 years)",
	"AG4":                  "above ground class 4 (under 7 years)",
	"IG1":                  "in ground class 1 (over 25 years)",
	"IG2":                  "in ground class 2 (15 to 25 years)",
	"IG3":                  "in ground class 3 (5 to 15 years)",
	"IG4":                  "in ground class 4 (under 5 years)",
	"EN 350 class 1":       "very durable (EN 350 class 1)",
	"EN 350 class 2":       "durable (EN 350 class 2)",
	"EN 350 class 2-4":     "durable to slightly durable (EN 350 classes 2 to 4)",
	"EN 350 class 3":       "moderately durable (EN 350 class 3)",
	"EN 350 class 4":       "slightly durable (EN 350 class 4)",
	"EN 350 class 5":       "not durable (EN 350 class 5)",
}

// DurabilityWords returns how long the heartwood lasts, in words, and where
// that comes from; words that are no printed class come back as they were
// given. Sapwood does not last in any wood. A wood of which nothing is known
// gives a *[NoFigureError].
func (s Species) DurabilityWords() (string, Basis, error) {
	text := s.Durability.Words
	if text == "" {
		return "", Basis{}, &NoFigureError{s.label(), "durability", "take it as not resistant to decay"}
	}
	if words, ok := durable[text]; ok {
		return words, s.Durability.Basis, nil
	}
	var out []string
	for _, part := range strings.Fields(text) {
		words, ok := durable[strings.TrimSuffix(part, "?")]
		if !ok {
			return text, s.Durability.Basis, nil
		}
		if strings.HasSuffix(part, "?") {
			words += ", doubtful"
		}
		out = append(out, words)
	}
	return strings.Join(out, "; "), s.Durability.Basis, nil
}
