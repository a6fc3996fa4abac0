package record

import (
	"fmt"
	"io"
	"runtime/debug"
	"strings"

	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A Model is what the record is made of.
type Model struct {
	Vehicle   *vehicle.Vehicle
	Survey    []byte // as it was written
	Accounts  []*vehicle.Account
	Questions *vehicle.Questions // may be nil
}

// Version is the program's own; the same program tells the same.
func Version() string {
	if b, ok := debug.ReadBuildInfo(); ok && b.Main.Version != "" {
		return b.Main.Version
	}
	return "(devel)"
}

// WritePDF prints the record for the archive, whole or not at all. The same model
// gives the same bytes.
func WritePDF(w io.Writer, m Model) error {
	v := m.Vehicle
	foot := "Record · " + v.Name + ", issue " + v.Issue
	if err := printed(w, "Record, "+v.Name+", issue "+v.Issue, foot, v.Date, m.fill); err != nil {
		return fmt.Errorf("the record: %w", err)
	}
	return nil
}

func (m Model) fill(p *paper) {
	m.title(p)
	m.found(p)
	m.derived(p)
	m.settled(p)
	m.guessed(p)
	m.made(p)
	m.principles(p)
	p.chapter("The survey, as it was written")
	for _, l := range strings.Split(strings.TrimRight(string(m.Survey), "\n"), "\n") {
		p.say(strings.TrimRight(l, "\r"), 0, mono, 7, 40)
	}
}

func (m Model) title(p *paper) {
	v := m.Vehicle
	p.y = 40
	p.say(v.Name, 0, bold, 24, 20)
	p.y += 2
	p.say("What was found, what was worked out from it, and what was decided", 0, italic, 11, 70)
	p.y += 6
	for _, f := range [][2]string{
		{"Object", v.Record.Object},
		{"Keeper", v.Record.Keeper},
		{"Purpose", v.Record.Purpose},
		{"Issue", v.Issue},
		{"Date", v.Date.Format("2 January 2006")},
		{"Survey (SHA-256)", v.Hash},
		{"Made by", "lostwood " + Version()},
	} {
		p.text(f[0] + ": " + stated(f[1]))
	}
	if p.lacked > 0 {
		p.text("Some letters of the survey have no shape in the fonts of this paper. Each stands here by its number in brackets, such as [U+05D0]; the survey's file has the letters themselves.")
	}
	p.named("Contents")
	for _, c := range p.contents {
		p.y += 9 * lead
		no := fmt.Sprint(c.page)
		p.line(left, p.y, c.title, plain, 9, 30)
		p.line(right-p.doc.GetStringWidth(no), p.y, no, plain, 9, 30)
		link := p.doc.AddLink()
		p.doc.SetLink(link, 0, c.page)
		p.doc.Link(left, p.y-4, right-left, 5, link)
	}
}

func stated(s string) string {
	if s == "" {
		return "not stated in the survey"
	}
	return s
}

func (m Model) found(p *paper) {
	p.chapter("What was found")
	for _, i := range m.Vehicle.Irons {
		p.named(i.Name + " (" + i.ID + ")")
		if i.Missing {
			p.item("Missing: what stands here is what it is to be.")
		}
		for _, f := range [][2]string{{"Condition", i.Condition}, {"Where", i.Where}, {"Marks", i.Marks}, {"Note", i.Note}} {
			if f[1] != "" {
				p.item(f[0] + ": " + f[1])
			}
		}
		for _, d := range i.Sizes {
			p.item(m.size(d.Name, d.Size, d.By))
		}
		for n, h := range i.Holes {
			p.item(m.size(fmt.Sprintf("hole %d, from its first end", n+1), h, ""))
		}
		if len(i.Photos) > 0 {
			p.item("Photographs that the survey names, not printed here: " + strings.Join(i.Photos, ", "))
		}
	}
}

// size tells one size in words, and in millimetres as the table has it.
func (m Model) size(name string, s quantity.Size, by string) string {
	if s.Known == quantity.Unknown {
		return name + ": not known"
	}
	out := fmt.Sprintf("%s: %s; %s mm, %s", name, s.Words(m.Vehicle.Unit), figure(listing.Rounded(s.Value.Millimetres(), 3)), s.Known)
	if by != "" {
		out += ", by " + by
	}
	return out
}

func (m Model) derived(p *paper) {
	p.chapter("What was worked out, and from what")
	p.text("Give or take is the standard uncertainty: about two in three such sizes lie within it, nearly all within twice as much.")
	why := map[string]*vehicle.Account{}
	for _, a := range m.Accounts {
		why[a.Subject] = a
	}
	for _, part := range m.Vehicle.Parts {
		sizes := part.Sizes
		if part.Item != nil {
			sizes = part.Item.Sizes
		}
		p.named(part.Name + " (" + part.ID + "), " + part.Timber + ", " + part.Status.String())
		for _, d := range sizes {
			p.item(m.size(d.Name, d.Size, d.By))
			if a := why[part.ID+"."+d.Name]; a != nil {
				for _, s := range append(append([]string{}, a.GiveOrTake...), a.Unchecked...) {
					p.say(s, 10, italic, 7.8, 90)
				}
			}
			for _, z := range m.Vehicle.Record.AsMade[part.ID] {
				if z.Name == d.Name {
					p.say("as made: "+figure(listing.Rounded(z.Size.Millimetres(), 3))+" mm", 10, bold, 8, 40)
				}
			}
		}
	}
}

func (m Model) settled(p *paper) {
	p.chapter("What contradicted, and how it was settled")
	m.findings(p, vehicle.Contradiction)
	p.named("Settled")
	for _, s := range m.Vehicle.Record.Settled {
		p.item(s.About + ": " + s.How)
	}
	if len(m.Vehicle.Record.Settled) == 0 {
		p.item("The survey says of none how it was settled.")
	}
}

func (m Model) findings(p *paper, c vehicle.Concern) {
	none := true
	for _, f := range m.Vehicle.Findings {
		if f.Concern == c {
			p.item(f.Subject + ": " + f.Says)
			none = false
		}
	}
	if none {
		p.item("Nothing.")
	}
}

func (m Model) guessed(p *paper) {
	p.chapter("What is guessed or not known, and what would settle it")
	for _, r := range Rows(m.Vehicle) {
		if r.Rank == nil || *r.Rank == int(quantity.Guess)+1 {
			p.item(r.Part + ", " + r.Dimension + ": " + r.Known)
		}
	}
	p.named("Not known")
	m.findings(p, vehicle.Open)
	p.named("What would settle most")
	if m.Questions != nil {
		for _, n := range m.Questions.Next {
			p.item(n.Words)
		}
	}
}

func (m Model) made(p *paper) {
	rec := &m.Vehicle.Record
	p.chapter("What is original, what is new, and who approved it")
	p.text("How new pieces are marked: " + stated(rec.Mark))
	for _, part := range m.Vehicle.Parts {
		p.named(part.Name + ": " + part.Timber + ", " + originalOrNew(part))
		if s := rec.Decided[part.ID]; s != "" {
			p.item("Decided: " + s)
		}
		a := rec.Approval(part.ID)
		if a == nil {
			p.item("No approval is written in the survey; its line says " + part.Status.String() + ".")
			continue
		}
		p.item("Approved by " + a.Office + ", on issue " + a.Issue + ", " + a.Date.Format("2 January 2006"))
		if a.Conditions != "" {
			p.item("On condition: " + a.Conditions)
		}
	}
	p.named("To heed")
	m.findings(p, vehicle.Advice)
	p.named("What was not done")
	for _, s := range rec.LeftUndone {
		p.item(s)
	}
	if len(rec.LeftUndone) == 0 {
		p.item("Not stated in the survey.")
	}
}

func (m Model) principles(p *paper) {
	p.chapter("Principles, and cautions")
	for _, s := range []string{
		"New parts are written down and drawn, can be told from old ones by examination, and can be taken out again (AIC, Commentary 23 to its guidelines for practice).",
		"Restoration stops where guesswork starts; a replacement suits the whole and can still be told from it (Venice Charter, 1964, articles 9 and 12).",
		"Reconstruct only where the evidence suffices (Burra Charter, article 20).",
		"Sources are listed, so that their credit can be judged (Nara Document on Authenticity, 1994).",
		"What is claimed, from what, and how surely, can be followed from evidence to result (London Charter, 2009, principle 4).",
	} {
		p.item(s)
	}
	p.named("Cautions")
	p.item("Old paint may hold lead; wood dust harms the lungs; machines, hot iron and heavy parts hurt. Follow local codes, and leave loads and brakes to those licensed to judge them. This record is no proof that the vehicle is fit to be driven.")
}
