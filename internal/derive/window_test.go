package derive

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// windowed is a bench whose bolts have no mark: of 12 mm, with nuts of 12 mm. The nut
// meets the end of the thread, with two and a half turns of 12 to the inch for its
// run-out, or just covers its bolt.
func windowed(bolts ...[2]string) bench {
	b := onBench()
	var through_ []string
	for k, t := range bolts {
		id := string(rune('a' + k))
		b.bolt += id + ` = { diameter = "1/2 in", length = "` + t[0] + ` ± 0.1", thread = "` + t[1] + ` ± 0.1", nut = "12 ± 0.1" }` + "\n"
		through_ = append(through_, `"`+id+`"`)
	}
	b.fastening = through(through_...)
	return b
}

const runOutOfHalfInch = 2.5 * 25.4 / 12

// allows is the window of plate and board that a bolt gives, by hand.
func allows(length, thread float64) (low, high float64) {
	return length - thread - runOutOfHalfInch, length - 12
}

// A window alone counts as a reading, every place in it as likely.
func TestWindowAlone(t *testing.T) {
	low, high := allows(120, 30)
	st := windowed([2]string{"120", "30"}).study(t)
	s := st.tells(t, "board.deep")
	near(t, s.Size, (low+high)/2-6, (high-low)/math.Sqrt(12))
	require.Len(t, s.Bounds, 1)
	require.Contains(t, s.Bounds[0], "nothing else tells it better")
}

// Windows of one run are intersected first: of two, what both allow.
func TestWindowsOfOneRunAreIntersected(t *testing.T) {
	low, _ := allows(120, 20)
	_, high := allows(112, 40)
	s := windowed([2]string{"120", "20"}, [2]string{"112", "40"}).study(t).tells(t, "board.deep")
	near(t, s.Size, (low+high)/2-6, (high-low)/math.Sqrt(12))
	require.Contains(t, s.Bounds[0], "fastening 1 and fastening 2 together allow")
}

// marked bolts the third hole with a bolt that has a mark.
func (b bench) marked(grip string) bench {
	b.fastening += "[[fastening]]\nbolt = \"12\"\ndown = [\"plate#3\", \"board\"]\ngrip = \"" + grip + " ± 0.3\"\n"
	return b
}

// Where the grip is told better, and lies inside, a window says nothing and adds nothing.
func TestWindowThatDoesNotBind(t *testing.T) {
	s := windowed([2]string{"120", "30"}).marked("100").study(t).tells(t, "board.deep")
	near(t, s.Size, 94, math.Hypot(0.3, 0.1))
	require.Contains(t, strings.Join(s.Bounds, " "), "it lies inside, so that bounds nothing here")
}

// Where it lies outside, the window's edge holds it, and that is told.
func TestWindowThatBinds(t *testing.T) {
	low, _ := allows(120, 20)
	for _, c := range []struct {
		grip  string
		bound float64
		says  string
	}{{"94", low, "thinner than that"}, {"108.6", 108, "thicker than that"}} {
		st := windowed([2]string{"120", "20"}).marked(c.grip).study(t)
		s := st.tells(t, "board.deep")
		require.InDelta(t, c.bound-6, s.Size.Value.Millimetres(), 0.12)
		require.Contains(t, strings.Join(s.Bounds, " "), c.says)
		var told []string
		for _, f := range st.Vehicle.Findings {
			if f.Concern == vehicle.Advice && strings.Contains(f.Says, c.says) {
				told = append(told, f.Says)
			}
		}
		require.Len(t, told, 1)
	}
}

// Two bolts of one run whose windows do not meet contradict, and neither counts.
func TestWindowsThatDoNotMeet(t *testing.T) {
	st := windowed([2]string{"120", "20"}, [2]string{"100", "40"}).study(t)
	require.Equal(t, quantity.Unknown, st.tells(t, "board.deep").Size.Known)
	require.Contains(t, says(st, vehicle.Contradiction), "does not meet")
}

// says joins all findings of a concern.
func says(st *Study, c vehicle.Concern) string {
	var out []string
	for _, f := range st.Vehicle.Findings {
		if f.Concern == c {
			out = append(out, f.Says)
		}
	}
	return strings.Join(out, "\n")
}
