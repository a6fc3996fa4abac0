package derive

import (
	"fmt"
	"slices"

	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// record enters what the keepers decided, and tells of approvals that do not
// bear what they seem to.
func (a *assembly) record() {
	s := a.network.survey
	rec := &a.vehicle.Record
	*rec = vehicle.Record{
		Object: s.Record.Object, Keeper: s.Record.Keeper, Purpose: s.Record.Purpose,
		Mark: s.Record.Mark, LeftUndone: s.Record.LeftUndone,
		Decided: map[string]string{}, AsMade: map[string][]vehicle.MadeSize{},
	}
	for _, l := range s.Settled {
		rec.Settled = append(rec.Settled, vehicle.Settled{About: l.About, How: l.How, Line: l.At.Line})
	}
	for i := range s.Parts {
		p := &s.Parts[i]
		for _, id := range a.carriers(survey.Load{On: []survey.Named{{ID: p.ID}}}) {
			if p.Decided != "" {
				rec.Decided[id] = p.Decided
			}
			for _, z := range p.AsMade {
				rec.AsMade[id] = append(rec.AsMade[id], vehicle.MadeSize{Name: z.Name, Size: z.Value})
			}
		}
	}
	for _, l := range s.Approvals {
		rec.Approvals = append(rec.Approvals, vehicle.Approval{
			Parts: a.carriers(survey.Load{On: l.Parts}), Office: l.Office,
			Conditions: l.Conditions, Issue: l.Issue, Date: l.Date, Line: l.At.Line,
		})
	}
	a.approvals()
}

// approvals tells where an approval and a part's status, or the issue, differ.
func (a *assembly) approvals() {
	v := a.vehicle
	say := func(subject string, line int, format string, args ...any) {
		v.Findings = append(v.Findings, vehicle.Finding{Concern: vehicle.Advice, Subject: subject, Line: line, Says: fmt.Sprintf(format, args...)})
	}
	for i := range v.Record.Approvals {
		l := &v.Record.Approvals[i]
		if l.Issue != v.Issue {
			say("approval", l.Line, "The approval by %s is of issue %s, and this is issue %s. It holds until a comparison of the two issues says that a size it rests on has moved.", l.Office, l.Issue, v.Issue)
		}
		for _, p := range v.Parts {
			if slices.Contains(l.Parts, p.ID) && !survey.HasLeave(p.Status) {
				say(p.ID, l.Line, "The %s is approved by %s, but its line says %s. Write status = \"approved\" there, or take it out of the approval.", p.Name, l.Office, p.Status)
			}
		}
	}
}
