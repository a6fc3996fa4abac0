package page

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"html/template"
	"io"
)

//go:embed app/bundle.js
var program []byte

//go:embed app/page.css
var style []byte

//go:embed page.gohtml
var text string

// A NothingError tells that there is no vehicle to show.
type NothingError struct{}

func (*NothingError) Error() string { return "there is no vehicle to make a page of" }

// Write writes the page as one HTML file, which asks for nothing outside itself.
// The same model gives the same bytes.
func Write(w io.Writer, m Model) error {
	if m.Vehicle == nil {
		return &NothingError{}
	}
	s, err := newStage(m)
	if err != nil {
		return err
	}
	r, err := s.record()
	if err != nil {
		return err
	}
	data, err := json.Marshal(s.scene) // <, > and & are written as \u003c and so on: it cannot end its element
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := lay(&b, r, data); err != nil {
		return err
	}
	_, err = w.Write(b.Bytes())
	return err
}

// lay puts the page together. Style and program stand under their hashes: nothing
// else that got in would be let run.
func lay(b *bytes.Buffer, r *record, data []byte) error {
	t, err := template.New("page").Funcs(template.FuncMap{"inc": func(i int) int { return i + 1 }}).Parse(text)
	if err != nil {
		return errors.Join(errors.New("the page's own template is faulty"), err)
	}
	fmt.Fprintf(b, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"+
		"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; base-uri 'none'; form-action 'none'; img-src data: blob:; "+
		"style-src '%s'; script-src '%s'\">\n", hash(style), hash(program))
	if err := t.ExecuteTemplate(b, "head", r); err != nil {
		return err
	}
	b.WriteString("<style>")
	b.Write(style)
	b.WriteString("</style>\n</head>\n")
	if err := t.ExecuteTemplate(b, "body", r); err != nil {
		return err
	}
	b.WriteString("<script type=\"application/json\" id=\"scene\">")
	b.Write(data)
	b.WriteString("</script>\n<script>")
	b.Write(program)
	b.WriteString("</script>\n</body>\n</html>\n")
	return nil
}

// hash is how a Content-Security-Policy (W3C, level 3) names a text.
func hash(text []byte) string {
	sum := sha256.Sum256(text)
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

func dataAddress(kind string, data []byte) template.URL {
	return template.URL("data:" + kind + ";base64," + base64.StdEncoding.EncodeToString(data)) // base64 has no mark that could end it
}
