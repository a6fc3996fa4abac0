package wheel_test

import (
	"fmt"
	"math"
	"testing"

	v3 "github.com/deadsy/sdfx/vec/v3"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/solid"
	"lostwood/internal/wheel"
	"lostwood/parts"
	"lostwood/parts/form"
)

// depthOf is how deep a place lies in a solid at the most that its field can
// vouch for: above 0 where it is inside.
func depthOf(s *solid.Solid, p form.Vec) float64 {
	return -s.Evaluate(v3.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z)})
}

// Every timber of a random wheel can be made, and no spoke stands in the wood of
// the nave or of its felloe: places strewn over foot, shoulders and tongue lie in
// no other solid by more than two hundredths of a millimetre.
func TestMembersDoNotClash(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWheel().Draw(t, "wheel")
		ms := w.Members(wheel.Built)
		n := w.Spec.Spokes.Number
		for _, i := range []int{0, 1, 2, n + 1} {
			require.NoError(t, ms[i].Part.Validate(), ms[i].Name)
		}
		at := func(m wheel.Member) *solid.Solid {
			s, err := solid.New(form.Moved(m.Part.Stick().Volume(), m.Pose.Frame()))
			require.NoError(t, err)
			return s
		}
		nave, felloe := at(ms[0]), at(ms[n+1])
		for _, spoke := range ms[1:3] { // both go into the first felloe
			body, err := solid.New(spoke.Part.Stick().Volume())
			require.NoError(t, err)
			long, wide, deep := spoke.Part.Stick().Body.Box()
			deepest, where := -math.MaxFloat64, ""
			for range 600 {
				in := func(name string, size form.Length) form.Length {
					return size * form.Length(rapid.Float64Range(0, 1).Draw(t, name))
				}
				p := form.Vec{X: in("x", long), Y: in("y", wide), Z: in("z", deep)}
				made := spoke.Part.(parts.Spoke)
				switch rapid.IntRange(0, 3).Draw(t, "where") { // most of them about the shoulders
				case 1, 2:
					p.X = made.FootLong + made.Long + 3*(p.X/long-.5)
				case 3:
					p.X = made.FootLong + 3*(p.X/long-.5)
				}
				inside := depthOf(body, p)
				for name, other := range map[string]*solid.Solid{"nave": nave, "felloe": felloe} {
					if d := math.Min(inside, depthOf(other, spoke.Pose.Of(p))); d > deepest {
						deepest, where = d, fmt.Sprintf("%s at %v of %s", name, p, spoke.Name)
					}
				}
			}
			require.Less(t, deepest, .02, where)
		}
	})
}
