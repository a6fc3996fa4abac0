package delivery

import (
	"lostwood/internal/cutlist"
	"lostwood/internal/page"
	"lostwood/internal/vehicle"
)

// Reasons are why the sizes are as they are; the page tells them.
type Reasons struct {
	Accounts  []*vehicle.Account
	Questions *vehicle.Questions
	Spacings  []vehicle.Spacing
}

// page is what the page shows of this order.
func (o Order) page(list *cutlist.List, more []vehicle.Finding) page.Model {
	return page.Model{
		Vehicle: o.Vehicle, Survey: o.Survey, Findings: more,
		Accounts: o.Reasons.Accounts, Questions: o.Reasons.Questions, Spacings: o.Reasons.Spacings,
		Cutting: list.Cutting(), Totals: list.Totals(),
		Files: func(it *vehicle.Item) []page.Link {
			if o.Unfit == WithholdUnfit && len(it.Fails) > 0 {
				return nil
			}
			stem := o.Vehicle.Stem(it)
			return []page.Link{
				{Words: "Full-size pattern (PDF)", Path: "../joiner/patterns/" + stem + ".pdf"},
				{Words: "Drawing (PDF)", Path: "../" + Drawings + stem + "_drawing.pdf"},
				{Words: "Mesh (STL, millimetres)", Path: "../cnc/" + stem + ".stl"},
			}
		},
	}
}
