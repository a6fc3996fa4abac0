package page_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/page"
	"lostwood/internal/vehicle"
)

// demoPage is the demo's page, made once for all tests.
func demoPage(t *testing.T) string {
	t.Helper()
	text, err := made()
	require.NoError(t, err)
	return text
}

var made = sync.OnceValues(func() (string, error) {
	m, err := derived()
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	err = page.Write(&b, m)
	return b.String(), err
})

func TestThePageIsSmallAndTheSameEveryTime(t *testing.T) {
	one := demoPage(t)
	var again bytes.Buffer
	require.NoError(t, page.Write(&again, demoModel(t)))
	two := again.String()
	require.Equal(t, sha256.Sum256([]byte(one)), sha256.Sum256([]byte(two)))
	t.Logf("the demo's page is %.0f kB", float64(len(one))/1000)
	require.Less(t, len(one), 1_500_000)
}

// Content Security Policy Level 3 (W3C), section 6.7.2.4: a hash is that of the
// text between the tags.
func TestThePolicyAllowsThisStyleAndProgramAlone(t *testing.T) {
	text := demoPage(t)
	policy := regexp.MustCompile(`Content-Security-Policy" content="([^"]*)"`).FindStringSubmatch(text)[1]
	require.Contains(t, policy, "default-src 'none'")
	require.NotContains(t, policy, "unsafe")
	hash := func(s string) string {
		sum := sha256.Sum256([]byte(s))
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	between := func(from, to string) string {
		_, after, ok := strings.Cut(text, from)
		require.True(t, ok)
		in, _, ok := strings.Cut(after, to)
		require.True(t, ok)
		return in
	}
	require.Contains(t, policy, "style-src "+hash(between("<style>", "</style>")))
	require.Contains(t, policy, "script-src "+hash(between("<script>", "</script>")))
	require.NotRegexp(t, `\sstyle="`, strings.Split(text, "<script")[0], "a style on an element would be refused")
}

func TestThereMustBeAVehicle(t *testing.T) {
	var b bytes.Buffer
	require.ErrorAs(t, page.Write(&b, page.Model{}), new(*page.NothingError))
	require.Zero(t, b.Len())
	require.NoError(t, page.Write(&b, page.Model{Vehicle: &vehicle.Vehicle{Name: "Nothing yet"}}), "a vehicle of which nothing is known yet is a page too")
}

type sceneData struct {
	Meshes []struct {
		Low, Step          [3]float64
		Corners, Triangles int
		Wide               bool
		Data               string
	}
	Things []struct {
		ID, Sort, Record string
		Mesh, Turns      int
		M                [12]float64
		Lift             [3]float64
		Step             int
		Box              [3]float64
	}
	Moving []struct{ Name string }
	Steps  int
}

func demoScene(t *testing.T) sceneData {
	t.Helper()
	var s sceneData
	require.NoError(t, json.Unmarshal([]byte(jsonOf(t, demoPage(t))), &s))
	return s
}

// Every skin on the page is closed: each edge runs once each way. Its volume is
// that of the wood, as near as the page's tolerance lets it.
func TestSkinsOnThePageAreClosed(t *testing.T) {
	for k, m := range demoScene(t).Meshes {
		data, err := base64.StdEncoding.DecodeString(m.Data)
		require.NoError(t, err)
		require.False(t, m.Wide)
		require.Len(t, data, 6*m.Corners+6*m.Triangles)
		edges := map[[2]uint16]int{}
		for i := range m.Triangles {
			at := data[6*m.Corners+6*i:]
			c := [3]uint16{binary.LittleEndian.Uint16(at), binary.LittleEndian.Uint16(at[2:]), binary.LittleEndian.Uint16(at[4:])}
			for j := range c {
				require.Less(t, int(c[j]), m.Corners)
				edges[[2]uint16{c[j], c[(j+1)%3]}]++
			}
		}
		for e, n := range edges {
			require.Equal(t, 1, n, "mesh %d", k)
			require.Equal(t, 1, edges[[2]uint16{e[1], e[0]}], "mesh %d", k)
		}
		for _, step := range m.Step {
			require.Less(t, step, 0.04, "corners keep to a few hundredths of a millimetre")
		}
	}
}

func TestWhatTurnsIsFoundFromTheFastenings(t *testing.T) {
	s := demoScene(t)
	require.Equal(t, "Turn the fore carriage", s.Moving[0].Name)
	require.Equal(t, "Swing the tailboard", s.Moving[1].Name)
	turns := map[string][]int{}
	for _, th := range s.Things {
		turns[th.ID] = append(turns[th.ID], th.Turns)
	}
	for id, want := range map[string][]int{
		"fore-axle": {0}, "fore-bed": {0}, "sand-board": {0}, "circle-low": {0}, "fore-felloe-near-1": {0}, "fore-tyre-off": {0},
		"circle-top": {-1}, "fore-bolster": {-1}, "near-reach": {-1}, "hind-felloe-near-1": {-1}, "cross-bar-3": {-1},
		"tailboard": {1}, "tail-bar": {1}, "near-hinge": {-1, 1}, "fastening 1": {-1}, "fastening 2 near": {0}, "fastening 29 off": {1}, "fastening 28 near": {-1},
	} {
		require.Equal(t, want, turns[id], id)
	}
}

// What lies on something is lifted higher than it and goes on after it.
func TestThingsLiftInTheOrderTheyLie(t *testing.T) {
	m := demoModel(t)
	s := demoScene(t)
	lift, step := map[string]float64{}, map[string]int{}
	for _, th := range s.Things {
		lift[th.ID], step[th.ID] = th.Lift[2], th.Step
	}
	checked := 0
	for _, f := range m.Vehicle.Fastenings {
		if f.Way[2] == 0 {
			continue
		}
		for k := range len(f.Through) - 1 {
			over, under := f.Through[k].ID, f.Through[k+1].ID
			if f.Way[2] > 0 {
				over, under = under, over
			}
			require.Greater(t, lift[over], lift[under], "%s over %s", over, under)
			require.Greater(t, step[over], step[under], "%s after %s", over, under)
			checked++
		}
	}
	require.Greater(t, checked, 60)
	require.Greater(t, s.Steps, 8)
}

func TestOwnOrderAndMovementsAreTaken(t *testing.T) {
	m := demoModel(t)
	m.Order = [][]string{{"hind-axle"}, {"hind-bed", "fore-axle"}}
	m.Moving = []page.Moving{{Name: "Lower the seat", Way: [3]float64{0, 1, 0}, Members: []string{"seat-board"}, To: 1}}
	var b bytes.Buffer
	require.NoError(t, page.Write(&b, m))
	var s sceneData
	require.NoError(t, json.Unmarshal([]byte(jsonOf(t, b.String())), &s))
	require.Len(t, s.Moving, 1)
	require.Equal(t, 2, s.Steps)
	for _, th := range s.Things {
		switch th.ID {
		case "hind-bed":
			require.Equal(t, 1, th.Step)
		case "seat-board":
			require.Equal(t, 0, th.Turns)
		case "fore-bed":
			require.Equal(t, -1, th.Turns)
		}
	}
	require.Contains(t, b.String(), "Lower the seat")
}

// A drawing is a whole SVG file (XML 1.0) with the title a reader needs.
func TestDrawingsAreWholeFiles(t *testing.T) {
	found := regexp.MustCompile(`<img src="data:image/svg&#43;xml;base64,([^"]*)"`).FindAllStringSubmatch(demoPage(t), -1)
	require.Len(t, found, 3)
	for _, f := range found {
		svg, err := base64.StdEncoding.DecodeString(strings.ReplaceAll(f[1], "&#43;", "+"))
		require.NoError(t, err)
		d := xml.NewDecoder(bytes.NewReader(svg))
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err)
		}
		require.Contains(t, string(svg), "<title>Orchard wagon: ")
	}
}

