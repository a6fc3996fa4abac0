package mesh

import (
	"bufio"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode"

	"lostwood/parts/form"
)

// A Header is what a mesh file says of itself.
type Header struct {
	Name  string // part, hand and number off, as the maker should read it
	Unit  string // "mm": the coordinates are millimetres
	Issue string
}

// An STL file is a header of 80 bytes, a count, and 50 bytes a triangle:
// twelve little-endian float32 and two spare bytes.
const (
	stlHeader   = 80
	stlTriangle = 50
)

// A HeaderError tells why a file cannot carry what its header should say.
type HeaderError struct{ Found, Want string }

func (e *HeaderError) Error() string { return e.Found + "; " + e.Want }

// A CollapseError tells of triangles that vanish when rounded to the seven
// digits an STL file holds.
type CollapseError struct {
	Triangle int // counted from 1
	At       form.Vec
}

func (e *CollapseError) Error() string {
	return fmt.Sprintf("triangle %d at %s is too small for the seven digits of an STL file; mesh the part with a coarser tolerance",
		e.Triangle, words(e.At))
}

// WriteSTL writes m as binary STL. The same mesh and header give the same
// bytes. Nothing is written when the header or a triangle cannot be.
func WriteSTL(w io.Writer, m *Mesh, h Header) error {
	head, err := h.bytes()
	if err != nil {
		return err
	}
	if err := m.writable(); err != nil {
		return err
	}
	out := bufio.NewWriterSize(w, 1<<16)
	out.Write(head[:])
	var rec [stlTriangle]byte
	binary.LittleEndian.PutUint32(rec[:], uint32(len(m.Triangles)))
	out.Write(rec[:4])
	for _, t := range m.Triangles {
		m.record(t, &rec)
		out.Write(rec[:])
	}
	return out.Flush() // bufio keeps the first error till here
}

func (h Header) bytes() (head [stlHeader]byte, err error) {
	if h.Unit != "mm" {
		return head, &HeaderError{fmt.Sprintf("the file's unit is given as %q", h.Unit), "a mesh is in millimetres: say mm"}
	}
	text := fmt.Sprintf("part %s, unit mm, issue %s", h.Name, h.Issue)
	if i := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }); i >= 0 {
		return head, &HeaderError{fmt.Sprintf("the name or issue %q holds a character that does not print", text), "leave it out"}
	}
	if over := len(text) - stlHeader; over > 0 {
		return head, &HeaderError{fmt.Sprintf("%q is %d letters too long for an STL file", text, over), "shorten the part's name"}
	}
	for i := range head {
		head[i] = ' '
	}
	copy(head[:], text)
	return head, nil
}

// writable checks that every triangle is still one in float32.
func (m *Mesh) writable() error {
	if uint64(len(m.Triangles)) > math.MaxUint32 {
		return errors.New("an STL file cannot count so many triangles; mesh the part with a coarser tolerance")
	}
	for i, t := range m.Triangles {
		for _, v := range t {
			if v < 0 || v >= len(m.Vertices) {
				return fmt.Errorf("triangle %d has a corner that is not there", i+1)
			}
		}
		if n := m.rounded(t); !(length(n) > 0) || math.IsInf(length(n), 1) {
			return &CollapseError{Triangle: i + 1, At: m.Vertices[t[0]]}
		}
	}
	return nil
}

// rounded is the normal of a triangle as the file will hold it.
func (m *Mesh) rounded(t [3]int) form.Vec {
	a, b, c := grainOf(m.Vertices[t[0]]).place(), grainOf(m.Vertices[t[1]]).place(), grainOf(m.Vertices[t[2]]).place()
	return cross(step(a, b), step(a, c))
}

func (m *Mesh) record(t [3]int, rec *[stlTriangle]byte) {
	n := m.rounded(t)
	l := form.Length(length(n))
	put := func(at int, g grain) {
		for i, x := range g {
			binary.LittleEndian.PutUint32(rec[at+4*i:], math.Float32bits(x))
		}
	}
	put(0, grainOf(form.Vec{X: n.X / l, Y: n.Y / l, Z: n.Z / l}))
	for i, v := range t {
		put(12+12*i, grainOf(m.Vertices[v]))
	}
	rec[48], rec[49] = 0, 0
}

// A FormatError tells why a file is not a binary STL that can be used.
type FormatError struct{ Found, Want string }

func (e *FormatError) Error() string { return e.Found + "; " + e.Want }

// ReadSTL reads a binary STL and welds its triangles where their corners have
// the same bits. Its memory grows with what is really there, not with what
// the file claims. The triangles are kept as found; see [Inspect].
func ReadSTL(r io.Reader) (*Mesh, error) {
	in := bufio.NewReaderSize(r, 1<<16)
	if text, _ := in.Peek(512); looksASCII(text) {
		return nil, &FormatError{"this is an STL written as text", "save it again as a binary STL"}
	}
	var head [stlHeader + 4]byte
	if n, err := io.ReadFull(in, head[:]); err != nil {
		return nil, cutShort(err, fmt.Sprintf("the file ends after %d bytes, before its triangles are counted", n))
	}
	count := binary.LittleEndian.Uint32(head[stlHeader:])
	w := newWelder()
	var rec [stlTriangle]byte
	for i := range count {
		if _, err := io.ReadFull(in, rec[:]); err != nil {
			return nil, cutShort(err, fmt.Sprintf("the file says it has %d triangles but ends after %d", count, i))
		}
		if err := w.read(&rec, i); err != nil {
			return nil, err
		}
	}
	if _, err := in.ReadByte(); err == nil {
		return nil, &FormatError{fmt.Sprintf("the file goes on after its %d triangles", count), "ask for it again"}
	} else if err != io.EOF {
		return nil, err
	}
	return &w.mesh, nil
}

// cutShort tells a file that ends too soon from one that cannot be read.
func cutShort(err error, found string) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return &FormatError{found, "it was cut short: ask for it again"}
	}
	return err
}

// looksASCII tells text from a binary header that happens to begin with the
// same word.
func looksASCII(b []byte) bool {
	text := strings.ToLower(strings.TrimLeft(string(b), " \t\r\n"))
	if !strings.HasPrefix(text, "solid") {
		return false
	}
	return strings.Contains(text, "facet") || strings.Contains(text, "endsolid")
}

func (w *welder) read(rec *[stlTriangle]byte, i uint32) error {
	var g [3]grain
	for k := range 9 {
		x := math.Float32frombits(binary.LittleEndian.Uint32(rec[12+4*k:]))
		if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
			return &FormatError{fmt.Sprintf("triangle %d has a corner that is not a place", i+1), "the file is damaged: ask for it again"}
		}
		g[k/3][k%3] = x
	}
	for k := range g {
		g[k] = grainOf(g[k].place())
	}
	w.add(g[0], g[1], g[2])
	return nil
}

// words gives a place to one hundredth of a millimetre.
func words(p form.Vec) string { return fmt.Sprintf("(%.2f, %.2f, %.2f) mm", p.X, p.Y, p.Z) }
