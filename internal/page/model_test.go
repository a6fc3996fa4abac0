package page_test

import (
	"bytes"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/page"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// derived is the demo's vehicle with its reasons, worked out once for all tests.
var derived = sync.OnceValues(func() (page.Model, error) { return modelOf(demo.Survey()) })

func modelOf(data []byte) (page.Model, error) {
	s, err := survey.Read(demo.Name, data)
	if err != nil {
		return page.Model{}, err
	}
	woods, err := timber.Published()
	if err != nil {
		return page.Model{}, err
	}
	st, err := derive.Examine(s, woods)
	if err != nil {
		return page.Model{}, err
	}
	list, err := cutlist.MakeWith(st.Vehicle, woods, cutlist.Settings{Allowances: cutlist.Usual()})
	if err != nil {
		return page.Model{}, err
	}
	return page.Model{
		Vehicle: st.Vehicle, Survey: data, Version: "1.0", Accounts: st.Accounts(), Questions: st.Questions(), Spacings: st.Spacings(),
		Cutting: list.Cutting(), Totals: list.Totals(),
		Files: func(it *vehicle.Item) []page.Link {
			return []page.Link{{Words: "Mesh", Path: "../cnc/" + st.Vehicle.Stem(it) + ".stl"}}
		},
	}, nil
}

func demoModel(t *testing.T) page.Model {
	t.Helper()
	m, err := derived()
	require.NoError(t, err)
	return m
}

// written is a page on the disk.
func written(t *testing.T, m page.Model) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, page.Write(&b, m))
	return onDisk(t, b.String())
}

func demoFile(t *testing.T) string {
	t.Helper()
	return onDisk(t, demoPage(t))
}

func onDisk(t *testing.T, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "record.html")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	return file
}

func ironOf(t *testing.T, m page.Model, id string) *vehicle.Iron {
	t.Helper()
	for _, i := range m.Vehicle.Irons {
		if i.ID == id {
			return i
		}
	}
	t.Fatalf("no iron %s", id)
	return nil
}

func wide(i *vehicle.Iron) float64 {
	for _, d := range i.Sizes {
		if d.Name == "wide" {
			return d.Value.Millimetres()
		}
	}
	return 0
}
