package survey

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestWholeFileFaults(t *testing.T) {
	for _, f := range []struct{ name, text, want string }{
		{"empty", "", "wagon.toml:1:1: an empty file; write a survey in it, beginning with [vehicle]"},
		{"blank", " \n\n\t", "wagon.toml:1:1: an empty file; write a survey in it, beginning with [vehicle]"},
		{
			"remarks only", "# nothing yet\n",
			"wagon.toml:1:1: no [vehicle] in the file; write one; see the reference\n" +
				"wagon.toml:1:1: no [wood] in the file; write one; see the reference\n" +
				"wagon.toml:1:1: no [part] in the file; write one; see the reference",
		},
		{
			"not UTF-8", front + "# caf\xe9\n",
			"wagon.toml:10:6: a byte (0xe9) that is no character of UTF-8; save the file again as UTF-8 (plain text), or mend that character",
		},
		{"UTF-16", "\xff\xfe[\x00v\x00", "wagon.toml:1:1: a file saved as UTF-16; save it again as UTF-8 (plain text)"},
		{
			"control characters", front + "[part]\x00\n# a\x1bb\n# c\rd\n",
			"wagon.toml:10:7: a control character (0x00), which prints as nothing; delete it, or type the line again\n" +
				"wagon.toml:11:4: a control character (0x1b), which prints as nothing; delete it, or type the line again\n" +
				"wagon.toml:12:4: a control character (0x0d), which prints as nothing; delete it, or type the line again",
		},
		{
			"columns count characters", front + "[part]\nsill = { kind = \"reach\", runs = \"along\", note = \"¾ übrig\", lng = \"4\" }\n",
			"wagon.toml:11:60: a reach has no “lng”; did you mean long?",
		},
		{
			"every fault at once", strings.Replace(front, "bought = 15", "bought = 15%", 1) + "[part]\nsill = { kind = \"reach\", runs = \"allong\" }\nreach { }\n[evidence]\nguess = [\"sill.wide = 2 mn\"]\n",
			"wagon.toml:8:12: “%” straight after a value; put lengths and other text between quotes, and one name = value on a line\n    bought = 15%\n" +
				"wagon.toml:11:33: “allong”, which is not known here; did you mean along?\n" +
				"wagon.toml:12:7: “{” where = was expected after the name; write one name = value a line, and put text and lengths between quotes, such as thick = \"1 1/4\"\n    reach { }\n" +
				"wagon.toml:14:25: “mn”, which is no unit of length here in “sill.wide = 2 mn”; write in, ft, mm, cm or m after the number, or nothing",
		},
	} {
		t.Run(f.name, func(t *testing.T) {
			s, err := read("wagon.toml", []byte(f.text), fakeKinds())
			require.Nil(t, s)
			require.EqualError(t, err, f.want)
		})
	}
}

// Brackets, braces and dots that nobody means are refused where they begin to be too many.
func TestDeepNesting(t *testing.T) {
	const deep = 20
	for text, want := range map[string]string{
		"n = " + strings.Repeat("[", deep) + strings.Repeat("]", deep) + "\n":             "brackets within brackets without end; write one list, or a list of lists at most",
		"n = " + strings.Repeat("{ a = ", deep) + "1" + strings.Repeat(" }", deep) + "\n": "braces within braces without end; write it as in the reference",
		strings.Repeat("a.", deep) + "b = 1\n":                                            "a name with dots without end; write it as in the reference, with one dot at most",
		"n = { " + strings.Repeat("a.", deep) + "b = 1 }\n":                               "a name with dots without end; write it as in the reference, with one dot at most",
	} {
		_, slips, faults := plant(newSource([]byte(text)))
		require.Empty(t, slips)
		require.Len(t, faults, 1)
		require.Equal(t, want, faults[0].found+"; "+faults[0].want)
	}
}

// A heading that cannot be read takes its lines with it: they are told no faults of their own.
func TestBrokenHeading(t *testing.T) {
	_, err := read("wagon.toml", []byte(front+"[iron\nplate = { kind = \"plate\" }\n[part]\n"), fakeKinds())
	require.EqualError(t, err, "wagon.toml:10:6: a heading whose bracket is not closed; write it as [iron] or [[fastening]]\n    [iron")
}

func TestManyFaults(t *testing.T) {
	text := front + "[part]\n" + strings.Repeat("x = 1\n", 50)
	_, err := read("wagon.toml", []byte(text), fakeKinds())
	lines := strings.Split(err.Error(), "\n")
	require.Len(t, lines, mostShown+1)
	require.Equal(t, "and 10 more", lines[mostShown])
}

