package survey

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"lostwood/internal/quantity"
	"lostwood/parts"
)

// A reader fills a Survey from the tree of a file and gathers the faults.
type reader struct {
	src           *source
	kinds         []parts.Kind
	s             *Survey
	list          []Fault
	broken        bool // lines are missing: what they would have said is not a fault
	unsure        bool // no unit: sizes cannot be judged
	near          int  // how many words were compared with the known ones
	peers         peers
	things        Index
	bolts         map[string]*Bolt
	jointDrafts   []jointDraft
	moveDrafts    []moveDraft
	boltIDs       []string // in the order of the file
	instruments   map[string]*Instrument
	instrumentIDs []string // in the order of the file
	middle        bool     // the iron at hand has its holes read from its middle
	made          bool     // the iron at hand is missing: its sizes are what it is to be
	ids           []string // of the irons and parts, once one was looked for in vain
}

// Read reads a survey; name is the file's, for messages. Either the survey is
// whole and without fault, or it is nil and the error a *[Faults] that tells
// every fault at once.
func Read(name string, data []byte) (*Survey, error) {
	return read(name, data, parts.Kinds())
}

// ReadFile reads the survey in a file. Besides [Faults] it returns an error
// where the file cannot be opened or read.
func ReadFile(name string) (*Survey, error) {
	data, err := Bytes(name)
	if err != nil {
		return nil, err
	}
	return Read(name, data)
}

// Bytes reads a file that is to be a survey; one that is too large for any
// survey is refused with *[Faults] and not read.
func Bytes(name string) ([]byte, error) {
	f, err := os.Open(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%s: there is no such file; check its name and its folder: %w", name, err)
	case err != nil:
		return nil, fmt.Errorf("%s: the file cannot be opened: %w", name, err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, largest+1))
	if err != nil {
		return nil, fmt.Errorf("%s: the file cannot be read: %w", name, err)
	}
	if info, err := f.Stat(); err == nil && info.Size() > largest {
		return nil, tooLarge(name, info.Size())
	}
	return data, nil
}

func read(name string, data []byte, kinds []parts.Kind) (*Survey, error) {
	if len(data) > largest {
		return nil, tooLarge(name, int64(len(data)))
	}
	sum := sha256.Sum256(data)
	r := &reader{src: newSource(data), kinds: kinds, s: &Survey{File: name, Hash: hex.EncodeToString(sum[:])}}
	if bad := r.src.unfit(); bad != nil {
		r.take(bad)
		return nil, &Faults{File: name, List: sorted(r.list)}
	}
	root, slips, bad := plant(r.src)
	r.take(bad)
	for _, s := range slips {
		r.list = append(r.list, Fault{r.src.position(s.at), s.found.found, s.want, shownLine(r.src.lineText(s.line))})
	}
	r.broken = len(slips) > 0
	r.survey(root)
	if !r.broken {
		r.check()
	}
	if len(r.list) > 0 {
		return nil, &Faults{File: name, List: sorted(r.list)}
	}
	return r.s, nil
}

func (r *reader) take(faults []found) {
	for _, f := range faults {
		r.fault(f.at, f.found, f.want)
	}
}

// fault notes what is wrong at an offset of the file.
func (r *reader) fault(at int, what, want string) {
	r.list = append(r.list, Fault{At: r.src.position(at), Found: what, Want: want})
}

// faultAt notes what is wrong with something already read.
func (r *reader) faultAt(at Position, what, want string) {
	r.list = append(r.list, Fault{At: at, Found: what, Want: want})
}

// missing notes what should stand in the file, unless lines of it cannot be
// made out and may have said so.
func (r *reader) missing(at int, what, want string) {
	if !r.broken {
		r.fault(at, what, want)
	}
}

// meant says which known word would do. Only so many are looked up in one file.
func (r *reader) meant(word string, known []string, verb string) string {
	const most = 200
	if r.near++; r.near > most {
		return ""
	}
	return meant(word, known, verb)
}

func (r *reader) unit() quantity.Unit { return r.s.Unit }

func (r *reader) at(n *node) Position { return r.src.position(n.at) }

func (r *reader) show(l quantity.Length) string { return quantity.Format(l, r.s.Unit) }

func tooLarge(name string, size int64) *Faults {
	return &Faults{File: name, List: []Fault{{
		At:    Position{1, 1},
		Found: fmt.Sprintf("a file of %.1f MB", float64(size)/1e6),
		Want:  "a survey is a few pages of text, 1 MB at most; see whether this is the right file",
	}}}
}
