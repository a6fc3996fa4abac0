// Command bundle builds the page's program, app/bundle.js, from app/src and the
// modules that app/package-lock.json names. Run it by `go generate` after
// `npm ci` in app. The same sources give the same bytes.
package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/evanw/esbuild/pkg/api"
)

func main() {
	if err := write("app"); err != nil {
		fmt.Fprintln(os.Stderr, "bundle:", err)
		os.Exit(1)
	}
}

func write(app string) error {
	data, err := build(app)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(app, "bundle.js"), data, 0o644)
}

// build makes the bundle of an app folder, under the licence of what is in it.
func build(app string) ([]byte, error) {
	root, err := filepath.Abs(app)
	if err != nil {
		return nil, err
	}
	licence, err := os.ReadFile(filepath.Join(root, "node_modules", "three", "LICENSE"))
	if err != nil {
		return nil, fmt.Errorf("the modules are not here; run npm ci in %s: %w", app, err)
	}
	r := api.Build(api.BuildOptions{
		AbsWorkingDir: root,
		EntryPoints:   []string{"src/main.js"},
		Bundle:        true,
		Format:        api.FormatIIFE,
		Target:        api.ES2022,
		Charset:       api.CharsetUTF8,
		LegalComments: api.LegalCommentsNone, // the whole licence stands in the banner
		Banner:        map[string]string{"js": "/* In this program is three.js:\n\n" + string(licence) + "*/"},

		MinifyWhitespace: true, MinifyIdentifiers: true, MinifySyntax: true,
	})
	var faults []error
	for _, m := range r.Errors {
		faults = append(faults, errors.New(m.Text))
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	return r.OutputFiles[0].Contents, nil
}
