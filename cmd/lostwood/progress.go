package main

import (
	"io"
	"os"

	"github.com/vbauerster/mpb/v8"
	"github.com/vbauerster/mpb/v8/decor"
	"golang.org/x/term"
)

// A progress shows how far a run has come, on a terminal only.
type progress struct {
	shown *mpb.Progress
	bar   *mpb.Bar
}

func newProgress(w io.Writer) *progress {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return &progress{}
	}
	return &progress{shown: mpb.New(mpb.WithOutput(w), mpb.WithWidth(40))}
}

// step is told of every file made.
func (p *progress) step(done, of int, _ string) {
	if p.shown == nil {
		return
	}
	if p.bar == nil {
		p.bar = p.shown.AddBar(int64(of), mpb.PrependDecorators(decor.Name("making ")),
			mpb.AppendDecorators(decor.CountersNoUnit("%d of %d")), mpb.BarRemoveOnComplete())
	}
	p.bar.SetCurrent(int64(done))
}

// end leaves the terminal as it was, also where the run stopped half way.
func (p *progress) end() {
	if p.bar != nil {
		p.bar.Abort(true)
		p.shown.Wait()
	}
}
