package delivery

import (
	"bytes"
	"fmt"
	"strings"

	"lostwood/internal/fit"
	"lostwood/internal/vehicle"
)

// Unfit is what becomes of the meshes and patterns of parts that do not go
// together as they stand.
type Unfit int

// The two.
const (
	MarkUnfit     Unfit = iota // they are made and marked
	WithholdUnfit              // they are left out
)

// sent are the items that meshes and patterns are made of.
func (o Order) sent() []*vehicle.Item {
	if o.Unfit == MarkUnfit {
		return o.Vehicle.Items
	}
	var out []*vehicle.Item
	for _, it := range o.Vehicle.Items {
		if len(it.Fails) == 0 {
			out = append(out, it)
		}
	}
	return out
}

// notFitting is why an item does not fit, for its sheet.
func notFitting(it *vehicle.Item) []string {
	var out []string
	for _, s := range it.Fails {
		out = append(out, strings.ToUpper(vehicle.NotFitting)+" as it stands: "+s)
	}
	return out
}

// offering are the files that tell how the parts were offered up.
func (o Order) offering(stem string) []job {
	r, v := o.Offered, o.Vehicle
	if r == nil {
		return nil
	}
	jobs := []job{
		{"record/" + stem + "_offering-up.txt", func(b *bytes.Buffer) error { return fit.Write(b, v, r, fit.Full) }},
		{"joiner/" + stem + "_going-together.txt", func(b *bytes.Buffer) error { return fit.WriteSteps(b, v, r) }},
	}
	if l := o.Loaded; l != nil {
		jobs = append(jobs, job{"record/" + stem + "_loads.txt", func(b *bytes.Buffer) error { return writeAll(b, l.Lists()...) }})
	}
	jobs = append(jobs, lists("joiner/"+stem+"_leave-until-offered-up", fit.LeaveList(v, r))...)
	return append(jobs, lists("yard/"+stem+"_bolts", fit.BoltsList(v, r))...)
}

// unfit is what the README says of parts that do not go together.
func (o Order) unfit() string {
	var b strings.Builder
	for _, it := range o.Vehicle.Items {
		for i, why := range it.Fails {
			if b.Len() == 0 {
				fmt.Fprintf(&b, "\nDo not cut these yet: they %s.\n", map[Unfit]string{
					MarkUnfit:     "do not go together as they stand, and their files say so",
					WithholdUnfit: "do not go together as they stand, and their meshes and patterns are withheld",
				}[o.Unfit])
			}
			if i == 0 {
				name := it.Name
				if it.Hand != vehicle.Alike {
					name += " " + strings.ToUpper(it.Hand.String())
				}
				fmt.Fprintf(&b, "  %02d %s\n", it.Number, name)
			}
			fmt.Fprintf(&b, "     %s\n", why)
		}
	}
	return b.String()
}
