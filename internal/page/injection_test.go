package page_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/page"
	"lostwood/internal/vehicle"
)

// Names that would do harm in a careless page, and what a reader must see of them.
var hostile = []string{
	`</script><script>window.harmed = 1</script>`,
	`"><img src=x onerror="window.harmed = 1">`,
	`'; window.harmed = 1; //`,
	`<!-- <style>body{display:none}</style>`,
	`{{.Hash}} ${window.harmed = 1} &lt;b&gt;`,
	"\u202egnorw yaw eht\u202c and \u2066inside\u2069\u2028\u2029",
	strings.Repeat("Donaudampfschifffahrt", 12),
	"javascript:window.harmed=1",
}

// spoiled is the demo's vehicle with hostile words wherever a survey has words.
func spoiled(t *testing.T) page.Model {
	t.Helper()
	m := demoModel(t)
	v := *m.Vehicle
	k := 0
	next := func() string { k++; return hostile[k%len(hostile)] }
	v.Name, v.Issue = hostile[0]+hostile[5], hostile[1]
	parts := map[*vehicle.Part]*vehicle.Part{}
	v.Parts = nil
	for _, p := range m.Vehicle.Parts {
		q := *p
		q.Name, q.Kept, q.Timber = next(), next(), p.Timber+next()
		parts[p] = &q
		v.Parts = append(v.Parts, &q)
	}
	v.Items = nil
	for _, it := range m.Vehicle.Items {
		c := *it
		c.Name, c.Timber, c.Notes = next(), next(), []string{next()}
		c.Parts = nil
		for _, p := range it.Parts {
			parts[p].Item = &c
			c.Parts = append(c.Parts, parts[p])
		}
		v.Items = append(v.Items, &c)
	}
	v.Irons = nil
	for _, i := range m.Vehicle.Irons {
		c := *i
		c.Name, c.Condition, c.Where, c.Marks, c.Note, c.Photos = next(), next(), next(), next(), next(), []string{next()}
		v.Irons = append(v.Irons, &c)
	}
	v.Fastenings = nil
	for _, f := range m.Vehicle.Fastenings {
		c := *f
		c.Title = next()
		v.Fastenings = append(v.Fastenings, &c)
	}
	v.Findings = append([]vehicle.Finding{{Concern: vehicle.Contradiction, Subject: hostile[0], Says: hostile[1]}}, v.Findings...)
	m.Vehicle = &v
	m.Survey = []byte(strings.Join(hostile, "\n") + "\xff\xfe")
	m.Version = hostile[0]
	m.Cutting, m.Totals = nil, nil
	m.Files = func(*vehicle.Item) []page.Link { return []page.Link{{Words: hostile[1], Path: hostile[7]}} }
	return m
}

func TestWordsOfTheSurveyStayWords(t *testing.T) {
	file := written(t, spoiled(t))
	for name, size := range windows {
		t.Run(name, func(t *testing.T) {
			b := browse(t, size[0], size[1])
			b.open(file, "#see:view=concern")
			b.settle()
			b.choose("view", "timber")
			b.choose("pick", "near-reach")
			b.choose("pick", "hind-plate")
			js[bool](b, `(document.getElementById('measure').click(), true)`)
			b.choose("from-thing", "near-sill")
			b.settle()
			b.shot("hostile-" + name)
			require.False(t, js[bool](b, `'harmed' in window`))
			require.Equal(t, 2, js[int](b, `document.scripts.length`))
			require.Equal(t, 1, js[int](b, `document.querySelectorAll('style').length`))
			require.Zero(t, js[int](b, `[...document.querySelectorAll('*')].filter(e => [...e.attributes].some(a => a.name.startsWith('on'))).length`))
			require.Zero(t, js[int](b, `[...document.images].filter(i => !i.src.startsWith('data:image/')).length`))
			require.Zero(t, js[int](b, `[...document.links].filter(a => !/^(file|data):/.test(a.href)).length`))
			require.Equal(t, hostile[0]+hostile[5], js[string](b, `document.querySelector('h1').textContent`), "it is shown as it was written")
			require.Contains(t, js[string](b, `document.getElementById('chosen').textContent`), hostile[0][:9])
			require.True(t, js[bool](b, `document.documentElement.scrollWidth <= innerWidth`), "long words are broken")
			require.True(t, js[bool](b, `(r => r.scrollWidth <= r.clientWidth + 1)(document.getElementById('record'))`), "long words are broken")
			// A mark that turns the direction of reading ends with the name it stands in.
			require.True(t, js[bool](b, `(e => getComputedStyle(e).unicodeBidi === 'isolate')(document.querySelector('h1 bdi'))`))
			b.quiet(file)
		})
	}
}

func TestNothingOfTheSurveyIsMarkup(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, page.Write(&b, spoiled(t)))
	text := b.String()
	require.Equal(t, 2, strings.Count(text, "<script"))
	require.Equal(t, 2, strings.Count(text, "</script"))
	require.NotContains(t, text, "<img src=x")
	require.NotContains(t, text, `href="javascript`)
	require.NotRegexp(t, regexp.MustCompile("\u2028|\u2029"), jsonOf(t, text))
	require.Contains(t, text, `&lt;/script&gt;`)
}

// jsonOf is the scene's data within a page.
func jsonOf(t *testing.T, text string) string {
	t.Helper()
	_, after, ok := strings.Cut(text, `id="scene">`)
	require.True(t, ok)
	data, _, ok := strings.Cut(after, "</script>")
	require.True(t, ok)
	return data
}
