package fit

import (
	"cmp"
	"slices"
	"strings"

	"lostwood/internal/vehicle"
)

// settle puts the remarks in order, worst first, and tells those that are alike
// on both sides or in a row as one.
func (c *check) settle() {
	c.report.Remarks = gather(c.report.Remarks)
	order(c.report.Remarks)
}

func order(rs []vehicle.Remark) {
	slices.SortStableFunc(rs, func(a, b vehicle.Remark) int {
		return cmp.Or(cmp.Compare(a.Gravity, b.Gravity), cmp.Compare(rank(a.Check), rank(b.Check)), cmp.Compare(share(b), share(a)))
	})
}

// checks in the order of how much they upset; loads come after them.
var checks = []string{
	"bolt length", "thread", "overlap", "holes in line", "bolt entry", "spanner", "trapped", "turning", "swing", "travel", "reach",
	"contact", "square neck", "binds when wet", "holes drift", "wood left", "end distance", "edge distance", "bolt spacing", "hole size",
	"near miss", "loosens when dry",
}

func rank(check string) int {
	if i := slices.Index(checks, check); i >= 0 {
		return i
	}
	return len(checks)
}

// share is how far what was measured lies beyond its limit, against the limit.
func share(r vehicle.Remark) float64 {
	if r.Limit.Of != r.Measured.Of || r.Limit.Value == 0 {
		return 0
	}
	k := r.Measured.Value / r.Limit.Value
	if k < 1 && k > 0 {
		return 1 / k
	}
	return k
}

// gather keeps of remarks that are alike the one that is farthest off.
func gather(rs []vehicle.Remark) []vehicle.Remark {
	at := map[string]int{}
	var out []vehicle.Remark
	for _, r := range rs {
		key := r.Check + "|" + r.Gravity.String() + "|" + family(r.Subject)
		i, ok := at[key]
		if !ok {
			at[key] = len(out)
			r.Number = 1
			out = append(out, r)
			continue
		}
		was := out[i]
		first, second := was, r
		if share(r) > share(was) {
			first, second = r, was
		}
		first.Number = was.Number + 1
		first.Alike = append(slices.Clone(was.Alike), second.Subject)
		first.Parts, first.Things = merged(was.Parts, r.Parts), merged(was.Things, r.Things)
		out[i] = first
	}
	return out
}

func merged(a, b []string) []string {
	out := slices.Clone(a)
	for _, s := range b {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// family is a subject without hands and numbers in a row.
func family(s string) string {
	var out []string
	for _, w := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == ',' }) {
		w, _, _ = strings.Cut(w, ".")
		if w == "near" || w == "off" {
			continue
		}
		out = append(out, w)
	}
	if n := len(out); n > 1 && !strings.Contains(s, "fastening") && strings.Trim(out[n-1], "0123456789") == "" {
		out = out[:n-1]
	}
	return strings.Join(out, " ")
}