func TestAcceptedForms(t *testing.T) {
	plain := front + things
	want, err := read("wagon.toml", []byte(plain), fakeKinds())
	require.NoError(t, err)
	for name, text := range map[string]string{
		"byte order mark":  "\xef\xbb\xbf" + plain,
		"line ends of two": strings.ReplaceAll(plain, "\n", "\r\n"),
		"no line end last": strings.TrimSuffix(plain, "\n"),
		"date in quotes":   strings.Replace(plain, "2026-10-30", `"2026-10-30"`, 1),
		"unit in full":     strings.Replace(plain, `unit = "in"`, `unit = "inches"`, 1),
		"hyphen in a kind": strings.Replace(plain, `"cross bar"`, `"Cross-Bar"`, 1),
		"a bare number":    strings.Replace(plain, `wide = "3"`, `wide = 3.0`, 1),
	} {
		t.Run(name, func(t *testing.T) {
			got, err := read("wagon.toml", []byte(text), fakeKinds())
			require.NoError(t, err)
			require.Equal(t, comparable(want), comparable(got))
		})
	}
}

// Noise and overlong files are refused at once, whatever is in them.
func TestNoise(t *testing.T) {
	const large = 50 << 20
	for name, data := range map[string][]byte{
		"noise":    bytes.Repeat([]byte{0x9c, 0x01, '['}, large/3),
		"brackets": bytes.Repeat([]byte("a=[[{\n"), large/6),
	} {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			_, err := Read("wagon.toml", data)
			require.ErrorContains(t, err, "wagon.toml:1:1: a file of 52.4 MB; ")
			require.Less(t, time.Since(start), time.Second)
			path := filepath.Join(t.TempDir(), "wagon.toml")
			require.NoError(t, os.WriteFile(path, data, 0o600))
			_, err = ReadFile(path)
			require.ErrorContains(t, err, path+":1:1: a file of 52.4 MB; ")
		})
	}
}

// Large files made to be slow are read in time. (Time grows with size and no
// faster; a quarter of the limit keeps the test short.)
func TestSlowFiles(t *testing.T) {
	const large = largest / 4
	fill := func(s string) []byte { return []byte(strings.Repeat(s, large/len(s))) }
	numbered := func(head, line string) []byte {
		var b bytes.Buffer
		b.WriteString(head)
		for i := 0; b.Len() < large; i++ {
			b.WriteString(strings.ReplaceAll(line, "$", strconv.Itoa(i)))
		}
		return b.Bytes()
	}
	for name, data := range map[string][]byte{
		"open brackets":      fill("["),
		"open lists":         fill("a=[1,\n"),
		"open braces":        fill("a={b="),
		"dots":               fill("a."),
		"quotes":             fill("a='''\n"),
		"broken lines":       fill("x\n"),
		"one long line":      append([]byte("[evidence]\nguess = ["), append(fill("\"a\","), ']')...),
		"unknown references": numbered(front+"[part]\n", "thing-$ = { kind = \"reach\", runs = \"along\", oops = 1 }\n"),
		"unknown things":     numbered(front+things+"[evidence]\nguess = [", "\"thing-$.wide = 2\",\n"),
		"same id":            numbered(front+things, "sill = 1\n"),
		"irons alike":        numbered(front+"[part]\n[iron]\n", "i-$ = { kind = \"strap\", runs = \"along\", thick = \"1/8\" }\n"),
		"long text":          fill("a = \"" + strings.Repeat("\\u0041", 1000) + "\"\n"),
		"escapes":            append([]byte(front+"[part]\n[evidence]\nguess = [\""), append(fill("\\u0020"), '"', ']')...),
	} {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			_, err := read("wagon.toml", data, fakeKinds())
			if err != nil {
				require.NotEmpty(t, err.Error())
			}
			require.Less(t, time.Since(start), 5*time.Second)
		})
	}
}

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	_, err := ReadFile(filepath.Join(dir, "none.toml"))
	require.ErrorIs(t, err, fs.ErrNotExist)
	require.ErrorContains(t, err, "none.toml: there is no such file; check its name and its folder")
	_, err = ReadFile(dir)
	require.ErrorContains(t, err, "the file cannot be read")
	path := filepath.Join(dir, "wagon.toml")
	require.NoError(t, os.WriteFile(path, []byte(example), 0o600))
	s, err := ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, path, s.File)
	require.Len(t, s.Hash, 64)
}
