package load

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// remark tells the outcome: what comes to more than is left of its wood, worst
// first, then what it weighs and what was taken for granted.
func (s *study) remark() {
	r := s.report
	type outcome struct {
		share float64
		vehicle.Remark
	}
	var all []outcome
	for _, b := range r.Beams {
		for _, o := range []vehicle.Remark{r.bent(b), r.sheared(b)} {
			if o.Limit.Value > 0 && o.Measured.Value > o.Limit.Value {
				all = append(all, outcome{o.Measured.Value / o.Limit.Value, o})
			}
		}
	}
	for _, b := range r.pressed() {
		if b.Pressed.Share() > 1 {
			all = append(all, outcome{b.Pressed.Share(), r.dented(b)})
		}
	}
	for _, w := range r.Washers {
		if w.Pressed.Share() > 1 {
			all = append(all, outcome{w.Pressed.Share(), r.washed(w)})
		}
	}
	slices.SortStableFunc(all, func(a, b outcome) int { return cmp.Compare(b.share, a.share) })
	for _, o := range all {
		r.Remarks = append(r.Remarks, o.Remark)
	}
	r.Remarks = append(r.Remarks, r.summary()...)
	r.Remarks = append(r.Remarks, r.Notes...)
}

// loadWords names what is carried.
func (r *Report) loadWords() string {
	var names []string
	for _, l := range r.vehicle.Loads {
		if l.Always == vehicle.Standing {
			continue
		}
		w := l.Name
		if l.Number > 1 {
			w = fmt.Sprintf("%d %s", l.Number, l.Name)
		}
		w += " " + r.massWords(l.Total())
		names = append(names, w)
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

const leftWords = "the average of clear wood, less for variation, lasting load and grade; no margin for safety"

func (r *Report) bent(b Beam) vehicle.Remark {
	deep := b.deep()
	return vehicle.Remark{
		Check: "bending", Gravity: vehicle.LookAt, Subject: b.Part.Name, Place: &b.place, Parts: []string{b.Part.ID},
		Measured: vehicle.Figure{Value: float64(b.Bending.Stress), Of: vehicle.StressMPa},
		Limit:    vehicle.Figure{Value: float64(b.Bending.Left), Of: vehicle.StressMPa},
		Basis:    leftWords,
		Says: fmt.Sprintf("%s is bent to %s %s, and sags %s. Clear %s bears %s on average, of which %s is left when variation, lasting load and grade are taken off: it comes to %s of that.",
			b.Part.Name, r.stress(b.Bending.Stress), b.Where, r.small(b.Sag), b.Part.Timber, r.stress(b.Bending.Clear),
			r.stress(b.Bending.Left), percent(b.Bending.Share())),
		Do: fmt.Sprintf("Under a lesser load, with another bearing between, or %s deep where it is %s now, it would come to no more than that, all else alike; a competent person judges it.",
			r.upTo(deep*quantity.Length(math.Sqrt(max(b.Bending.Share(), 1)))), r.length(deep)),
	}
}

// deep is how deep the wood is where it is bent most.
func (b Beam) deep() quantity.Length { return b.Section.Up + b.Section.Down }

func (r *Report) sheared(b Beam) vehicle.Remark {
	return vehicle.Remark{
		Check: "shear", Gravity: vehicle.LookAt, Subject: b.Part.Name, Place: &b.place, Parts: []string{b.Part.ID},
		Measured: vehicle.Figure{Value: float64(b.Shear.Stress), Of: vehicle.StressMPa},
		Limit:    vehicle.Figure{Value: float64(b.Shear.Left), Of: vehicle.StressMPa},
		Basis:    leftWords,
		Says: fmt.Sprintf("%s is sheared along its grain to %s, %s. Clear %s bears %s on average, of which %s is left when variation, lasting load and checks are taken off: it comes to %s of that.",
			b.Part.Name, r.stress(b.Shear.Stress), b.ShearWhere, b.Part.Timber, r.stress(b.Shear.Clear), r.stress(b.Shear.Left), percent(b.Shear.Share())),
		Do: "Choose wood free of checks there, and put no hole or notch more; a bearing nearer by, or more depth, lessens it.",
	}
}

func (r *Report) dented(b Bearing) vehicle.Remark {
	return vehicle.Remark{
		Check: "bearing", Gravity: vehicle.LookAt, Subject: b.On.Name, Parts: []string{b.On.ID},
		Measured: vehicle.Figure{Value: float64(b.Pressed.Stress), Of: vehicle.StressMPa},
		Limit:    vehicle.Figure{Value: float64(b.Pressed.Left), Of: vehicle.StressMPa},
		Basis:    "the average of clear wood across the grain, less for variation",
		Says: fmt.Sprintf("%s bears on %s with %s; that is %s on the face of %s, %s of what is left of clear %s across the grain: it would be dented.",
			b.Upper, lower(b.Lower), r.force(b.Force), r.stress(b.Pressed.Stress), lower(b.On.Name), percent(b.Pressed.Share()), b.On.Timber),
		Do: fmt.Sprintf("An iron plate between, %s times as large as the face is now, would bring it to that.", figure(b.Pressed.Share())),
	}
}

func (r *Report) washed(w Washer) vehicle.Remark {
	return vehicle.Remark{
		Check: "bearing under washer", Gravity: vehicle.LookAt, Subject: "fastening " + w.Fastening.ID, Parts: []string{w.On.ID}, Things: []string{w.Fastening.ID},
		Measured: vehicle.Figure{Value: float64(w.Pressed.Stress), Of: vehicle.StressMPa},
		Limit:    vehicle.Figure{Value: float64(w.Pressed.Left), Of: vehicle.StressMPa},
		Basis:    "the average of clear wood across the grain, less for variation; a wide washer of the usual table",
		Says: fmt.Sprintf("The load pulls on fastening %s with %s; that is %s under its washer on %s, %s of what is left of clear %s across the grain: it would sink in.",
			w.Fastening.ID, r.force(w.Force), r.stress(w.Pressed.Stress), lower(w.On.Name), percent(w.Pressed.Share()), w.On.Timber),
		Do: fmt.Sprintf("A washer or plate with %s times the area would bring it to that.", figure(w.Pressed.Share())),
	}
}

func figure(v float64) string { return fmt.Sprintf("%.1f", math.Ceil(v*10)/10) }

// summary says in a few lines what it weighs, how it stands, and what is bent most.
func (r *Report) summary() []vehicle.Remark {
	noted := func(check, says string, m vehicle.Figure) vehicle.Remark {
		return vehicle.Remark{Check: check, Gravity: vehicle.Noted, Subject: r.vehicle.Name, Says: says, Measured: m}
	}
	out := []vehicle.Remark{noted("weight", fmt.Sprintf("%s weighs %s empty, give or take %s, as far as the survey has parts and irons for it; %s",
		r.vehicle.Name, r.massWords(r.Empty.Mass), r.give(r.Empty.Doubt), r.balanceWords(r.Empty)), vehicle.OfMass(r.Empty.Mass))}
	carried := r.loadWords()
	if carried == "" {
		return append(out, noted("loads", "The survey states no load: write what it is to carry under [[load]], and what that does to each timber is told here.", vehicle.Figure{}))
	}
	out = append(out, noted("weight", fmt.Sprintf("Laden with %s it weighs %s; %s%s", carried, r.massWords(r.Laden.Mass), r.balanceWords(r.Laden), r.axlesWords()), vehicle.OfMass(r.Laden.Mass)))
	if r.Why != "" {
		return append(out, noted("loads", r.Why, vehicle.Figure{}))
	}
	beams := slices.Clone(r.Beams)
	slices.SortStableFunc(beams, func(a, b Beam) int { return cmp.Compare(b.worst(), a.worst()) })
	if len(beams) > 0 {
		b := beams[0]
		c, how := b.Bending, "bent"
		if b.Shear.Share() > c.Share() {
			c, how = b.Shear, "sheared"
		}
		says := fmt.Sprintf("%sOf all timbers the %s comes nearest to what is left of its wood: %s to %s, %s of it.", r.shockWords(), lower(b.Part.Name), how, r.stress(c.Stress), percent(c.Share()))
		out = append(out, noted("loads", says+" "+Caution, vehicle.Figure{Value: c.Share(), Of: vehicle.Times}))
	}
	if missing := r.unknownWoods(); missing != "" {
		out = append(out, noted("loads", missing, vehicle.Figure{}))
	}
	return out
}

// shockWords says what is assumed for rough ground.
func (r *Report) shockWords() string {
	var told []string
	for _, l := range r.vehicle.Loads {
		if l.Shock > 1 {
			told = append(told, fmt.Sprintf("%s %.3g times", l.Name, l.Shock))
		}
	}
	if len(told) == 0 {
		return "All at rest: no shock is assumed. "
	}
	return "For rough ground the survey assumes shocks, in which loads count for more than they weigh: " + strings.Join(told, ", ") + ". "
}

// axlesWords is what each axle carries.
func (r *Report) axlesWords() string {
	if len(r.Axles) == 0 {
		return ""
	}
	var w []string
	for _, a := range r.Axles {
		w = append(w, fmt.Sprintf("%s on the %s", r.massWords(a.Laden.All), lower(a.Name)))
	}
	return " " + capital(strings.Join(w, ", ")) + "."
}

// unknownWoods names the timbers whose strength is not known, and for what.
func (r *Report) unknownWoods() string {
	var told []string
	for _, b := range r.Beams {
		for _, c := range []struct {
			of   Comparison
			what string
		}{{b.Bending, "bending"}, {b.Shear, "shear"}} {
			if w := b.Part.Timber + " in " + c.what; c.of.Left <= 0 && !slices.Contains(told, w) {
				told = append(told, w)
			}
		}
	}
	if len(told) == 0 {
		return ""
	}
	return "There is no figure of strength for " + strings.Join(told, ", ") + ": what those timbers come to is listed, and set beside nothing."
}
