package survey

import (
	"errors"
	"strings"
	"testing"
	"time"
	"unicode/utf8"
)

// Whatever the file, reading it ends soon, without panic, with a survey or with
// faults that stand in the file and say what was found and what would do.
func FuzzRead(f *testing.F) {
	f.Add([]byte(example))
	f.Add([]byte(front + things))
	for _, s := range []string{
		"[[fastening]]\nbolt = \"1/2\"\ndown = [\"sill\", \"let 3/4 into sill\", \"sill-plate#1,2\"]\ngrip = [[\"7\", \"-\"]]\n",
		"[evidence]\nguess = [\"sill.long = 1/2 plate#1.x - \\u0031 3/4 ± 1/8\", '''a.b = 3''']\n",
		"[[joint]]\ntenon = \"cross-bar\"\ninto = \"sill\"\nend = \"both\"\nlong = 1\nwide = 1\nthick = 1\n",
		"[wood]\nclimate = [[2, 80], [5, 75]]\n[doubts]\nrule = \"1/32 in\"\n",
		"[make]\nplaning = \"1/8\"\nwaste = { bend = 40 }\n[yard]\nthickness = [[\"2\", \"1 3/4\"]]\nsap = \"refused\"\n[[price]]\namount = 9.8\nper = \"m3\"\n",
		"[[timber]]\nname = \"field elm\"\nsource = \"tests\"\nradial = 4.9\ntangential = 7.8\nshrinks-to = 12\n[[splinter]]\npart = \"sill\"\nlook = \"pale\"\n",
		"[iron.a.b]\nc.d = { e = [1, [2, {f = 3}]] }\n",
	} {
		f.Add([]byte(front + things + s))
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		start := time.Now()
		s, err := read("wagon.toml", data, fakeKinds())
		if took := time.Since(start); took > 3*time.Second {
			t.Fatalf("took %v for %d bytes", took, len(data))
		}
		if (s == nil) == (err == nil) {
			t.Fatalf("neither or both of a survey and faults: %v", err)
		}
		if err == nil {
			s.Index()
			return
		}
		var faults *Faults
		if !errors.As(err, &faults) || len(faults.List) == 0 {
			t.Fatalf("no faults: %v", err)
		}
		lines := strings.Count(string(data), "\n") + 1
		for _, x := range faults.List {
			if x.Found == "" || x.Want == "" || x.At.Line < 1 || x.At.Line > lines || x.At.Column < 1 || x.At.Column > len(data)+1 {
				t.Fatalf("a fault that does not say enough: %+v", x)
			}
		}
		if !utf8.ValidString(err.Error()) || strings.ContainsAny(err.Error(), "\x00\x1b\r") {
			t.Fatalf("a message that cannot be printed: %q", err)
		}
		if _, again := read("wagon.toml", data, fakeKinds()); again.Error() != err.Error() {
			t.Fatalf("two messages for one file:\n%v\n%v", err, again)
		}
	})
}
