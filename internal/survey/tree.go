package survey

import (
	"github.com/pelletier/go-toml/v2/unstable"
)

// A shape is what a value in the file looks like.
type shape int

// The shapes.
const (
	textShape shape = iota
	wholeShape
	decimalShape
	yesNoShape
	dateShape
	timeShape
	listShape
	groupShape // a heading's lines, or what stands between braces
)

// words names a shape to whoever wrote the file.
func (s shape) words() string {
	return [...]string{
		"text", "a number", "a number with a point", "true or false", "a date", "a time of day",
		"a list between [ ]", "a group between { }",
	}[s]
}

// A node is a value in the file and where it stands.
type node struct {
	shape shape
	at    int    // offset of its first character; of a heading's lines, the heading's
	raw   []byte // as written, of text, numbers and dates
	text  string // without quotes
	whole string // of a text of which only the beginning is looked at: all of it
	items []*node
	lines []*line
	named map[string]*line
	// closed is set for a group between braces, which nothing can be added to.
	closed bool
	headed bool // has a heading of its own
	rows   bool // a list made by headings in double brackets
}

// A line is a name and its value.
type line struct {
	name  string
	at    int // of the name
	value *node
}

func (n *node) wholeText() string {
	if n.whole != "" {
		return n.whole
	}
	return n.text
}

func newGroup(at int) *node { return &node{shape: groupShape, at: at, named: map[string]*line{}} }

// get returns the value of that name, or nil.
func (n *node) get(name string) *node {
	if l := n.named[name]; l != nil {
		return l.value
	}
	return nil
}

func (n *node) add(name string, at int, v *node) {
	l := &line{name: name, at: at, value: v}
	n.lines = append(n.lines, l)
	n.named[name] = l
}

// deepest bounds brackets within brackets and dots in a name.
const deepest = 12

// A planter grows the tree of a file from the lines as they are made out.
type planter struct {
	src    *source
	parser *unstable.Parser
	base   int // where the parser's text begins in the source
	root   *node
	here   *node // the group that lines go into
	faults []found
}

func (p *planter) fault(at int, what, want string) {
	p.faults = append(p.faults, found{at, what, want})
}

// keyAt returns a name and its place.
func (p *planter) keyAt(k *unstable.Node) (string, int) {
	return string(k.Data), p.base + int(k.Raw.Offset)
}

// expression takes one line or heading that was made out.
func (p *planter) expression(e *unstable.Node) {
	path := p.pathOf(e.Key())
	if path == nil {
		return
	}
	switch e.Kind {
	case unstable.Table:
		p.heading(path)
	case unstable.ArrayTable:
		p.rowHeading(path)
	case unstable.KeyValue:
		p.keyValue(p.here, path, e.Value(), 1)
	}
}

// heading takes [a] or [a.b].
func (p *planter) heading(path []*unstable.Node) {
	if len(path) == 1 && isRepeated(string(path[0].Data)) {
		name, at := p.keyAt(path[0])
		p.fault(at, "["+name+"] with one bracket on each side", "write [["+name+"]], once for each "+name)
		p.rowHeading(path)
		return
	}
	in := p.descend(p.root, path[:len(path)-1])
	name, at := p.keyAt(path[len(path)-1])
	if in == nil {
		p.here = newGroup(at)
		return
	}
	l := in.named[name]
	switch {
	case l == nil:
		p.here = newGroup(at)
		p.here.headed = true
		in.add(name, at, p.here)
	case l.value.shape == groupShape && !l.value.headed && !l.value.closed:
		l.value.headed = true
		p.here = l.value
	case l.value.shape == groupShape && !l.value.closed:
		p.twice(name, at, l.at, "put what stands under both together, under one heading")
		p.here = l.value
	default:
		p.twice(name, at, l.at, "rename one of them, or take one away")
		p.here = newGroup(at)
	}
}

// rowHeading takes [[a]].
func (p *planter) rowHeading(path []*unstable.Node) {
	in := p.descend(p.root, path[:len(path)-1])
	name, at := p.keyAt(path[len(path)-1])
	p.here = newGroup(at)
	p.here.headed = true
	if in == nil {
		return
	}
	l := in.named[name]
	switch {
	case l == nil:
		in.add(name, at, &node{shape: listShape, at: at, rows: true, items: []*node{p.here}})
	case l.value.rows:
		l.value.items = append(l.value.items, p.here)
	default:
		p.twice(name, at, l.at, "write every one with the same brackets")
	}
}

func (p *planter) twice(name string, at, first int, want string) {
	p.fault(at, quote(name)+" stands twice, first on "+p.src.position(first).words(), want)
}

// descend follows names down to a group, making what is not there yet.
func (p *planter) descend(in *node, path []*unstable.Node) *node {
	for _, k := range path {
		name, at := p.keyAt(k)
		l := in.named[name]
		if l == nil {
			g := newGroup(at)
			in.add(name, at, g)
			in = g
			continue
		}
		v := l.value
		if v.rows {
			v = v.items[len(v.items)-1]
		}
		if v.shape != groupShape || v.closed {
			p.twice(name, at, l.at, "write all of it in one place")
			return nil
		}
		in = v
	}
	return in
}

// keyValue puts a line into a group and returns where its value ends.
func (p *planter) keyValue(in *node, path []*unstable.Node, value *unstable.Node, depth int) int {
	last := path[len(path)-1]
	name, at := p.keyAt(last)
	v, end := p.value(value, p.afterKey(last), depth)
	if in = p.descend(in, path[:len(path)-1]); in == nil {
		return end
	}
	if l := in.named[name]; l != nil {
		p.twice(name, at, l.at, "rename one of them, or take one away")
		return end
	}
	in.add(name, at, v)
	return end
}

// pathOf returns the names of a line or heading; none where they go on without end.
func (p *planter) pathOf(names unstable.Iterator) []*unstable.Node {
	var path []*unstable.Node
	for names.Next() {
		path = append(path, names.Node())
	}
	if len(path) <= deepest {
		return path
	}
	_, at := p.keyAt(path[0])
	p.fault(at, "a name with dots without end", "write it as in the reference, with one dot at most")
	return nil
}

// afterKey is the place of the value that follows a name.
func (p *planter) afterKey(k *unstable.Node) int {
	return p.skip(p.base+int(k.Raw.Offset+k.Raw.Length), " \t=")
}

// skip passes over any of the characters of set, and remarks where set has a line end.
func (p *planter) skip(at int, set string) int {
	d := p.src.data
	for at < len(d) {
		switch {
		case d[at] == '#' && set == between:
			for at < len(d) && d[at] != '\n' {
				at++
			}
		case containsByte(set, d[at]):
			at++
		default:
			return at
		}
	}
	return at
}

// between is what may stand between the values of a list or group.
const between = " \t\r\n,"

func containsByte(set string, c byte) bool {
	for i := range len(set) {
		if set[i] == c {
			return true
		}
	}
	return false
}