// Every size of every item stands in the record in the words of the list of
// sizes, with how it is known and a reason.
func TestTheRecordTellsEverySize(t *testing.T) {
	m := demoModel(t)
	text := demoPage(t)
	for _, it := range m.Vehicle.Items {
		for _, d := range it.Sizes {
			require.Contains(t, text, "<td>"+d.Words(m.Vehicle.Unit)+"</td>", "%s %s", it.Name, d.Name)
		}
	}
	sizes := 0
	for _, it := range m.Vehicle.Items {
		sizes += len(it.Sizes)
	}
	require.Equal(t, sizes, strings.Count(text, "<summary>Why"))
	for _, f := range m.Vehicle.Findings {
		require.Contains(t, text, strings.NewReplacer("'", "&#39;", "\"", "&#34;").Replace(f.Says))
	}
	require.Contains(t, text, m.Vehicle.Hash)
	lines := strings.Count(string(m.Survey), "\n")
	require.GreaterOrEqual(t, strings.Count(text, `<li id="line-`), lines)
}

func TestPhotosAreKeptInThePage(t *testing.T) {
	m := demoModel(t)
	v := *m.Vehicle
	v.Irons = append([]*vehicle.Iron(nil), v.Irons...)
	shown := *v.Irons[0]
	shown.Photos = []string{"axle.png", "lost.jpg"}
	v.Irons[0] = &shown
	m.Vehicle = &v
	png := []byte("\x89PNG\r\n\x1a\n\x00\x00")
	m.Photos = []page.Photo{{Name: "axle.png", Data: png}}
	var b bytes.Buffer
	require.NoError(t, page.Write(&b, m))
	require.Contains(t, b.String(), "data:image/png;base64,"+base64.StdEncoding.EncodeToString(png))
	require.Contains(t, b.String(), "Photos not at hand</dt><dd><bdi>lost.jpg</bdi>")
	m.Photos[0].Data = []byte("<svg onload=alert(1)>")
	require.ErrorContains(t, page.Write(&b, m), "no JPEG and no PNG")
}
