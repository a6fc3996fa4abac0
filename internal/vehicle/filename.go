package vehicle

import (
	"fmt"
	"strings"

	"lostwood/parts"
)

// Slug makes a name fit for a file: lower-case letters, digits and hyphens.
func Slug(s string) string {
	var b strings.Builder
	gap := false
	for _, r := range strings.ToLower(s) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			if gap && b.Len() > 0 {
				b.WriteByte('-')
			}
			gap = false
			b.WriteRune(r)
		default:
			gap = true
		}
	}
	return b.String()
}

// NotFitting is what stands on everything made of an item that cannot go together
// as it stands.
const NotFitting = "does not fit"

// Stem is the start of every file name about an item: number, name, timber,
// thickness with its unit, number off, hand and issue.
func (v *Vehicle) Stem(i *Item) string {
	hand := ""
	if i.Hand != Alike {
		hand = "_" + strings.ToUpper(i.Hand.String())
	}
	stem := fmt.Sprintf("%02d_%s_%s_%.1fmm_%d-off%s_issue-%s", i.Number, Slug(i.Name), Slug(i.Timber),
		i.Thickness().Millimetres(), i.NumberOff, hand, v.IssueWord())
	if len(i.Fails) > 0 {
		stem += "_" + strings.ToUpper(Slug(NotFitting))
	}
	return stem
}

// Thickness is the lesser of an item's two extents across the grain.
func (i *Item) Thickness() parts.Length {
	_, wide, deep := i.Stick.Body.Box()
	return min(wide, deep)
}

// IssueWord is the issue letter as file names have it.
func (v *Vehicle) IssueWord() string { return strings.ToUpper(Slug(v.Issue)) }
