package survey

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// largest is the most that is read as a survey; a whole omnibus takes a tenth of it.
const largest = 1 << 20

// A source is the text of a survey and the places in it.
type source struct {
	data   []byte
	starts []int // where each line begins
	runes  []int // characters before each block of bytes
}

// block is how many bytes share an entry in source.runes.
const block = 64

var byteOrderMark = []byte("\xef\xbb\xbf")

// newSource takes the bytes of a file, without the mark some editors put first.
func newSource(data []byte) *source {
	s := &source{data: bytes.TrimPrefix(data, byteOrderMark), starts: []int{0}}
	n := 0
	for i, c := range s.data {
		if i%block == 0 {
			s.runes = append(s.runes, n)
		}
		if utf8.RuneStart(c) {
			n++
		}
		if c == '\n' {
			s.starts = append(s.starts, i+1)
		}
	}
	return s
}

// before counts the characters that begin before offset.
func (s *source) before(offset int) int {
	if len(s.runes) == 0 {
		return 0
	}
	k := min(offset/block, len(s.runes)-1)
	n := s.runes[k]
	for _, c := range s.data[k*block : offset] {
		if utf8.RuneStart(c) {
			n++
		}
	}
	return n
}

// line returns the number, from 0, of the line that offset is on.
func (s *source) line(offset int) int {
	lo, hi := 0, len(s.starts)
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; s.starts[mid] <= offset {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// position tells where offset is, in lines and characters.
func (s *source) position(offset int) Position {
	offset = min(max(offset, 0), len(s.data))
	l := s.line(offset)
	return Position{Line: l + 1, Column: s.before(offset) - s.before(s.starts[l]) + 1}
}

// lineText returns line l, from 0, without its end.
func (s *source) lineText(l int) string {
	end := len(s.data)
	if l+1 < len(s.starts) {
		end = s.starts[l+1] - 1
	}
	return string(bytes.TrimRight(s.data[s.starts[l]:end], "\r\n"))
}

// rune returns the character at offset, and 0 at the end.
func (s *source) rune(offset int) rune {
	if offset >= len(s.data) {
		return 0
	}
	c, _ := utf8.DecodeRune(s.data[offset:])
	return c
}

// unfit returns the faults that stop a file from being read as text at all.
func (s *source) unfit() []found {
	d := s.data
	switch {
	case bytes.HasPrefix(d, []byte("\xff\xfe")) || bytes.HasPrefix(d, []byte("\xfe\xff")):
		return []found{{0, "a file saved as UTF-16", "save it again as UTF-8 (plain text)"}}
	case len(bytes.TrimSpace(d)) == 0:
		return []found{{0, "an empty file", "write a survey in it, beginning with [vehicle]"}}
	case !utf8.Valid(d):
		at := firstInvalid(d)
		return []found{{at, fmt.Sprintf("a byte (%#02x) that is no character of UTF-8", d[at]), "save the file again as UTF-8 (plain text), or mend that character"}}
	}
	return s.unprintable()
}

func firstInvalid(d []byte) int {
	at := 0
	for {
		c, size := utf8.DecodeRune(d[at:])
		if c == utf8.RuneError && size <= 1 {
			return at
		}
		at += size
	}
}

// unprintable finds control characters, which an editor may not show.
func (s *source) unprintable() []found {
	var f []found
	for i, c := range s.data {
		lone := c == '\r' && (i+1 == len(s.data) || s.data[i+1] != '\n')
		if (c >= ' ' && c != 0x7f || c == '\t' || c == '\n' || c == '\r') && !lone {
			continue
		}
		f = append(f, found{i, fmt.Sprintf("a control character (%#02x), which prints as nothing", c), "delete it, or type the line again"})
		if len(f) == mostShown {
			break
		}
	}
	return f
}

// A found fault is one at a place in the source.
type found struct {
	at          int
	found, want string
}
