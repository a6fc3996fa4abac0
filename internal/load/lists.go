package load

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

// Lists are all of the report's tables, as they are to be read.
func (r *Report) Lists() []*listing.List {
	return []*listing.List{r.BeamsList(), r.BearingsList(), r.StandList(), r.WeightsList()}
}

func (r *Report) title(what string) string {
	return fmt.Sprintf("%s, issue %s: %s", r.vehicle.Name, r.vehicle.Issue, what)
}

func (r *Report) mass(m quantity.Mass) listing.Cell {
	return listing.Cell{Value: listing.Rounded(float64(m), 3), Words: r.massWords(m)}
}

func (r *Report) pressure(p timber.Megapascals) listing.Cell {
	if p <= 0 {
		return listing.Cell{Words: quantity.NotKnown}
	}
	return listing.Cell{Value: listing.Rounded(float64(p), 4), Words: r.stressFigure(p)}
}

func (r *Report) sized(l quantity.Length) listing.Cell {
	return listing.Cell{Value: listing.Rounded(l.Millimetres(), 3), Words: r.small(l)}
}

func shared(share float64) listing.Cell {
	return listing.Cell{Value: listing.Rounded(100*share, 2), Words: percent(share)}
}

// stressed is a stress that may be next to nothing.
func (r *Report) stressed(p timber.Megapascals) listing.Cell {
	return listing.Cell{Value: listing.Rounded(float64(p), 4), Words: r.stressFigure(p)}
}

// BeamsList is a row for each timber that bends, the most bent for its wood first.
func (r *Report) BeamsList() *listing.List {
	right := listing.Right
	l := &listing.List{Title: r.title("how the load bends the timbers, in " + r.stressUnit()), Foot: r.beamsFoot(), Columns: []listing.Column{
		{Key: "part", Head: "Part"},
		{Key: "timber", Head: "Timber"},
		{Key: "bending_mpa", Head: "Bent to", Align: right},
		{Key: "where", Head: "Where most"},
		{Key: "bending_clear_mpa", Head: "Clear wood", Align: right},
		{Key: "bending_left_mpa", Head: "Left of it", Align: right},
		{Key: "bending_percent", Head: "Share", Align: right},
		{Key: "shear_mpa", Head: "Sheared to", Align: right},
		{Key: "shear_clear_mpa"},
		{Key: "shear_left_mpa", Head: "Left", Align: right},
		{Key: "shear_percent", Head: "Share", Align: right},
		{Key: "sag_mm", Head: "Sags", Align: right},
		{Key: "span_mm", Head: "over", Align: right},
		{Key: "at_mm"},
		{Key: "area_mm2"},
		{Key: "second_moment_mm4"},
	}}
	beams := slices.Clone(r.Beams)
	slices.SortStableFunc(beams, func(a, b Beam) int { return cmp.Compare(b.worst(), a.worst()) })
	for _, b := range beams {
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: b.Part.Name},
			{Value: b.Part.Timber},
			r.stressed(b.Bending.Stress),
			{Value: b.Where},
			r.pressure(b.Bending.Clear), r.pressure(b.Bending.Left), shared(b.Bending.Share()),
			r.stressed(b.Shear.Stress), r.pressure(b.Shear.Clear), r.pressure(b.Shear.Left), shared(b.Shear.Share()),
			r.sized(b.Sag), r.sized(b.Span),
			{Value: listing.Rounded(b.At.Millimetres(), 1)},
			{Value: listing.Rounded(float64(b.Section.Area), 1)},
			{Value: listing.Rounded(b.Section.Inertia, 0)},
		})
	}
	return l
}

// worst is the greater of the shares that are known.
func (b Beam) worst() float64 {
	w := 0.0
	for _, s := range []float64{b.Bending.Share(), b.Shear.Share()} {
		if s > w {
			w = s
		}
	}
	return w
}

