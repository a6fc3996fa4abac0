// Package jobpack puts together what one maker gets, and nothing else: a zip with
// a cover sheet that tells what is wanted, how many, of which hand, out of what,
// in which unit, of which issue, what to measure on the first piece, and what is
// left to hand; and his files, each named so that it says what it is.
package jobpack

import (
	"archive/zip"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A Maker is who a pack is for.
type Maker int

// The makers.
const (
	Joiner Maker = iota
	CNC
	Yard
	Smith
)

// Makers are the words for all of them.
func Makers() []string { return []string{"joiner", "cnc", "yard", "smith"} }

// A MakerError is a word for no maker.
type MakerError struct{ Word string }

func (e *MakerError) Error() string {
	return fmt.Sprintf("%q is nobody that a pack is made for; %s would do", e.Word, strings.Join(Makers(), ", "))
}

// ParseMaker reads who a pack is for.
func ParseMaker(word string) (Maker, error) {
	if i := slices.Index(Makers(), strings.ToLower(word)); i >= 0 {
		return Maker(i), nil
	}
	return 0, &MakerError{word}
}

// String is the maker as people say it.
func (m Maker) String() string { return [...]string{"joiner", "CNC shop", "timber yard", "smith"}[m] }

// Folder is where a delivery keeps what the maker gets.
func (m Maker) Folder() string { return Makers()[m] }

// Unit is the unit of the maker's files: a router's are in millimetres, whatever
// the survey is in.
func (m Maker) Unit(v *vehicle.Vehicle) quantity.Unit {
	if m == CNC {
		return quantity.Millimetres
	}
	return v.Unit
}

// A File is one file of a pack.
type File struct {
	Path string
	Data []byte
}

// Name is the pack's file name: whose it is, what it is of, and its issue.
func Name(v *vehicle.Vehicle, m Maker) string {
	return fmt.Sprintf("%s_issue-%s_for-the-%s.zip", v.Slug, v.IssueWord(), strings.ReplaceAll(strings.ToLower(m.String()), " ", "-"))
}

// Write writes the pack: the cover sheet, then the files sorted by path, all
// dated with the survey's day. The same pack gives the same bytes.
func Write(w io.Writer, v *vehicle.Vehicle, cover []byte, files []File) error {
	files = slices.Clone(files)
	slices.SortFunc(files, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	z := zip.NewWriter(w)
	for _, f := range append([]File{{"00_cover-sheet.pdf", cover}}, files...) {
		h := &zip.FileHeader{Name: f.Path, Method: zip.Deflate, Modified: v.Date.In(time.UTC)}
		h.SetMode(0o644)
		out, err := z.CreateHeader(h)
		if err != nil {
			return err
		}
		if _, err := out.Write(f.Data); err != nil {
			return err
		}
	}
	return z.Close()
}
