package parts

import "fmt"

// A LimitError names a dimension that cannot be made, its value and the limits.
type LimitError struct {
	Part      string // the kind, or the part's name once it is known
	Dimension string // as the survey writes it: "deep", "fastening 12 diameter"
	Got       Length
	Min, Max  Length
	Why       string // what the limit comes from, where that is not plain
}

// Error reads as a sentence, in millimetres and inches.
func (e *LimitError) Error() string {
	s := fmt.Sprintf("%s: %s is %s; it can be %s to %s",
		e.Part, e.Dimension, both(e.Got), both(e.Min), both(e.Max))
	if e.Why != "" {
		s += " (" + e.Why + ")"
	}
	return s
}

func both(l Length) string { return fmt.Sprintf("%.1f mm (%.3g in)", l.Millimetres(), l.Inches()) }
