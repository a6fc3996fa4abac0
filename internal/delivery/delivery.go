// Package delivery makes everything a vehicle needs and lays it out in folders
// by who gets it: cnc (meshes), joiner (patterns and the list of cuts), yard
// (what to buy) and record (sizes, findings, the survey itself).
//
// A delivery is whole or absent: it is made beside its place and moved there
// when complete, so that a failed run leaves the last good one as it was.
package delivery

import (
	"bytes"
	"context"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"

	"lostwood/internal/cutlist"
	"lostwood/internal/fit"
	"lostwood/internal/listing"
	"lostwood/internal/load"
	"lostwood/internal/mesh"
	"lostwood/internal/movement"
	"lostwood/internal/order"
	"lostwood/internal/page"
	"lostwood/internal/pattern"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// An Order is what to make, of which vehicle.
type Order struct {
	Vehicle   *vehicle.Vehicle
	Survey    []byte // its bytes, for the record
	Woods     timber.Catalogue
	Settings  cutlist.Settings // of the cutting list; the usual allowances where none is set
	Paper     pattern.Paper
	Tolerance quantity.Length // of meshes
	Reasons   Reasons         // for the page
	Offered   *fit.Report     // how the parts were offered up; nil where they were not
	Loaded    *load.Report    // how it bears its load; nil where nobody looked
	Unfit     Unfit           // what becomes of parts that do not go together
	// Only leaves away what does not begin with one of these paths; empty leaves nothing away.
	Only []string
	// Progress is told of every step done; it may be nil. It is called from one
	// goroutine at a time.
	Progress func(done, of int, what string)
}

// Drawings is the folder of the dimensioned drawings.
const Drawings = "joiner/drawings/"

// wanted leaves away the jobs that are not asked for.
func (o Order) wanted(jobs []job) []job {
	if len(o.Only) == 0 {
		return jobs
	}
	return slices.DeleteFunc(jobs, func(j job) bool {
		return !slices.ContainsFunc(o.Only, func(p string) bool { return strings.HasPrefix(j.path, p) })
	})
}

// A File is one file of a delivery: its path inside it, with slashes, and its bytes.
type File struct {
	Path string
	Data []byte
}

// Make makes every file of a delivery, sorted by path. The same order gives
// the same bytes, however many processors share the work.
func Make(ctx context.Context, o Order) ([]File, error) {
	jobs, err := o.jobs()
	if err != nil {
		return nil, err
	}
	jobs = o.wanted(jobs)
	files := make([]File, len(jobs))
	faults := make([]error, len(jobs))
	next := make(chan int)
	var tell sync.Mutex
	done := 0
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(jobs)) {
		workers.Go(func() {
			for i := range next {
				files[i].Path = jobs[i].path
				files[i].Data, faults[i] = jobs[i].bytes()
				tell.Lock()
				done++
				if o.Progress != nil {
					o.Progress(done, len(jobs), jobs[i].path)
				}
				tell.Unlock()
			}
		})
	}
	for i := range jobs {
		if ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	workers.Wait()
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	for i, err := range faults {
		if err != nil {
			return nil, fmt.Errorf("%s: %w", jobs[i].path, err)
		}
	}
	slices.SortFunc(files, func(a, b File) int { return bytes.Compare([]byte(a.Path), []byte(b.Path)) })
	return files, nil
}

// Paths are those of the files that Make would make, sorted.
func Paths(o Order) ([]string, error) {
	jobs, err := o.jobs()
	if err != nil {
		return nil, err
	}
	var paths []string
	for _, j := range jobs {
		paths = append(paths, j.path)
	}
	slices.Sort(paths)
	return paths, nil
}

// A job makes one file.
type job struct {
	path string
	make func(*bytes.Buffer) error
}

func (j job) bytes() ([]byte, error) {
	var b bytes.Buffer
	if err := j.make(&b); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// jobs lists every file, the slow ones first.
func (o Order) jobs() ([]job, error) {
	v := o.Vehicle
	settings := o.Settings
	if settings.Allowances == (cutlist.Allowances{}) {
		settings.Allowances = cutlist.Usual()
	}
	list, err := cutlist.MakeWith(v, o.Woods, settings)
	if err != nil {
		return nil, err
	}
	var jobs []job
	for _, it := range o.sent() {
		jobs = append(jobs, job{"cnc/" + v.Stem(it) + ".stl", func(b *bytes.Buffer) error { return o.stl(b, it) }})
	}
	moves, err := movement.Of(v, o.Woods)
	if err != nil {
		return nil, err
	}
	for _, it := range o.sent() {
		noted := *it // what the seasons ask of a part stands on its sheet, and first of all why it does not fit
		noted.Notes = append(append(notFitting(it), it.Notes...), moves.Notes(it)...)
		jobs = append(jobs, job{"joiner/patterns/" + v.Stem(it) + ".pdf", func(b *bytes.Buffer) error { return pattern.Write(b, v, &noted, o.Paper) }})
		if pattern.HasRim(it) {
			jobs = append(jobs, job{"joiner/patterns/" + v.Stem(it) + "_rim.pdf", func(b *bytes.Buffer) error { return pattern.WriteRim(b, v, &noted, o.Paper) }})
		}
	}
	sheets, err := o.drawings(list)
	if err != nil {
		return nil, err
	}
	jobs = append(jobs, sheets...)
	var heed []string
	for _, f := range moves.Findings {
		heed = append(heed, f.Says)
	}
	found := *v
	found.Findings = append(slices.Clone(v.Findings), moves.Findings...)
	stem := v.Slug + "_issue-" + v.IssueWord()
	jobs = append(
		jobs,
		job{"joiner/" + stem + "_cutting-list.pdf", func(b *bytes.Buffer) error { return order.WriteCutting(b, list, heed) }},
		job{"yard/" + stem + "_sawmill-order.pdf", func(b *bytes.Buffer) error { return order.WriteOrder(b, list) }},
		job{"record/" + stem + "_movement.txt", func(b *bytes.Buffer) error {
			return writeAll(b, moves.PartsList(), moves.SpacingsList(), moves.GapsList(), moves.GripsList())
		}},
	)
	jobs = append(jobs, o.smithing(stem)...)
	jobs = append(jobs, o.recording(stem)...)
	jobs = append(jobs, o.offering(stem)...)
	jobs = append(jobs, lists("joiner/"+stem+"_cutting-list", list.Cutting())...)
	jobs = append(jobs, lists("yard/"+stem+"_timber-to-buy", list.Totals())...)
	jobs = append(jobs, lists("record/"+stem+"_sizes", listing.Sizes(v))...)
	jobs = append(
		jobs,
		text("record/"+stem+"_findings.txt", listing.Closing(&found)),
		text("record/"+stem+"_survey.toml", string(o.Survey)),
		job{"record/record.html", func(b *bytes.Buffer) error { return page.Write(b, o.page(list, moves.Findings)) }},
		text("README.txt", readme(v)+o.unfit()),
	)
	return jobs, nil
}

func text(path, s string) job {
	return job{path, func(b *bytes.Buffer) error {
		b.WriteString(s)
		return nil
	}}
}

// writeAll writes several lists one below the other.
func writeAll(b *bytes.Buffer, all ...*listing.List) error {
	for i, l := range all {
		if i > 0 {
			b.WriteString("\n\n")
		}
		if err := l.Write(b, listing.Table); err != nil {
			return err
		}
	}
	return nil
}

// lists writes one list for people and for programs.
func lists(stem string, l *listing.List) []job {
	return []job{
		{stem + ".txt", func(b *bytes.Buffer) error { return l.Write(b, listing.Table) }},
		{stem + ".csv", func(b *bytes.Buffer) error { return l.Write(b, listing.CSV) }},
	}
}

// stl meshes one item.
func (o Order) stl(b *bytes.Buffer, it *vehicle.Item) error {
	m, err := Mesh(it, o.Tolerance)
	if err != nil {
		return err
	}
	return WriteMesh(b, o.Vehicle, it, m)
}

// Mesh is the skin of an item, none of it farther from the true surface than
// the tolerance.
func Mesh(it *vehicle.Item, tolerance quantity.Length) (*mesh.Mesh, error) {
	s, err := solid.New(it.Stick.Volume())
	if err != nil {
		return nil, err
	}
	return mesh.Of(s, tolerance)
}

// WriteMesh writes an item's skin as STL, reads it back, and lets it go only
// when it is fit to cut from.
func WriteMesh(b *bytes.Buffer, v *vehicle.Vehicle, it *vehicle.Item, m *mesh.Mesh) error {
	if err := mesh.WriteSTL(b, m, mesh.Header{Name: Title(it), Unit: "mm", Issue: v.Issue}); err != nil {
		return err
	}
	back, err := mesh.ReadSTL(bytes.NewReader(b.Bytes()))
	if err != nil {
		return err
	}
	r := mesh.Inspect(back)
	return r.Err()
}

// Title names an item for its maker: number, name, hand, number off.
func Title(it *vehicle.Item) string {
	name := fmt.Sprintf("%02d %s", it.Number, it.Name)
	if it.Hand != vehicle.Alike {
		name += " " + strings.ToUpper(it.Hand.String())
	}
	if len(it.Fails) > 0 {
		name = strings.ToUpper(vehicle.NotFitting) + ": " + name
	}
	return fmt.Sprintf("%s, %d off", name, it.NumberOff)
}
