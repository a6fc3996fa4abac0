package survey

import (
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"
)

// mostBroken is how many lines that cannot be made out are told.
const mostBroken = 200

// A slip is a line that cannot be made out as TOML.
type slip struct {
	found
	line int // from 0
}

// plant makes out the lines of a file. Where one cannot be made out it goes on
// at the next, so that all are told at once.
func plant(src *source) (root *node, slips []slip, faults []found) {
	p := &planter{src: src, root: newGroup(0), parser: &unstable.Parser{}}
	p.here = p.root
	for {
		from := p.base
		p.parser.Reset(src.data[p.base:])
		for p.parser.NextExpression() {
			e := p.parser.Expression()
			from = p.base + lastByte(e)
			p.expression(e)
		}
		var err *unstable.ParserError
		if !errors.As(p.parser.Error(), &err) {
			return p.root, slips, p.faults
		}
		at := p.base + int(p.parser.Range(err.Highlight).Offset)
		first := p.firstOf(from, at)
		slips = append(slips, p.slip(err.Message, first, at))
		if src.rune(first) == '[' { // what follows belongs to a heading nobody can read
			p.here = newGroup(first)
		}
		next := p.resume(first, at)
		if has(err.Message, "not terminated by") { // the rest of the file is inside its quotes
			next = len(src.data)
		}
		if next >= len(src.data) || len(slips) == mostBroken {
			return p.root, slips, p.faults
		}
		p.base = next
	}
}

// lastByte is a place, in the parser's text, on the last line of what was made out.
func lastByte(e *unstable.Node) int {
	if e.Kind == unstable.KeyValue {
		return int(e.Raw.Offset + e.Raw.Length)
	}
	at := 0
	for it := e.Key(); it.Next(); {
		at = int(it.Node().Raw.Offset + it.Node().Raw.Length)
	}
	return at
}

// resume returns where to go on after what began at first broke at at: on that
// line if it began before it, else on the next.
func (p *planter) resume(first, at int) int {
	l := p.src.line(at)
	if start := p.src.starts[l]; start > first {
		return start
	}
	if l+1 < len(p.src.starts) {
		return p.src.starts[l+1]
	}
	return len(p.src.data)
}

// firstOf returns where the broken line that follows from begins.
func (p *planter) firstOf(from, at int) int {
	d := p.src.data
	if from > p.base { // the rest of the line that was made out
		for from < at && d[from] != '\n' {
			from++
		}
	}
	from = p.skip(from, between)
	return min(from, at)
}
