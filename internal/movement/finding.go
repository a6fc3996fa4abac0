package movement

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func (r *Report) advise(subject, format string, values ...any) {
	r.Findings = append(r.Findings, vehicle.Finding{Concern: vehicle.Advice, Subject: subject, Says: fmt.Sprintf(format, values...)})
}

// find says what is to be heeded.
func (r *Report) find() {
	m := r.vehicle.Moisture
	if r.steady() {
		r.advise("wood", "The survey names one moisture for all the year, %s: what the wood does from month to month cannot be told. "+
			"Name the place, give the climate, or write the driest and the wettest.", percent(m.Service))
	}
	r.findUnknown()
	for _, c := range r.concerns() {
		r.advise(c.subject(), "%s", c.says(r))
	}
	r.findGaps()
	r.findTyres()
	r.findSlack()
}

// findUnknown names each timber whose movement is not known.
func (r *Report) findUnknown() {
	var told []string
	for _, p := range r.vehicle.Parts {
		w := r.woods[p.Timber]
		if w.across == nil || slices.Contains(told, p.Timber) {
			continue
		}
		told = append(told, p.Timber)
		r.advise(p.Timber, "How %s moves cannot be told, and nothing here reckons with it: %v.", p.Timber, w.across)
	}
}

// A concern is one spacing to heed, of both hands and by all that hold the
// timber there.
type concern struct {
	worst   Spacing
	hands   []vehicle.Hand
	holders []string // without their hands
	irons   bool
}

// concerns are the spacings that want something done, each told once.
func (r *Report) concerns() []concern {
	var out []concern
	var keys []string
	for _, s := range r.Spacings {
		if s.Needs() == 0 && !s.TooFar() {
			continue
		}
		var numbers []string
		for _, h := range s.Holes {
			id, _, _ := strings.Cut(h.Fastening.ID, " ")
			numbers = append(numbers, id)
		}
		key := fmt.Sprint(bare(s.Part.Name), s.Grain, numbers)
		i := slices.Index(keys, key)
		if i < 0 {
			i = len(keys)
			keys = append(keys, key)
			out = append(out, concern{worst: s})
		}
		c := &out[i]
		if s.Iron && !c.worst.Iron || s.Iron == c.worst.Iron && s.By.Total() > c.worst.By.Total() {
			c.worst = s // an iron has hole numbers to go by
		}
		c.irons = c.irons || s.Iron
		if h := s.hand(); h != vehicle.Alike && !slices.Contains(c.hands, h) {
			c.hands = append(c.hands, h)
		}
		if name := bare(s.Holder); !slices.Contains(c.holders, name) {
			c.holders = append(c.holders, name)
		}
	}
	return out
}

// hand is the side a spacing is on.
func (s Spacing) hand() vehicle.Hand {
	if h := handOf(s.Holder); h != vehicle.Alike {
		return h
	}
	return s.Part.Hand
}

func (c concern) subject() string { return c.worst.Holder }

// holder names what holds the timber, with the hands it is told of.
func (c concern) holder() string {
	var hands []string
	for _, h := range c.hands {
		hands = append(hands, h.String())
	}
	return strings.TrimSpace(and(hands) + " " + and(c.holders))
}

func (c concern) says(r *Report) string {
	s := c.worst
	if s.Grain == Along {
		return fmt.Sprintf("%s: the fastenings stand %s apart along the %s. Along the grain the wood goes %s there, and the fastenings give %s: %s "+
			"(Wood with twisted or young grain may go ten times that.)",
			capital(c.holder()), r.size(s.Span), bare(s.Part.Name), r.up(s.By.Total()), r.size(s.Play), c.remedy(r))
	}
	far := ""
	if s.TooFar() {
		far = ", more than " + r.tooFar()
	}
	return fmt.Sprintf("%s: the fastenings stand %s apart across the grain of the %s%s. %s %s",
		capital(c.holder()), r.size(s.Span), bare(s.Part.Name), far, r.moves(s), capital(c.remedy(r)))
}

// moves says what the wood does between the outer two holes.
func (r *Report) moves(s Spacing) string {
	m := r.vehicle.Moisture
	switch {
	case !s.By.Known():
		return "How far it moves there is not known."
	case r.steady() && s.By.Total() == 0:
		point := r.perPoint(s)
		return fmt.Sprintf("It moves %s there for each percent of moisture; the fastenings give %s.", r.size(point), r.give(s))
	case r.steady():
		return fmt.Sprintf("Bored at %s and kept at %s it moves %s there; the fastenings give %s.", percent(r.worked()), percent(m.Service), r.up(s.By.Total()), r.give(s))
	}
	return fmt.Sprintf("From the driest month (%s) to the wettest (%s) it goes %s there; bored at %s it closes by up to %s and opens by up to %s, and the fastenings give %s.",
		percent(m.Driest), percent(m.Wettest), r.up(s.By.Year()), percent(r.worked()), r.up(s.By.Shrinks()), r.up(s.By.Swells()), r.give(s))
}

func (r *Report) give(s Spacing) string {
	if s.Play == 0 {
		return "nothing"
	}
	return r.size(s.Play) + " either way"
}

