package survey

import (
	"strings"
	"unicode"
)

// What would do, for lines that cannot be made out.
const (
	wantLine   = "write one name = value a line, and put text and lengths between quotes, such as thick = \"1 1/4\""
	wantQuotes = "put text and lengths between quotes, such as \"1 3/4\" or \"44.5 mm\""
	wantName   = "begin with a name of letters, figures and hyphens, or with # for a remark"
	wantNumber = "write a plain number such as 12 or 0.5, or put it between quotes"
	wantSlash  = "write / for \\ in names of files, and nothing else with a \\"
)

// slip puts into words why what begins at first cannot be made out past at.
// Message is the parser's, which speaks to programmers.
func (p *planter) slip(message string, first, at int) slip {
	if has(message, "end of input") {
		at = len(p.src.data)
	}
	brackets, quoted := p.opened(first, at)
	open := -1
	if n := len(brackets); n > 0 {
		open = brackets[n-1]
	}
	f := found{at: at}
	switch {
	case has(message, "terminated", "new lines", "need a character after"):
		f = found{quoted, "a quote that is not closed", "close it with the same mark on the same line"}
	case has(message, "too many quotes"):
		f.found, f.want = "too many quotes together", "put text between one mark on each side"
	case has(message, "escape"):
		f.found, f.want = "a \\ in text, with "+shownRune(p.src.rune(at+1))+" after it", wantSlash
	case has(message, "nested more"):
		f = found{brackets[0], "brackets within brackets without end", "write one list, or a list of lists at most"}
	case has(message, "expected ']"):
		f.found, f.want = "a heading whose bracket is not closed", "write it as [iron] or [[fastening]]"
	case has(message, "expected '=' after key"):
		f.found, f.want = p.shown(at)+" where = was expected after the name", wantLine
	case has(message, "keyword"):
		f = p.brokenValue(open, at)
	case has(message, "array", "inline table", "value but got"):
		f = p.brokenList(open, at)
	case has(message, "key"):
		f = p.brokenName(open, at)
	case has(message, "value", "newline", "strings must"):
		f = p.brokenValue(open, at)
	case has(message, "number", "digit", "zeroes", "radix", "expected \""):
		f.found, f.want = "a number that cannot be read", wantNumber
	default:
		f.found, f.want = p.shown(at)+" where it cannot stand", wantLine
	}
	return slip{found: f, line: p.src.line(f.at)}
}

func has(message string, parts ...string) bool {
	for _, s := range parts {
		if strings.Contains(message, s) {
			return true
		}
	}
	return false
}

// brokenName is a name that does not begin as one.
func (p *planter) brokenName(open, at int) found {
	c := p.src.rune(at)
	if open >= 0 && (c == 0 || p.src.line(open) != p.src.line(at)) {
		return p.notClosed(open)
	}
	if c == 0 || c == '\n' || c == '\r' || at == len(p.src.data)-1 {
		return found{at, "a line that ends in the middle of a name", wantLine}
	}
	return found{at, p.shown(at) + " where a name was expected", wantName}
}

// brokenValue is a value that is none, or more after one.
func (p *planter) brokenValue(open, at int) found {
	c := p.src.rune(at)
	f := found{at: at, want: wantQuotes}
	switch before := p.lastBefore(at); {
	case strings.ContainsRune("“”„‘’″′", c) && c != 0:
		f.found, f.want = "a curly mark, "+string(c)+",", "write plain quotes, \", as a typewriter has them"
	case before == '=' && (c == 0 || c == '\n' || c == '\r' || c == '#'):
		f.found, f.want = "nothing after =", "write the value after it, or take the line away"
	case c == 0 || c == '\n' || c == '\r':
		return p.notClosed(open)
	case c == '"' && (before == '"' || unicode.IsDigit(before)):
		f.found, f.want = "a second quote after the value", "write the length without the mark for inches, such as \"7/8\" or \"7/8 in\""
	case before == '=' || before == '[' || before == ',':
		f.found = p.shown(at) + " where a value was expected"
	default:
		f.found = p.shown(at) + " straight after a value"
		if open < 0 {
			f.want = "put lengths and other text between quotes, and one name = value on a line"
		}
	}
	return f
}

// brokenList is a list or group with a slip in its commas or brackets.
func (p *planter) brokenList(open, at int) found {
	c := p.src.rune(at)
	switch {
	case c == ',':
		return found{at, "a comma with nothing before it", "write one comma between two values"}
	case open < 0:
		return p.brokenValue(open, at)
	case at >= len(p.src.data)-1 || p.src.line(open) != p.src.line(at):
		return p.notClosed(open)
	case c == '/', unicode.IsDigit(c) && unicode.IsDigit(p.lastBefore(at)), p.src.rune(at-1) != ' ' && (c == '"' || unicode.IsLetter(c)):
		return p.brokenValue(open, at)
	}
	return found{at, p.shown(at) + " where a comma or " + p.closing(open) + " was expected", "write a comma between two values, and " + p.closing(open) + " after the last"}
}

func (p *planter) closing(open int) string {
	if p.src.rune(open) == '{' {
		return "}"
	}
	return "]"
}

func (p *planter) notClosed(open int) found {
	if open < 0 {
		return found{len(p.src.data), "a file that ends in the middle of a line", wantLine}
	}
	c := p.closing(open)
	return found{open, shownRune(p.src.rune(open)) + " that is not closed", "write " + c + " after its last value"}
}

// lastBefore is the last character before at that is no space.
func (p *planter) lastBefore(at int) rune {
	for at--; at >= 0; at-- {
		if c := p.src.data[at]; c != ' ' && c != '\t' {
			return rune(c)
		}
	}
	return 0
}

// opened finds the brackets still open at at, and the last quote opened, in
// what begins at first; at for no quote.
func (p *planter) opened(first, at int) (brackets []int, quoted int) {
	d := p.src.data
	quoted = at
	for i := first; i < at; i++ {
		switch c := d[i]; c {
		case '#':
			for i < at && d[i] != '\n' {
				i++
			}
		case '"', '\'':
			quoted = i
			i = closeQuote(d[:at], i)
		case '[', '{':
			brackets = append(brackets, i)
		case ']', '}':
			brackets = brackets[:max(len(brackets)-1, 0)]
		}
	}
	return brackets, quoted
}

// closeQuote returns the place of the mark that closes the one at i, or the end.
func closeQuote(d []byte, i int) int {
	mark := string(d[i])
	if strings.HasPrefix(string(d[i:min(i+3, len(d))]), strings.Repeat(mark, 3)) {
		mark = strings.Repeat(mark, 3)
	}
	for i += len(mark); i < len(d); i++ {
		switch {
		case d[i] == '\\' && mark[0] == '"':
			i++
		case strings.HasPrefix(string(d[i:min(i+len(mark), len(d))]), mark):
			return i + len(mark) - 1
		}
	}
	return len(d)
}

// shown names what stands at a place: a word, or one character.
func (p *planter) shown(at int) string {
	const longest = 20
	end := at
	for end < len(p.src.data) && end-at < longest && (isLetter(p.src.data[end]) || unicode.IsDigit(rune(p.src.data[end]))) {
		end++
	}
	if end > at {
		return quote(string(p.src.data[at:end]))
	}
	return shownRune(p.src.rune(at))
}

// shownRune names one character in a message.
func shownRune(c rune) string {
	switch c {
	case 0:
		return "the end of the file"
	case '\n', '\r':
		return "the end of the line"
	case ' ', '\t':
		return "a space"
	case '\u00a0':
		return "a space that does not break (from a word processor)"
	}
	return quote(string(c))
}
