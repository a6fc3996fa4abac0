package jobpack_test

import (
	"archive/zip"
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/jobpack"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func wagon(t *testing.T) (*vehicle.Vehicle, *cutlist.List) {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read("demo.toml", demo.Survey())
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	list, err := cutlist.Make(v, woods, cutlist.Usual())
	require.NoError(t, err)
	return v, list
}

// The cover alone answers what a maker asks: how many, which hands, which timber
// and thickness, which unit, which issue, what to check, what is left to hand.
func TestTheCoverAnswers(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("pdftotext is not here")
		}
		t.Skip("pdftotext is not here")
	}
	v, list := wagon(t)
	for m, says := range map[jobpack.Maker][]string{
		jobpack.Joiner: {"Unit: inches", "1 NEAR 1 OFF", "white ash", "2 1/4", "Reach", "over all", "end holes", "offered up", "restorer"},
		jobpack.CNC:    {"Unit: MILLIMETRES", "1 NEAR 1 OFF", "white oak", "50.4", "mirror images", "Chamfers and eased edges", "square the corners"},
		jobpack.Yard:   {"white oak", "long", "wide", "thick", "sawn sizes", "20 %"},
		jobpack.Smith:  {"for the smith", "Wood screw", "Hot iron"},
	} {
		var b, again bytes.Buffer
		require.NoError(t, jobpack.WriteCover(&b, v, m, list))
		require.NoError(t, jobpack.WriteCover(&again, v, m, list))
		require.Equal(t, b.Bytes(), again.Bytes())
		require.NoError(t, api.Validate(bytes.NewReader(b.Bytes()), nil))
		pages, err := api.PageCount(bytes.NewReader(b.Bytes()), nil)
		require.NoError(t, err)
		assert.Equal(t, 1, pages, m.String())
		file := filepath.Join(t.TempDir(), "cover.pdf")
		require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
		out, err := exec.Command("pdftotext", "-layout", file, "-").Output()
		require.NoError(t, err)
		for _, s := range append(says, "Issue A", "How many:", "Left for hand work", "Check on the first piece made", "Cautions", "Ask") {
			assert.Contains(t, string(out), s, m.String())
		}
	}
}

func TestAPackIsTheSameBytesAndHoldsItsFiles(t *testing.T) {
	v, _ := wagon(t)
	files := []jobpack.File{{Path: "b/two.txt", Data: []byte("2")}, {Path: "a.txt", Data: []byte("1")}}
	var b, again bytes.Buffer
	require.NoError(t, jobpack.Write(&b, v, []byte("cover"), files))
	files[0], files[1] = files[1], files[0]
	require.NoError(t, jobpack.Write(&again, v, []byte("cover"), files))
	assert.Equal(t, b.Bytes(), again.Bytes())
	z, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
	require.NoError(t, err)
	var names []string
	for _, f := range z.File {
		names = append(names, f.Name)
	}
	assert.Equal(t, []string{"00_cover-sheet.pdf", "a.txt", "b/two.txt"}, names)
	r, err := z.File[1].Open()
	require.NoError(t, err)
	data, err := io.ReadAll(r)
	require.NoError(t, err)
	assert.Equal(t, "1", string(data))
}

func TestMakersAreNamed(t *testing.T) {
	for _, w := range jobpack.Makers() {
		m, err := jobpack.ParseMaker(strings.ToUpper(w))
		require.NoError(t, err)
		assert.Equal(t, w, m.Folder())
	}
	_, err := jobpack.ParseMaker("baker")
	require.ErrorContains(t, err, `"baker" is nobody that a pack is made for`)
}