// perPoint is what the span goes for one point about the service moisture.
func (r *Report) perPoint(s Spacing) quantity.Length {
	w := r.woods[s.Part.Timber]
	at := r.vehicle.Moisture.Service
	one, err := w.Resize(s.Span, at, max(at-1, 0), timber.Worst)
	if err != nil {
		return 0
	}
	return s.Span - one
}

// remedy is what to do, in words.
func (c concern) remedy(r *Report) string {
	s := c.worst
	slots := s.Slots()
	if len(slots) == 0 && s.Grain == Along {
		return "leave the outer holes easy."
	}
	if len(slots) == 0 {
		words := "that is far for one plate: bolt it fast in one place only and leave the other easy"
		if c.irons {
			words += ", or put it on as separate plates"
		}
		return words + "; and do not bore before the wood is as dry as it is to be worked."
	}
	fast := s.Holes[s.Fast()]
	var long []string
	for _, slot := range slots {
		long = append(long, fmt.Sprintf("%s %s longer than round", slot.Hole.words(), r.up(slot.By)))
	}
	words := fmt.Sprintf("hold %s fast and make a slot in the wood, not in the old iron, at %s, that way of the wood", fast.words(), and(long))
	if s.Grain == Along {
		return words + "."
	}
	if c.irons {
		words += "; or put the iron on as separate plates"
	}
	return words + "; and let the wood dry first, to between " + r.between() + "."
}

// between is the moisture to bore at, so that the wood goes no farther one way than the other.
func (r *Report) between() string {
	m := r.vehicle.Moisture
	if r.steady() {
		return percent(m.Service-1) + " and " + percent(m.Service+1)
	}
	middle := quantity.Moisture(math.Round(float64(m.Driest+m.Wettest) / 2))
	return percent(middle-1) + " and " + percent(middle+1)
}

func (h Hole) words() string {
	id, _, _ := strings.Cut(h.Fastening.ID, " ")
	if h.Number > 0 {
		return fmt.Sprintf("hole %d (fastening %s)", h.Number, id)
	}
	return "fastening " + id
}

func (r *Report) findGaps() {
	for _, g := range r.Gaps {
		if g.Why != nil || g.Wettest > 0 || g.Service <= 0 {
			continue
		}
		r.advise(g.Between[0].Name, "%s and %s stand %s apart in service and press on each other at %s: leave %s between them on the day they are fitted, at %s.",
			g.Between[0].Name, lower(g.Between[1].Name), r.size(g.Service), percent(r.vehicle.Moisture.Wettest), r.up(g.Worked-g.Wettest), percent(r.worked()))
	}
}

// findTyres: a rim's depth is across its grain, so that its girth goes 2 pi times as far.
func (r *Report) findTyres() {
	for _, p := range r.Parts {
		by := r.depth(p)
		if p.Item.Kind != "felloe" || !by.Known() || by.Total() == 0 {
			continue
		}
		r.advise(p.Item.Name, "%s: between %s and %s the rim's depth alone makes its girth go %s, by which the tyre is slack in the dry. Tyre the wheel at its driest, or look to it then.",
			p.Item.Name, percent(min(r.vehicle.Moisture.Driest, r.worked())), percent(max(r.vehicle.Moisture.Wettest, r.worked())),
			r.size(2*math.Pi*by.Total()))
	}
}

// depth is what a felloe's depth, along its spokes, does.
func (r *Report) depth(p Part) Change {
	for _, d := range p.Item.Sizes {
		if d.Name == "deep" {
			return r.change(p.Item.Timber, d.Value, timber.Worst)
		}
	}
	return Change{}
}

// worthTightening is how much slack a nut can leave without being told of; common practice, no source.
const worthTightening = quantity.Millimetre / 2

func (r *Report) findSlack() {
	var most Grip
	count := 0
	for _, g := range r.Grips {
		if !g.By.Known() || g.By.Shrinks() < worthTightening {
			continue
		}
		count++
		if g.By.Shrinks() > most.By.Shrinks() {
			most = g
		}
	}
	if count == 0 {
		return
	}
	when := "by the driest month"
	if r.steady() {
		when = "once the wood is at " + percent(r.vehicle.Moisture.Service)
	}
	r.advise("fastenings", "Drawn up at %s, %s %s, most of all fastening %s, by %s. Go round with the spanner after the first season, and never so tight that the wood is crushed when it swells.",
		percent(r.worked()), counted(count), when, most.Fastening.ID, r.up(most.By.Shrinks()))
}

func counted(n int) string {
	if n == 1 {
		return "one fastening is slack"
	}
	return fmt.Sprintf("%d fastenings are slack", n)
}

// Notes are what movement asks in the making of an item, for its list of work.
func (r *Report) Notes(it *vehicle.Item) []string {
	var out []string
	for _, s := range r.Spacings {
		if s.Part.Item != it || s.Needs() == 0 && !s.TooFar() {
			continue
		}
		c := concern{worst: s, holders: []string{bare(s.Holder)}, irons: s.Iron}
		note := fmt.Sprintf("%s: %s", bare(s.Holder), strings.TrimSuffix(c.remedy(r), "."))
		if !slices.Contains(out, note) {
			out = append(out, note)
		}
	}
	return out
}
