package quantity

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A LengthError is a length that could not be read: what was found, where,
// and what would do.
type LengthError struct {
	Text   string // the whole text, as written
	Offset int    // of the fault in Text, in bytes from 0
	Found  string // what stands there, in words
	Want   string // what would do
}

// Column is the place of the fault in characters, from 1.
func (e *LengthError) Column() int {
	at := min(max(e.Offset, 0), len(e.Text))
	return utf8.RuneCountInString(e.Text[:at]) + 1
}

func (e *LengthError) Error() string {
	return fmt.Sprintf("%s: %s at character %d; %s", Quote(e.Text), e.Found, e.Column(), e.Want)
}

// longestQuote is how many characters of a user's text a message repeats.
const longestQuote = 40

// Quote returns s between curly quotes as a message shows it: marks of feet
// and inches stand as written, what cannot be printed is escaped, and a long
// text is cut short.
func Quote(s string) string {
	var b strings.Builder
	b.WriteString("“")
	n := 0
	for _, r := range s {
		if n == longestQuote {
			b.WriteString("…")
			break
		}
		if strconv.IsPrint(r) {
			b.WriteRune(r)
		} else {
			b.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
		}
		n++
	}
	b.WriteString("”")
	return b.String()
}
