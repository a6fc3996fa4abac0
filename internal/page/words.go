package page

import (
	"unicode"
	"unicode/utf8"
)

// lowered sets a name within a sentence.
func lowered(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToLower(r)) + s[size:]
}
