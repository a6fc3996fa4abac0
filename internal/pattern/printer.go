package pattern

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Printer tells how far a printer is out: what the 100 mm bars measured on
// paper that it printed, across the paper (its short side, or a roll's width) and
// along it. Sheets are drawn so much larger or smaller that on that printer they
// come out true. The zero Printer prints true.
type Printer struct{ Across, Along Length }

// barLong is what the bars measure on paper that is true.
const barLong = 100 * quantity.Millimetre

// mostOut is how far a bar may be out to be put right: paper that is further out
// was fitted to the page, which no two sheets need be alike in.
const mostOut = 3 * quantity.Millimetre

// A PrinterError tells of bars that no printer in order prints.
type PrinterError struct {
	Written string
	Why     string
}

func (e *PrinterError) Error() string {
	return fmt.Sprintf("measured bar %s: %s", quantity.Quote(e.Written), e.Why)
}

// ParsePrinter reads what the bars measured as a person writes it, across by
// along: "99.4x99.8", "99.4 x 99.8 mm".
func ParsePrinter(written string) (Printer, error) {
	fail := func(why string) (Printer, error) { return Printer{}, &PrinterError{written, why} }
	const want = "write what the 100 mm bars measured in millimetres, across the paper by along it, such as 99.4x99.8"
	word := strings.NewReplacer("×", "x", "X", "x", "by", "x").Replace(strings.TrimSpace(written))
	across, along, ok := strings.Cut(word, "x")
	if !ok {
		return fail(want)
	}
	a, errA := quantity.ParseLength(strings.TrimSpace(across), quantity.Millimetres)
	b, errB := quantity.ParseLength(strings.TrimSpace(along), quantity.Millimetres)
	if errA != nil || errB != nil {
		return fail(want)
	}
	p := Printer{a, b}
	if why := p.fault(); why != "" {
		return fail(why)
	}
	return p, nil
}

func (p Printer) check() error {
	if why := p.fault(); why != "" {
		return &PrinterError{p.words(), why}
	}
	return nil
}

// fault says why bars so long cannot be put right; it is empty where they can.
func (p Printer) fault() string {
	for _, l := range []Length{p.Across, p.Along} {
		if p.true() || math.Abs(float64(l-barLong)) <= float64(mostOut) {
			continue
		}
		return fmt.Sprintf(
			"a 100 mm bar that measures %.4g mm was not printed at full size; set the printer to 100 %%, not to fit the page, and measure again. Only bars from %g to %g mm can be put right",
			l.Millimetres(), (barLong - mostOut).Millimetres(), (barLong + mostOut).Millimetres(),
		)
	}
	return ""
}

func (p Printer) true() bool { return p == Printer{} }

func (p Printer) words() string {
	return fmt.Sprintf("%.5g x %.5g mm", p.Across.Millimetres(), p.Along.Millimetres())
}

// growth is how much larger than true a sheet is drawn along its own x and y.
func (p Printer) growth(way turn) form.Point {
	if p.true() {
		return form.Point{X: 1, Y: 1}
	}
	across, along := barLong/p.Across, barLong/p.Along
	if way == tall {
		return form.Point{X: across, Y: along}
	}
	return form.Point{X: along, Y: across}
}
