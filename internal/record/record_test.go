package record

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/listing"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
)

func model(t *testing.T) Model {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read("demo", demo.Survey())
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	return Model{Vehicle: v, Survey: demo.Survey()}
}

func words(t *testing.T, data []byte, more ...string) string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is missing; install poppler-utils")
		}
		t.Skip("pdftotext is missing; install poppler-utils")
	}
	name := filepath.Join(t.TempDir(), "r.pdf")
	require.NoError(t, os.WriteFile(name, data, 0o600))
	out, err := exec.Command("pdftotext", append(more, "-layout", name, "-")...).Output()
	require.NoError(t, err)
	return string(out)
}

// Every dimension of the list of sizes stands in the table and on the paper; the
// contents' pages are those the chapters begin on; the file is sound (pdfcpu).
func TestRecordOfTheDemo(t *testing.T) {
	m := model(t)
	m.Vehicle.Name = `Cart "<b>` + "\u202e" + strings.Repeat("long", 60)
	var b, again bytes.Buffer
	require.NoError(t, WritePDF(&b, m))
	require.NoError(t, WritePDF(&again, m))
	require.Equal(t, b.Bytes(), again.Bytes())
	require.NoError(t, api.Validate(bytes.NewReader(b.Bytes()), nil))

	pages := strings.Split(words(t, b.Bytes()), "\f")
	require.Contains(t, pages[0], `Cart "<b>[U+202E]`)
	found := 0
	for n, page := range pages[1:] {
		first, _, _ := strings.Cut(strings.TrimSpace(page), "\n")
		for _, l := range strings.Split(pages[0], "\n") {
			if first != "" && strings.HasPrefix(l, strings.TrimSpace(first)+" ") {
				require.True(t, strings.HasSuffix(l, fmt.Sprintf(" %d", n+2)), l)
				found++
			}
		}
	}
	require.Equal(t, 7, found)

	var c bytes.Buffer
	require.NoError(t, WriteCSV(&c, m.Vehicle))
	records, err := csv.NewReader(&c).ReadAll()
	require.NoError(t, err)
	table := map[string]bool{}
	for _, r := range records {
		table[r[12]+" "+r[13]+" "+r[14]+" "+r[15]] = true
	}
	flat := strings.Join(strings.Fields(strings.Join(pages, " ")), " ")
	for _, r := range listing.Sizes(m.Vehicle).Rows {
		value := fmt.Sprint(r[4].Value)
		if value == "NaN" {
			continue
		}
		require.True(t, table[fmt.Sprint(r[3].Value, " ", r[4].Value, " ", r[5].Value, " ", r[7].Value)], "%v", r)
		require.Contains(t, flat, fmt.Sprint(value, " mm, ", r[7].Value))
	}
}

// The schema tells of every key of a row, and of no other.
func TestSchemaTellsEveryKey(t *testing.T) {
	m := model(t)
	var s, j bytes.Buffer
	require.NoError(t, WriteSchema(&s))
	require.NoError(t, WriteJSON(&j, m.Vehicle))
	var schema struct {
		Items struct {
			Properties map[string]struct{ Description string }
		}
	}
	var rows []map[string]any
	require.NoError(t, json.Unmarshal(s.Bytes(), &schema))
	require.NoError(t, json.Unmarshal(j.Bytes(), &rows))
	require.NotEmpty(t, rows)
	for _, r := range rows {
		require.Len(t, r, len(schema.Items.Properties))
		for k := range r {
			require.NotEmpty(t, schema.Items.Properties[k].Description, k)
		}
	}
}
