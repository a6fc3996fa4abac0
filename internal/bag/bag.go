// Package bag packs files for keeping, with checksums, as the BagIt format has it
// (RFC 8493): a payload under data/, a manifest of its checksums, and tags that say
// what it is. Any library or archive can check such a bag without this program.
package bag

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"
	"time"
)

// A File is one file: its path with slashes, and its bytes.
type File struct {
	Path string
	Data []byte
}

// A Tag is one line about the bag: a label of RFC 8493, or one's own.
type Tag struct{ Label, Value string }

// A Bag is what is to be kept.
type Bag struct {
	Payload []File    // their paths are below data/
	Tags    []Tag     // in the order in which they are written
	Day     time.Time // of what is kept; never the clock's
}

// A PathError is a path that no bag can hold.
type PathError struct{ Path, Found string }

func (e *PathError) Error() string { return fmt.Sprintf("%q cannot be kept: %s", e.Path, e.Found) }

// Files are all files of the bag, sorted by path. The same bag gives the same bytes.
func (b Bag) Files() ([]File, error) {
	payload := slices.Clone(b.Payload)
	slices.SortFunc(payload, func(x, y File) int { return cmp.Compare(x.Path, y.Path) })
	var files []File
	var octets int64
	seen := map[string]bool{}
	for _, f := range payload {
		if err := sound(f.Path); err != nil {
			return nil, err
		}
		if name := strings.ToLower(f.Path); seen[name] {
			return nil, &PathError{f.Path, "another file has that name, but for capital letters"}
		} else {
			seen[name] = true
		}
		octets += int64(len(f.Data))
		files = append(files, File{"data/" + f.Path, f.Data})
	}
	tags := []File{
		{"bagit.txt", []byte("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n")},
		{"bag-info.txt", []byte(b.info(octets, len(payload)))},
		{"manifest-sha256.txt", manifest(files)},
	}
	tags = append(tags, File{"tagmanifest-sha256.txt", manifest(sorted(tags))})
	return sorted(append(files, tags...)), nil
}

func sorted(files []File) []File {
	out := slices.Clone(files)
	slices.SortFunc(out, func(x, y File) int { return cmp.Compare(x.Path, y.Path) })
	return out
}

// info is bag-info.txt: the bag's own lines, its day and its size.
func (b Bag) info(octets int64, count int) string {
	var out strings.Builder
	tags := append(slices.Clone(b.Tags),
		Tag{"Bagging-Date", b.Day.Format("2006-01-02")},
		Tag{"Payload-Oxum", fmt.Sprintf("%d.%d", octets, count)})
	for _, t := range tags {
		out.WriteString(folded(t.Label + ": " + plain(t.Value)))
	}
	return out.String()
}

// plain puts a value on one line: an end of a line would start another tag.
func plain(s string) string { return strings.Join(strings.Fields(s), " ") }

// folded breaks a long line at a blank; what follows stands in from the edge
// (RFC 8493, 2.2.2, recommends 79 characters).
func folded(line string) string {
	const most = 79
	var out strings.Builder
	room, started := most, false
	for _, word := range strings.Split(line, " ") {
		n := len([]rune(word))
		if started && n+1 > room {
			out.WriteString("\n  ")
			room = most - 2
		} else if started {
			out.WriteByte(' ')
			room--
		}
		out.WriteString(word)
		room -= n
		started = true
	}
	return out.String() + "\n"
}

// manifest lists files with their checksums.
func manifest(files []File) []byte {
	var out strings.Builder
	for _, f := range files {
		sum := sha256.Sum256(f.Data)
		fmt.Fprintf(&out, "%s  %s\n", hex.EncodeToString(sum[:]), escaped(f.Path))
	}
	return []byte(out.String())
}

// escaped writes what would break a manifest's line, and the sign it is written with.
func escaped(path string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(path)
}

// sound refuses a path that leaves the bag, or that some system cannot hold.
func sound(path string) error {
	switch {
	case path == "":
		return &PathError{path, "it has no name"}
	case strings.HasPrefix(path, "/"), strings.Contains(path, `\`), strings.Contains(path, ":"):
		return &PathError{path, "a path in a bag is told from the bag, with slashes, and has no colon"}
	}
	for _, step := range strings.Split(path, "/") {
		if step == "" || step == "." || step == ".." {
			return &PathError{path, "it has an empty step, or one out of its folder"}
		}
	}
	return nil
}
