package makers

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
)

// String is the claim in a word or two, as tables have it.
func (c Claim) String() string {
	return wordOf(c, "no sign", "slight", "unclear which", "claimed", "too few sizes")
}

// String is the tell in a word or two, as tables have it.
func (t Tell) String() string {
	return wordOf(t, "likely", "off the marks", "between two marks", "too doubtful to tell", "no unit", "not counted")
}

// String is the fit in a word or two, as tables have it.
func (f Fit) String() string { return wordOf(f, "as doubted", "nearer than doubted") }

func wordOf[T ~int](i T, words ...string) string {
	if i < 0 || int(i) >= len(words) {
		return quantity.NotKnown
	}
	return words[i]
}

// Words says the verdict as one tells it to a restorer.
func (v Verdict) Words() string {
	switch v.Claimed {
	case Claimed:
		return v.claimedWords()
	case Unclear:
		return fmt.Sprintf("The sizes lie on the marks of some unit, but the %s explains them nearly as well as the %s; longer sizes, or surer ones, would tell.",
			v.Against, v.Unit)
	case Slight:
		return fmt.Sprintf("The sizes lean to %s; odds against chance only %s, too few to go by. %s",
			v.Unit.partsWords(v.Division), v.oddsWords(), v.Needs.words())
	case TooFew:
		return fmt.Sprintf("Too few sizes to tell the maker's unit: %d, and alike ones count once.", v.Of)
	}
	return "No sign of the maker's unit: the sizes lie as chance would have them. " + v.Needs.words()
}

func (v Verdict) claimedWords() string {
	var b strings.Builder
	fmt.Fprintf(&b, "The maker worked in %s: %d of %d sizes lie on them", v.Unit.partsWords(v.Division), v.On, v.Of)
	if v.Vague > 0 {
		fmt.Fprintf(&b, " (%d more are too doubtful to tell)", v.Vague)
	}
	fmt.Fprintf(&b, "; odds against chance %s.", v.oddsWords())
	if v.Shrunk > 0 {
		fmt.Fprintf(&b, " The wood has shrunk across the grain by about %s %% since.", trimmed(100*v.Shrunk, 1))
	}
	if v.Fit == TooGood {
		b.WriteString(" They lie nearer to the marks than their give or take allows: make sure that these are not the marks of the rule they were read with.")
	}
	return b.String()
}

func (n Needs) words() string {
	var b strings.Builder
	switch {
	case n.Shows > 0 && n.Finer == 0:
		fmt.Fprintf(&b, "A maker who kept to %s would likely have shown it.", n.Unit.partsWords(n.Shows))
		return b.String()
	case n.Shows > 0:
		fmt.Fprintf(&b, "A maker who kept to %s or coarser marks would likely have shown it; ", n.Unit.partsWords(n.Shows))
	}
	finer := n.Unit.partsWords(n.Finer)
	if n.Doubt > 0 {
		fmt.Fprintf(&b, "%s would show only with every size known to %s mm or better.", finer, trimmed(floored(n.Doubt.Millimetres()), 2))
	} else {
		fmt.Fprintf(&b, "%s would not show with so few sizes, however well known.", finer)
	}
	text := b.String()
	return strings.ToUpper(text[:1]) + text[1:]
}

// floored rounds down to two figures after the point, so that no more is
// promised than holds.
func floored(mm float64) float64 { return math.Floor(mm*100) / 100 }

// partsWords says marks of a unit: "eighths of an English inch", "whole
// centimetres", "half centimetres".
func (u Unit) partsWords(parts int) string {
	if u.metric {
		switch parts {
		case 1:
			return "whole centimetres"
		case 2:
			return "half centimetres"
		}
		return trimmed(10/float64(parts), 1) + " mm steps"
	}
	names := map[int]string{2: "halves", 4: "quarters", 8: "eighths", 10: "tenths", 12: "twelfths", 16: "sixteenths"}
	if parts == 1 {
		return "whole " + u.name + "es"
	}
	name, ok := names[parts]
	if !ok {
		name = fmt.Sprintf("1/%d parts", parts)
	}
	article := "a "
	if strings.ContainsAny(u.name[:1], "AEIOU") {
		article = "an "
	}
	return name + " of " + article + u.name
}

// oddsWords gives odds to one figure, never more than they are.
func (v Verdict) oddsWords() string {
	const most = 1e6
	if v.Odds >= most {
		return "more than a million to 1"
	}
	if v.Odds < 2 {
		return "even"
	}
	step := math.Pow(10, math.Floor(math.Log10(v.Odds)))
	return thousands(int(math.Floor(v.Odds/step)*step)) + " to 1"
}

func thousands(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

func trimmed(f float64, places int) string {
	s := strconv.FormatFloat(f, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// Words says what one size was likely meant to be, or why that cannot be told.
func (i Intended) Words(v Verdict) string {
	switch i.Tell {
	case Likely:
		finest := v.Unit.parts[len(v.Unit.parts)-1]
		return fmt.Sprintf("likely meant as %s (%d in 100)", v.Unit.Write(i.Intended, finest), int(math.Min(99, math.Floor(100*i.Chance))))
	case OffMarks:
		return "lies on no mark: worn, shrunk, or made to fit"
	case BetweenTwo:
		return "lies between two marks"
	case TooWide:
		return "give or take is too wide to tell a mark"
	case NotCounted:
		return "not asked: not known well enough to say anything of the maker"
	}
	return ""
}
