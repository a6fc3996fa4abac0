package page_test

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// A browser is one window on a page, and what it complained of and asked for.
type browser struct {
	t   *testing.T
	ctx context.Context

	mu         sync.Mutex
	complaints []string
	asked      []string
}

// A sight is whether a browser can draw in three dimensions.
type sight int

const (
	withWebGL sight = iota
	withoutWebGL
)

// started are the browsers of this run: one for each sight, a window for each test.
var started struct {
	sync.Mutex
	ctx  [2]context.Context
	stop []func()
}

func TestMain(m *testing.M) {
	code := m.Run()
	for _, stop := range started.stop {
		stop()
	}
	os.Exit(code)
}

// chromium is a running browser. Where there is none the test is skipped, but in
// CI that is a failure.
func chromium(t *testing.T, s sight) context.Context {
	t.Helper()
	started.Lock()
	defer started.Unlock()
	if started.ctx[s] != nil {
		return started.ctx[s]
	}
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if found, err := exec.LookPath(name); err == nil && path == "" {
			path = found
		}
	}
	if path == "" {
		if os.Getenv("CI") == "true" {
			t.Fatal("no Chromium on this machine, and CI needs it")
		}
		t.Skip("no Chromium on this machine: the page cannot be looked at")
	}
	profile, err := os.MkdirTemp("", "lostwood-page-")
	require.NoError(t, err)
	options := []chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path), chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck, chromedp.Headless, chromedp.NoSandbox,
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.UserDataDir(profile),
	}
	if s == withWebGL {
		options = append(options, chromedp.Flag("enable-unsafe-swiftshader", true))
	} else {
		options = append(options, chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-webgl", true), chromedp.Flag("disable-3d-apis", true))
	}
	alloc, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, cancel := chromedp.NewContext(alloc)
	require.NoError(t, chromedp.Do(ctx))
	started.ctx[s] = ctx
	started.stop = append(started.stop, func() { cancel(); stop(); _ = os.RemoveAll(profile) })
	return ctx
}

// browse opens a window of that size.
func browse(t *testing.T, wide, high int64) *browser { return browseWith(t, withWebGL, wide, high) }

func browseWith(t *testing.T, s sight, wide, high int64) *browser {
	t.Helper()
	ctx, cancel := chromedp.NewContext(chromium(t, s))
	t.Cleanup(cancel)
	b := &browser{t: t, ctx: ctx}
	require.NoError(t, chromedp.Listen(ctx, b.hear))
	_, err := chromedp.Call(ctx, network.Enable, network.EnableParams{})
	require.NoError(t, err)
	b.do(chromedp.EmulateViewport(wide, high))
	return b
}

// hear keeps what the browser complains of and what it asks for.
func (b *browser) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		b.complaints = append(b.complaints, fmt.Sprintf("%+v", e.ExceptionDetails))
	case *runtime.EventConsoleAPICalled:
		var words []string
		for _, a := range e.Args {
			words = append(words, fmt.Sprint(string(a.Value), a.Description))
		}
		if kind := fmt.Sprint(e.Type); kind == "error" || kind == "warning" || kind == "assert" {
			b.complaints = append(b.complaints, kind+": "+strings.Join(words, " "))
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			b.complaints = append(b.complaints, e.Entry.Text)
		}
	case *network.EventRequestWillBeSent:
		if a := e.Request.URL; !strings.HasPrefix(a, "data:") && !strings.HasPrefix(a, "blob:") && a != "about:blank" {
			b.asked = append(b.asked, a)
		}
	}
}

func (b *browser) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, time.Minute)
	defer cancel()
	require.NoError(b.t, chromedp.Do(ctx, steps...))
}

// open goes to a page that stands in a file.
func (b *browser) open(file, fragment string) {
	b.t.Helper()
	address := url.URL{Scheme: "file", Path: file}
	b.do(chromedp.Navigate(address.String() + fragment))
}

// settle waits until the picture has come to rest.
func (b *browser) settle() {
	b.t.Helper()
	b.until(`document.getElementById('stage').dataset.first !== undefined && document.getElementById('stage').dataset.rest === 'yes'`)
}

// until waits for something to be so in the page.
func (b *browser) until(expression string) {
	b.t.Helper()
	deadline := time.Now().Add(40 * time.Second)
	for !js[bool](b, expression) {
		if time.Now().After(deadline) {
			b.t.Fatalf("never came to be: %s\n%v", expression, b.complaints)
		}
		b.do(chromedp.Sleep(40 * time.Millisecond))
	}
}

// js is what an expression comes to in the page.
func js[T any](b *browser, expression string) T {
	b.t.Helper()
	out, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	require.NoError(b.t, err, expression)
	return out
}

// choose sets a list or a slider as a reader does.
func (b *browser) choose(id, value string) {
	b.t.Helper()
	js[bool](b, fmt.Sprintf(`(() => { const e = document.getElementById(%q); e.value = %q; e.dispatchEvent(new Event('input', {bubbles: true})); e.dispatchEvent(new Event('change', {bubbles: true})); return true; })()`, id, value))
}

func (b *browser) text(selector string) string {
	b.t.Helper()
	return js[string](b, fmt.Sprintf(`document.querySelector(%q)?.innerText ?? ''`, selector))
}

// quiet checks that nothing was complained of and that only the page itself was asked for.
func (b *browser) quiet(file string) {
	b.t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	require.Empty(b.t, b.complaints)
	require.NotEmpty(b.t, b.asked, "the page itself was asked for")
	for _, a := range b.asked {
		u, err := url.Parse(a)
		require.NoError(b.t, err)
		require.Equal(b.t, "file", u.Scheme, a)
		require.Equal(b.t, file, u.Path)
	}
}

// shot keeps a picture of the window where LOSTWOOD_SHOTS names a folder.
func (b *browser) shot(name string) {
	b.t.Helper()
	folder := os.Getenv("LOSTWOOD_SHOTS")
	if folder == "" {
		return
	}
	png, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
	require.NoError(b.t, err)
	require.NoError(b.t, os.MkdirAll(folder, 0o755))
	require.NoError(b.t, os.WriteFile(filepath.Join(folder, name+".png"), png, 0o644))
}
