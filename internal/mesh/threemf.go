package mesh

import (
	"archive/zip"
	"bufio"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"
	"unicode"

	"lostwood/parts/form"
)

// An Object is one part in a 3MF file.
type Object struct {
	Mesh   *Mesh
	Name   string // part and hand, as the maker should read it
	Number string // part number
}

// A Package is the parts of one 3MF file and what it says of them all.
type Package struct {
	Issue  string
	Survey string // hash of the survey the sizes came from
	Parts  []Object
}

// The fixed parts of a package, and names from the 3MF core specification 1.4
// and the Open Packaging Conventions.
const (
	contentTypes = xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
		`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
		`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`
	relationships = xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
		`<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`
	modelOpen = xml.Header + `<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">` +
		"\n" + `<metadata name="Application">Lostwood</metadata>` + "\n"
)

// between is the room left between the parts of one file.
const between = 20

// Write3MF writes the parts as one 3MF package in millimetres, an object a
// part, issue and survey once for all in the one field that every reader
// shows, set out side by side so that none lies in another. The same parts
// give the same bytes. Nothing is written when a part cannot be.
func Write3MF(w io.Writer, all Package) error {
	if len(all.Parts) == 0 {
		return errors.New("a 3MF file needs a part to hold")
	}
	if err := printing(all.Issue, all.Survey); err != nil {
		return err
	}
	for _, p := range all.Parts {
		if err := p.check(); err != nil {
			return err
		}
	}
	z := zip.NewWriter(w)
	for _, f := range []struct {
		name  string
		write func(*bufio.Writer)
	}{
		{"[Content_Types].xml", func(b *bufio.Writer) { b.WriteString(contentTypes) }},
		{"_rels/.rels", func(b *bufio.Writer) { b.WriteString(relationships) }},
		{"3D/3dmodel.model", func(b *bufio.Writer) { model(b, &all) }},
	} {
		// a fixed day, so that the same parts give the same bytes
		out, err := z.CreateHeader(&zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)})
		if err != nil {
			return err
		}
		b := bufio.NewWriterSize(out, 1<<16)
		f.write(b)
		if err := b.Flush(); err != nil { // bufio keeps the first error till here
			return err
		}
	}
	return z.Close()
}

func (p *Object) check() error {
	if err := printing(p.Name, p.Number); err != nil {
		return err
	}
	if len(p.Mesh.Triangles) == 0 {
		return &HeaderError{fmt.Sprintf("the part %q has no triangles", p.Name), "mesh it first"}
	}
	if err := p.Mesh.writable(); err != nil {
		return fmt.Errorf("part %q: %w", p.Name, err)
	}
	return nil
}

// printing refuses texts that a maker could not read.
func printing(texts ...string) error {
	for _, s := range texts {
		if i := strings.IndexFunc(s, func(r rune) bool { return !unicode.IsPrint(r) || r == unicode.ReplacementChar }); i >= 0 {
			return &HeaderError{fmt.Sprintf("%q holds a character that does not print", s), "leave it out"}
		}
	}
	return nil
}

func model(b *bufio.Writer, all *Package) {
	parts := all.Parts
	b.WriteString(modelOpen)
	fmt.Fprintf(b, `<metadata name="Description">issue %s, survey %s</metadata>`+"\n<resources>\n", escaped(all.Issue), escaped(all.Survey))
	for i := range parts {
		object(b, i+1, &parts[i])
	}
	b.WriteString("</resources>\n<build>\n")
	var along form.Length
	for i := range parts {
		box := parts[i].Mesh.Bounds()
		fmt.Fprintf(b, `<item objectid="%d" transform="1 0 0 0 1 0 0 0 1 %s %s %s"/>`+"\n",
			i+1, number(-box.Min.X), number(along-box.Min.Y), number(-box.Min.Z))
		along += box.Max.Y - box.Min.Y + between
	}
	b.WriteString("</build>\n</model>\n")
}

func object(b *bufio.Writer, id int, p *Object) {
	fmt.Fprintf(b, `<object id="%d" type="model" name="%s" partnumber="%s">`+"\n<mesh>\n<vertices>\n", id, escaped(p.Name), escaped(p.Number))
	for _, v := range p.Mesh.Vertices {
		fmt.Fprintf(b, `<vertex x="%s" y="%s" z="%s"/>`+"\n", number(v.X), number(v.Y), number(v.Z))
	}
	b.WriteString("</vertices>\n<triangles>\n")
	for _, t := range p.Mesh.Triangles {
		fmt.Fprintf(b, `<triangle v1="%d" v2="%d" v3="%d"/>`+"\n", t[0], t[1], t[2])
	}
	b.WriteString("</triangles>\n</mesh>\n</object>\n")
}

// number writes a length to the digits that STL would keep, so that the two
// files of a part agree.
func number(l form.Length) string {
	return strconv.FormatFloat(float64(float32(l))+0, 'g', -1, 32)
}

func escaped(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) // a Builder takes all that it is given
	return b.String()
}
