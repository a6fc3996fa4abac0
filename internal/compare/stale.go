package compare

import (
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/vehicle"
)

// A Stale file is one of the old issue that no longer holds.
type Stale struct {
	Path   string
	Holder string
	Why    string
}

// holders says who has what is in a delivery's folders.
var holders = map[string]string{
	"cnc":    "the CNC shop",
	"joiner": "the joiner",
	"yard":   "the timber yard",
	"smith":  "the smith",
	"record": "the record",
}

// Stale lists those of the old issue's files, given by their paths, that no
// longer hold. A file of one part is stale when the part is; a list of many when
// any part is.
func (c *Comparison) Stale(paths []string) []Stale {
	why := map[*vehicle.Item]string{}
	for _, it := range c.Old.Items {
		why[it] = c.itemStale(it)
	}
	var out []Stale
	for _, path := range paths {
		reason, ofOne := c.ofItem(path, why)
		if !ofOne && len(c.Moved) > 0 {
			reason = "it lists parts that are otherwise now"
		}
		if !ofOne && strings.HasSuffix(path, "_survey.toml") {
			reason = "the survey is another"
		}
		if reason == "" || c.Old.Hash == c.New.Hash {
			continue
		}
		out = append(out, Stale{Path: path, Holder: holder(path), Why: reason})
	}
	return out
}

func holder(path string) string {
	folder, _, deep := strings.Cut(path, "/")
	if who := holders[folder]; deep && who != "" {
		return who
	}
	return "whoever has the whole folder"
}

// ofItem says why a file of one item is stale, and whether it is of one at all.
func (c *Comparison) ofItem(path string, why map[*vehicle.Item]string) (reason string, ofOne bool) {
	for _, it := range c.Old.Items {
		if strings.Contains(path, c.Old.Stem(it)) {
			return why[it], true
		}
	}
	return "", false
}

// itemStale says why what was made for an item no longer holds; empty where it does.
func (c *Comparison) itemStale(it *vehicle.Item) string {
	var changed []string
	for _, ch := range c.Moved {
		if slices.Contains(ids(it), ch.Part) && !slices.Contains(changed, ch.What) {
			changed = append(changed, ch.What)
		}
	}
	if len(changed) > 0 {
		return "otherwise: " + few(changed)
	}
	i := slices.IndexFunc(c.New.Items, func(n *vehicle.Item) bool { return slices.Equal(ids(n), ids(it)) })
	switch {
	case i < 0:
		return "it is no longer made alike with the same others"
	case c.New.Items[i].NumberOff != it.NumberOff:
		return fmt.Sprintf("%d off were asked for, now %d", it.NumberOff, c.New.Items[i].NumberOff)
	case c.New.Items[i].Number != it.Number:
		return fmt.Sprintf("it was number %d and is number %d now", it.Number, c.New.Items[i].Number)
	}
	return ""
}

// ids are the parts that an item makes, in their order.
func ids(it *vehicle.Item) []string {
	var out []string
	for _, p := range it.Parts {
		out = append(out, p.ID)
	}
	return out
}

// few names the first of many.
func few(all []string) string {
	if len(all) > 3 {
		return strings.Join(all[:3], "; ") + fmt.Sprintf("; and %d more", len(all)-3)
	}
	return strings.Join(all, "; ")
}