func (r *Report) beamsFoot() []string {
	foot := []string{""}
	if r.Why != "" {
		foot = append(foot, r.Why)
	}
	if len(r.Beams) > 0 && r.loadWords() != "" {
		foot = append(foot, "Under "+r.loadWords()+", and its own weight. "+strings.TrimSpace(r.shockWords()))
	}
	return append(foot,
		fmt.Sprintf("Clear wood: the average of small clear pieces of its species at %.3g %% moisture, in a test of some minutes.", float64(r.vehicle.Moisture.Service)),
		"Left of it, in bending: "+lessWords(timber.OfBending())+".",
		"Left of it, in shear: "+lessWords(timber.OfShear())+".",
		"No margin for safety is in these. A load that lies on for years about doubles the sag (Wood Handbook, from memory).",
		"Sections are those with holes, mortises and housings in them. Shares come from a grid of beams: fastened timbers go down together, "+
			"wheels do not give way, and irons bend beside the wood without making one deeper beam with it.",
		Caution)
}

// BearingsList is a row for each two that press on each other, by the wood that
// bears it less well, the most pressed for its wood first; then bolts that are pulled.
func (r *Report) BearingsList() *listing.List {
	right := listing.Right
	l := &listing.List{Title: r.title("how hard wood is pressed across its grain, in " + r.stressUnit()), Columns: []listing.Column{
		{Key: "part", Head: "Wood"},
		{Key: "timber", Head: "Timber"},
		{Key: "pressed_by", Head: "Pressed"},
		{Key: "force_n", Head: "By", Align: right},
		{Key: "area_mm2"},
		{Key: "stress_mpa", Head: "Comes to", Align: right},
		{Key: "clear_mpa", Head: "Clear wood", Align: right},
		{Key: "left_mpa", Head: "Left of it", Align: right},
		{Key: "percent", Head: "Share", Align: right},
	}}
	add := func(part, timberName, by string, f timber.Newtons, area quantity.Area, c Comparison) {
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: part},
			{Value: timberName},
			{Value: by},
			{Value: listing.Rounded(float64(f), 1), Words: r.force(f)},
			{Value: listing.Rounded(float64(area), 1)},
			r.stressed(c.Stress), r.pressure(c.Clear), r.pressure(c.Left), shared(c.Share()),
		})
	}
	few, worth := 0, .02 // the share of what is left from which it is listed
	for _, b := range r.pressed() {
		if b.Pressed.Share() < worth {
			few++
			continue
		}
		add(b.On.Name, b.On.Timber, lower(b.Upper)+" on "+lower(b.Lower), b.Force, b.Area, b.Pressed)
	}
	for _, w := range r.Washers {
		add(w.On.Name, w.On.Timber, "washer of fastening "+w.Fastening.ID+", pulled", w.Force, w.Area, w.Pressed)
	}
	l.Foot = []string{
		"", fmt.Sprintf("%d more that come to under %s of what is left are not listed.", few, percent(worth)),
		"Clear wood: where it begins to be dented for good. Left of it: " + lessWords(timber.OfBearing()) + ".",
		"The pressure is taken as even over the whole face; a nut drawn up hard presses more than any load.", Caution,
	}
	return l
}

// pressed keeps of each two the one that bears it less well, worst first.
func (r *Report) pressed() []Bearing {
	var out []Bearing
	for _, b := range r.Bearings {
		i := slices.IndexFunc(out, func(o Bearing) bool { return o.Upper == b.Upper && o.Lower == b.Lower })
		switch {
		case i < 0:
			out = append(out, b)
		case b.Pressed.Share() > out[i].Pressed.Share():
			out[i] = b
		}
	}
	slices.SortStableFunc(out, func(a, b Bearing) int { return cmp.Compare(known(b.Pressed.Share()), known(a.Pressed.Share())) })
	return out
}

func known(share float64) float64 {
	if math.IsNaN(share) {
		return 0
	}
	return share
}

