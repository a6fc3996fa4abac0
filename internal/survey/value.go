package survey

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// shapeOf is our name for what was made out.
func shapeOf(k unstable.Kind) shape {
	switch k {
	case unstable.Bool:
		return yesNoShape
	case unstable.Float:
		return decimalShape
	case unstable.Integer:
		return wholeShape
	case unstable.LocalDate:
		return dateShape
	case unstable.LocalTime, unstable.LocalDateTime, unstable.DateTime:
		return timeShape
	}
	return textShape
}

// value takes one value that begins at offset at, and returns where it ends.
func (p *planter) value(v *unstable.Node, at, depth int) (*node, int) {
	switch v.Kind {
	case unstable.Array:
		return p.list(v, at, depth)
	case unstable.InlineTable:
		return p.group(v, at, depth)
	}
	start := p.base + int(v.Raw.Offset)
	end := start + int(v.Raw.Length)
	return &node{shape: shapeOf(v.Kind), at: start, raw: p.src.data[start:end], text: string(v.Data)}, end
}

func (p *planter) list(v *unstable.Node, at, depth int) (*node, int) {
	n := &node{shape: listShape, at: at}
	at++
	for it := v.Children(); it.Next(); {
		at = p.skip(at, between)
		if depth == deepest {
			p.fault(at, "brackets within brackets without end", "write one list, or a list of lists at most")
			return n, at
		}
		item, end := p.value(it.Node(), at, depth+1)
		n.items = append(n.items, item)
		at = end
	}
	return n, p.skip(at, between) + 1
}

func (p *planter) group(v *unstable.Node, at, depth int) (*node, int) {
	n := newGroup(at)
	n.at = at
	at++
	for it := v.Children(); it.Next(); {
		if depth == deepest {
			p.fault(p.skip(at, between), "braces within braces without end", "write it as in the reference")
			return n, at
		}
		path := p.pathOf(it.Node().Key())
		if path == nil {
			return n, at
		}
		at = p.keyValue(n, path, it.Node().Value(), depth+1)
	}
	n.close()
	return n, p.skip(at, between) + 1
}

// close keeps later lines from adding to a group between braces.
func (n *node) close() {
	n.closed = true
	for _, l := range n.lines {
		if l.value.shape == groupShape && !l.value.closed {
			l.value.close()
		}
	}
}

// place returns where character i (in bytes) of a text stands in the file.
func (n *node) place(i int) int {
	raw := string(n.raw)
	if n.shape != textShape || len(raw) < 2 {
		return n.at + i
	}
	open := 1
	if strings.HasPrefix(raw, `"""`) || strings.HasPrefix(raw, "'''") {
		open = 3
		if strings.HasPrefix(raw[open:], "\r\n") {
			open++
		}
		if strings.ContainsAny(raw[open:min(open+1, len(raw))], "\n") {
			open++
		}
	}
	if raw[0] == '\'' || len(raw) == len(n.wholeText())+2*min(open, 3) {
		return n.at + open + i
	}
	return n.at + escaped(raw, open, i)
}

// escaped walks text with escapes from byte at of raw, to where i bytes have been said.
func escaped(raw string, at, i int) int {
	for said := 0; at < len(raw) && said < i; {
		if raw[at] != '\\' || at+1 >= len(raw) {
			at++
			said++
			continue
		}
		switch c := raw[at+1]; {
		case strings.IndexByte("xuU", c) >= 0:
			digits := map[byte]int{'x': 2, 'u': 4, 'U': 8}[c]
			hex := raw[at+2 : min(at+2+digits, len(raw))]
			at += 2 + digits
			said += len(string(hexRune(hex)))
		case strings.IndexByte(" \t\r\n", c) >= 0:
			rest := strings.TrimLeft(raw[at+1:], " \t\r\n")
			at = len(raw) - len(rest)
		default:
			at += 2
			said++
		}
	}
	return min(at, len(raw)-1)
}

func hexRune(hex string) rune {
	var r rune
	for _, c := range strings.ToLower(hex) {
		r = r<<4 | rune(strings.IndexRune("0123456789abcdef", c))
	}
	return r
}
