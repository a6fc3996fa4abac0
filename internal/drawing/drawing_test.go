package drawing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/quantity"
	"lostwood/internal/sheet"
	"lostwood/internal/sight"
	"lostwood/internal/solid"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"

	v3 "github.com/deadsy/sdfx/vec/v3"
)

// ISO 5455:1979 recommends for reductions 1:2, 1:5, 1:10, 1:20, 1:50 and so on (from memory).
func TestScalesAreThoseOfTheStandard(t *testing.T) {
	require.Equal(t, []Scale{1, 2, 5, 10, 20, 50}, reductions())
	require.Equal(t, "1:5", Scale(5).String())
	require.InDelta(t, 20, float64(Scale(5).of(100)), 0)
}

// ISO 216: A0 841 x 1189, A1 594 x 841, A2 420 x 594, A3 297 x 420, A4 210 x 297 mm (from memory);
// Letter and Tabloid are 8.5 x 11 and 11 x 17 in, ASME Y14.1 sizes A and B (from memory).
func TestPapersAreThoseOfTheStandard(t *testing.T) {
	for name, want := range map[string][2]float64{
		"A0": {1189, 841}, "a1": {841, 594}, "A2": {594, 420}, "a3": {420, 297}, "A4": {210, 297},
		"Letter": {215.9, 279.4}, "tabloid": {431.8, 279.4},
	} {
		p, err := FindPaper(name)
		require.NoError(t, err)
		require.InDelta(t, want[0], float64(p.Width), 1e-9)
		require.InDelta(t, want[1], float64(p.Height), 1e-9)
	}
	_, err := FindPaper("A9")
	require.ErrorContains(t, err, `paper "A9" is not known for drawings; A4, A3, A2, A1, A0, Letter, Tabloid would do`)
}

// ISO 5457:1999: a filing margin of 20 mm on the left and 10 mm elsewhere (from memory).
func TestTheFrameKeepsTheMargins(t *testing.T) {
	p, err := FindPaper("A2")
	require.NoError(t, err)
	f := p.frame()
	require.Equal(t, [4]Length{20, 10, 584, 410}, [4]Length{f.Min.X, f.Min.Y, f.Max.X, f.Max.Y})
}

// ISO 128-2 has line widths of 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4 and 2 mm,
// wide to narrow 2:1; ISO 3098 letters of 1.8, 2.5, 3.5, 5, 7, 10, 14 and 20 mm (both from memory).
func TestWidthsAndHeightsAreThoseOfTheStandards(t *testing.T) {
	widths := []Length{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2}
	for _, n := range []Length{narrow, fineLine} {
		require.Contains(t, widths, n)
		i := slices.Index(widths, n)
		require.InDelta(t, float64(widths[i+2]), float64(2*n), 0.011, "wide")
	}
	for _, h := range []Length{tiny, small, normal, large, huge} {
		require.Contains(t, []Length{1.8, 2.5, 3.5, 5, 7, 10, 14, 20}, h)
	}
}

func TestSpreadKeepsOrderAndGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 30).Draw(t, "n")
		places := make([]Length, n)
		for i := range places {
			places[i] = Length(rapid.Float64Range(0, 200).Draw(t, "place"))
		}
		slices.Sort(places)
		set := spread(places, 4)
		require.Len(t, set, n)
		off := 0.0
		for i := range set {
			off += float64(set[i] - places[i])
			if i > 0 {
				require.GreaterOrEqual(t, float64(set[i]-set[i-1]), 4-1e-9)
			}
		}
		require.InDelta(t, 0, off, 1e-6*float64(n+1), "as much to the one side as to the other")
	})
}

func TestBalloonsFindPlacesInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := shelf{to: 300, bars: []Length{40, 41, 220}}
		places := h.slots()
		for i, p := range places {
			for _, bar := range h.bars {
				require.GreaterOrEqual(t, math.Abs(float64(p-bar)), float64(balloonRadius))
			}
			if i > 0 {
				require.GreaterOrEqual(t, float64(p-places[i-1]), float64(2*balloonRadius))
			}
		}
		n := rapid.IntRange(0, len(places)).Draw(t, "n")
		row := make([]balloon, n)
		for i := range row {
			row[i].to.X = Length(rapid.Float64Range(-20, 320).Draw(t, "x"))
		}
		slices.SortFunc(row, func(a, b balloon) int { return int(math.Copysign(1, float64(a.to.X-b.to.X))) })
		set := matched(row, places)
		require.True(t, slices.IsSorted(set))
		require.Len(t, slices.Compact(slices.Clone(set)), n)
	})
}

