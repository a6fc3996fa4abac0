package movement

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// size is a length as the restorer writes them, a movement to a 64th of an inch or
// a tenth of a millimetre.
func (r *Report) size(l quantity.Length) string {
	if u := r.vehicle.Unit; u == quantity.Inches || u == quantity.Feet {
		return quantity.Fraction(l, 64) + " in"
	}
	return strings.TrimSuffix(strconv.FormatFloat(l.Millimetres()+0, 'f', 1, 64), ".0") + " mm"
}

// up is size rounded up, for what is to be left.
func (r *Report) up(l quantity.Length) string {
	step := quantity.Millimetre / 10
	if u := r.vehicle.Unit; u == quantity.Inches || u == quantity.Feet {
		step = quantity.Inch / 64
	}
	return r.size(quantity.Length(math.Ceil(float64(l/step)-1e-9)) * step)
}

// signed is a change with its sign.
func (r *Report) signed(l quantity.Length) string {
	text := r.size(l)
	if l > 0 && !strings.HasPrefix(text, "0 ") {
		return "+" + text
	}
	return text
}

// tooFar names the bound as people say it.
func (r *Report) tooFar() string {
	if u := r.vehicle.Unit; u == quantity.Inches || u == quantity.Feet {
		return "5 in"
	}
	return "125 mm"
}

func percent(m quantity.Moisture) string { return fmt.Sprintf("%.3g %%", float64(m)) }

// bare is a name without the hand before it.
func bare(name string) string {
	for _, hand := range []string{"near ", "off "} {
		if len(name) > len(hand) && strings.EqualFold(name[:len(hand)], hand) {
			return name[len(hand):]
		}
	}
	return lower(name)
}

func lower(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// handOf is the hand a name starts with.
func handOf(name string) vehicle.Hand {
	switch {
	case len(name) > 5 && strings.EqualFold(name[:5], "near "):
		return vehicle.Near
	case len(name) > 4 && strings.EqualFold(name[:4], "off "):
		return vehicle.Off
	}
	return vehicle.Alike
}

// and joins names as people do.
func and(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