// StandList is what stands on each axle and wheel.
func (r *Report) StandList() *listing.List {
	right := listing.Right
	l := &listing.List{Title: r.title("what stands on the wheels"), Columns: []listing.Column{
		{Key: "axle", Head: "On"},
		{Key: "empty_kg", Head: "Empty", Align: right},
		{Key: "empty_near_kg", Head: "near wheel", Align: right},
		{Key: "empty_off_kg", Head: "off wheel", Align: right},
		{Key: "laden_kg", Head: "Laden", Align: right},
		{Key: "laden_near_kg", Head: "near wheel", Align: right},
		{Key: "laden_off_kg", Head: "off wheel", Align: right},
	}}
	for _, a := range r.Axles {
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: a.Name},
			r.mass(a.Empty.All), r.mass(a.Empty.Near), r.mass(a.Empty.Off),
			r.mass(a.Laden.All), r.mass(a.Laden.Near), r.mass(a.Laden.Off),
		})
	}
	none := listing.Cell{}
	l.Rows = append(l.Rows, []listing.Cell{{Value: "All"}, r.mass(r.Empty.Mass), none, none, r.mass(r.Laden.Mass), none, none})
	l.Foot = []string{"", "Empty " + r.balanceWords(r.Empty)}
	if r.Laden.Mass > r.Empty.Mass {
		l.Foot = append(l.Foot, "Laden "+r.balanceWords(r.Laden))
	}
	if r.vehicle.Track == 0 && len(r.Axles) > 0 {
		l.Foot = append(l.Foot, "The survey does not state the track: the wheels are taken to stand at the ends of the axles.")
	}
	for _, n := range r.Notes {
		l.Foot = append(l.Foot, n.Says)
	}
	return l
}

// balanceWords tells where it balances, from the fore axle where there is one;
// nothing where most of what it is made of could not be weighed.
func (r *Report) balanceWords(b Balance) string {
	unknown := 0
	for _, w := range r.Weights {
		if w.Why != "" {
			unknown++
		}
	}
	if 2*unknown > len(r.Weights) {
		return "where it balances cannot be told, most of it not being weighed."
	}
	from, name := quantity.Length(0), "the survey's zero"
	if len(r.Axles) > 0 {
		from, name = r.Axles[0].At, "the "+lower(r.Axles[0].Name)
	}
	x, way := from-b.At[0].Value, "behind"
	if x < 0 {
		x, way = -x, "before"
	}
	return fmt.Sprintf("it balances %s%s %s and %sabove the ground.", r.about(x, b.At[0].Doubt), way, name, r.about(b.At[2].Value, b.At[2].Doubt))
}

// about is a length with its give or take, ready for the words after it.
func (r *Report) about(l, doubt quantity.Length) string {
	words := quantity.Size{Value: l, Doubt: doubt, Known: quantity.FromIron}.Words(r.vehicle.Unit)
	if doubt == 0 {
		return words + " "
	}
	return words + ", "
}

// WeightsList is a row for each timber and iron.
func (r *Report) WeightsList() *listing.List {
	l := &listing.List{Title: r.title("what it weighs"), Columns: []listing.Column{
		{Key: "part", Head: "Part or iron"},
		{Key: "of", Head: "Of"},
		{Key: "number", Head: "Number", Align: listing.Right},
		{Key: "mass_kg", Head: "Weighs", Align: listing.Right},
		{Key: "give_or_take_kg", Head: "Give or take", Align: listing.Right},
		{Key: "why"},
	}}
	var all, doubt quantity.Mass
	for _, w := range r.Weights {
		if w.Why != "" {
			l.Rows = append(l.Rows, []listing.Cell{{Value: w.Name}, {Value: w.Of}, {Value: w.Number}, {Words: quantity.NotKnown}, {}, {Value: w.Why}})
			continue
		}
		l.Rows = append(l.Rows, []listing.Cell{
			{Value: w.Name},
			{Value: w.Of},
			{Value: w.Number},
			r.mass(w.Mass),
			{Value: listing.Rounded(float64(w.Doubt), 3), Words: r.give(w.Doubt)},
			{},
		})
		all += w.Mass
	}
	doubt = r.Empty.Doubt
	l.Foot = []string{
		"", fmt.Sprintf("Together %s, give or take %s.", r.massWords(all), r.give(doubt)),
		fmt.Sprintf("Wood at %.3g %% moisture, less what is cut out of it; pieces of one species differ by 10 %%. Irons as wrought iron, of their plain shapes less their holes. "+
			"What the survey has no part or iron for, such as hubs and spokes, is not in it; it can be stated as a load that is always there.", float64(r.vehicle.Moisture.Service)),
	}
	return l
}