// In third angle the plan stands above the front view, in first below it (ISO 5456-2).
func TestWhereTheViewsStand(t *testing.T) {
	for angle, above := range map[Angle]bool{Third: true, First: false} {
		v, it := ofOne(plank(), vehicle.Near, quantity.Inches)
		all, err := Part(v, it, on(t, "A3", angle))
		require.NoError(t, err)
		height := map[string]Length{}
		for _, w := range all[0].Words {
			if w.Weight == sheet.Heavy {
				height[w.Words] = w.At.Y
			}
		}
		require.Equal(t, above, height["upper face"] > height["outer side"], angle.String())
	}
}

// The drawn outline is as long and deep as the part.
func TestViewsAreOfThePartsSize(t *testing.T) {
	for n, k := range parts.Kinds() {
		p := anyPart(k, n)
		s := p.Stick()
		body, err := sight.Of(s.Volume(), fine)
		require.NoError(t, err)
		for _, f := range []parts.Face{parts.Upper, parts.FirstSide, parts.SecondEnd} {
			v := viewOf(body, s.Body, f)
			box := sheet.Line{Run: v.lines[0].Path}.Bounds()
			for _, l := range v.lines {
				box = box.With(sheet.Line{Run: l.Path}.Bounds())
			}
			require.InDelta(t, 0, float64(box.Min.X), 2*float64(fine), "%s %v", k.Name, f)
			require.InDelta(t, float64(v.wide), float64(box.Max.X), 2*float64(fine), "%s %v", k.Name, f)
			require.InDelta(t, float64(v.high), float64(box.Max.Y), 2*float64(fine), "%s %v", k.Name, f)
		}
	}
}

// The section of a plain timber is its rectangle, and hatching keeps inside it.
func TestSectionsAreHatchedInside(t *testing.T) {
	letters, err := sheet.NewLettering()
	require.NoError(t, err)
	b := board{&sheet.Sheet{Stroke: narrow}, letters}
	p := form.Rectangle(at(10, 10), at(40, 30))
	hole := form.Circle(at(25, 20), 6)
	b.hatch([][]form.Vertex{p, hole})
	long := 0.0
	for _, l := range b.Lines {
		for _, e := range l.Run {
			require.InDelta(t, 25, float64(e.X), 15.001)
			require.InDelta(t, 20, float64(e.Y), 10.001)
			require.GreaterOrEqual(t, math.Hypot(float64(e.X-25), float64(e.Y-20)), 5.9)
		}
		long += math.Hypot(float64(l.Run[1].X-l.Run[0].X), float64(l.Run[1].Y-l.Run[0].Y))
	}
	require.InDelta(t, 600-math.Pi*36, long*1.8/math.Sqrt2, 25, "lines so far apart cover the area")
}

func TestHandIssueAndGuessStandOnThePartsSheet(t *testing.T) {
	for _, hand := range []vehicle.Hand{vehicle.Near, vehicle.Off} {
		v, it := ofOne(plank(), hand, quantity.Inches)
		all, err := Part(v, it, on(t, "A3", Third))
		require.NoError(t, err)
		tall := Length(0)
		for _, w := range all[0].Words {
			if w.Words == handWord(hand) {
				tall = max(tall, w.Height)
			}
		}
		require.Equal(t, huge, tall)
		said := words(all[0])
		for _, want := range []string{"[3 5/32 guess]", "[GUESS]", "issue B", "3fa9c2d1b7e8", "approved", "2 " + handWord(hand), "fastening 7 and 2 others", "settle them before cutting", "wear a mask"} {
			require.Contains(t, said, want)
		}
		for _, w := range all[0].Words {
			require.NotEqual(t, "3 5/32", w.Words, "a guess never stands as if it were known")
		}
	}
}

