package page_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// The page passes every rule of axe-core for WCAG 2.2 A and AA and for good
// practice, light and dark, with a part picked and the measuring open.
func TestAccessible(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join("app", "node_modules", "axe-core", "axe.min.js"))
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("axe-core is not here; run npm ci in internal/page/app")
		}
		t.Skip("axe-core is not here; run npm ci in internal/page/app to check how the page serves all readers")
	}
	file := demoFile(t)
	// What the dark page does not share with the light one is its colours.
	for scheme, rules := range map[string]string{"light": "", "dark": "runOnly: ['color-contrast'], "} {
		t.Run(scheme, func(t *testing.T) {
			b := browse(t, 1280, 800)
			_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
				Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}, {Name: "prefers-reduced-motion", Value: "reduce"}},
			})
			require.NoError(t, err)
			b.open(file, "#see:view=known&part=near-reach&cut=x,500")
			b.settle()
			js[bool](b, `(document.getElementById('measure').click(), document.querySelector('#chosen details').open = true, true)`)
			b.settle()
			b.shot("axe-" + scheme)
			b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
			found := js[[]string](b, `axe.run({`+rules+`resultTypes: ['violations']}).then(r => r.violations.map(v => v.id + ': ' + v.help + ' ' + v.nodes.slice(0, 3).map(n => n.html + ' ' + n.failureSummary).join(' | ')))`)
			require.Empty(t, found)
		})
	}
}