func TestWhatDoesNotFitIsRefused(t *testing.T) {
	v, it := ofOne(parts.Plain{Name: "sill", Long: 7900, Wide: 60, Deep: 80}, vehicle.Alike, quantity.Inches)
	_, err := Part(v, it, on(t, "A4", Third))
	var size *SizeError
	require.ErrorAs(t, err, &size)
	require.ErrorContains(t, err, "the sill (7900 x 60 x 80 mm) does not fit on A4 at 1:20, the smallest scale at which its work can be read; take larger paper with --paper")
	_, err = General(v, on(t, "A4", Third))
	require.ErrorContains(t, err, "nothing in a place yet")
	_, err = Part(v, &vehicle.Item{Name: "sill"}, on(t, "A4", Third))
	require.ErrorContains(t, err, "no shape")
	_, err = FindAngle("second")
	require.ErrorContains(t, err, "third or first would do")
	it.Name = "sill \u6728"
	v.Items[0].Stick = plank().Stick()
	var letter *sheet.LetterError
	require.ErrorAs(t, WritePart(&strings.Builder{}, v, it, on(t, "A3", Third)), &letter)
}

// Every mark of the wagon's things is on the sheet once, or told of in the notes.
func TestEveryThingIsMarkedOrToldOf(t *testing.T) {
	v := theWagon(t)
	things, err := thingsOf(v)
	require.NoError(t, err)
	a := &arrangement{v: v, making: on(t, "A1", Third), things: things, views: elevations(things)}
	a.letters, err = sheet.NewLettering()
	require.NoError(t, err)
	b := a.drawn(10, rough)
	marks := map[string]int{}
	for _, w := range b.Words {
		if w.Weight == sheet.Heavy && w.Height == small {
			marks[w.Words]++
		}
	}
	want := map[string]int{}
	for _, th := range things {
		if len(th.bodies) > 0 && !slices.Contains(a.unseen, th) && !slices.Contains(a.unshown, th) {
			want[th.mark]++
		}
	}
	require.Equal(t, want, marks)
	require.Empty(t, a.unshown)
	require.Less(t, len(a.unseen), 3)
	notes := strings.Join(a.remarks(), "\n")
	require.Contains(t, notes, "No wheels are drawn: the survey gives them no place in the vehicle.")
	require.Contains(t, notes, "22 fore felloe")
}

// Where a bolt passes a timber there is its hole: the drawn solids stand as the
// adjusted fastenings say, on both sides. The common size of a row may put a hole
// off its own bolt by no more than the play and the row's spread.
func TestBoltsPassThroughTheHolesOfTheTimbersDrawn(t *testing.T) {
	v := theWagon(t)
	byID := map[string]*vehicle.Part{}
	for _, p := range v.Parts {
		byID[p.ID] = p
	}
	checked := map[vehicle.Hand]int{}
	for _, f := range v.Fastenings {
		if f.What != "bolt" || f.Way == [3]float64{} {
			continue
		}
		for _, s := range f.Through {
			p := byID[s.ID]
			if p == nil || p.Place == nil || p.Item == nil {
				continue
			}
			wood, err := solid.New(p.Item.Stick.Volume())
			require.NoError(t, err)
			pose := timberPose(p, p.Item)
			body, err := solid.New(p.Item.Stick.Body.Volume())
			require.NoError(t, err)
			deepest, inBody := math.Inf(-1), false
			for d := 0.0; d < float64(f.Grip.Value); d += 2 {
				var at form.Vec
				at.X, at.Y, at.Z = f.Head[0].Value+Length(f.Way[0]*d), f.Head[1].Value+Length(f.Way[1]*d), f.Head[2].Value+Length(f.Way[2]*d)
				rel := at.Minus(pose.At)
				own := v3.Vec{X: float64(pose.Axes[0].Along(rel)), Y: float64(pose.Axes[1].Along(rel)), Z: float64(pose.Axes[2].Along(rel))}
				inBody = inBody || body.Evaluate(own) < -3
				deepest = math.Max(deepest, -wood.Evaluate(own))
			}
			require.True(t, inBody, "fastening %s passes %s", f.ID, p.ID)
			require.Less(t, deepest, 3.0, "fastening %s in %s", f.ID, p.ID)
			checked[p.Hand]++
		}
	}
	require.Greater(t, checked[vehicle.Near], 20)
	require.Greater(t, checked[vehicle.Off], 20)
}
