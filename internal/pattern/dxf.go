package pattern

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"sync"

	"github.com/yofu/dxf"
	"github.com/yofu/dxf/block"
	"github.com/yofu/dxf/color"
	"github.com/yofu/dxf/drawing"
	"github.com/yofu/dxf/insunit"
	"github.com/yofu/dxf/object"
	"github.com/yofu/dxf/table"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// WorkedFaces are the faces of an item that a router's file is made for: those
// with work to be done from them, and those sawn to a shape.
func WorkedFaces(item *vehicle.Item) []parts.Face {
	s := item.Stick
	var out []parts.Face
	for _, f := range parts.Faces() {
		if outline.Entered(s, f) || shapedOn(s, f) {
			out = append(out, f)
		}
	}
	return out
}

// shapedOn reports whether a part is sawn to a shape that a face shows, where
// neither it nor the one opposite is worked: of the two, a true face, or the first.
func shapedOn(s parts.Stick, f parts.Face) bool {
	if s.Body.Blank().Making == parts.Steamed || f == parts.FirstEnd || f == parts.SecondEnd {
		return false
	}
	other := f.Opposite()
	if s.Body.Outline(f).IsRectangle() || outline.Entered(s, f) || outline.Entered(s, other) {
		return false
	}
	isTrue := func(g parts.Face) bool { return g == s.FaceSide || g == s.FaceEdge }
	return isTrue(f) || !isTrue(other) && f < other
}

// A FaceError says that a face has no work to be done from it.
type FaceError struct{ Item, Face string }

func (e *FaceError) Error() string {
	return fmt.Sprintf("%s: nothing is worked from its %s, so there is no file to make for it", e.Item, e.Face)
}

// WriteDXF writes one face of an item for a router, seen square on to that face,
// with the origin at the corner of the face's own frame (parts.Face): release
// AC1021, millimetres, arcs and circles true, outlines closed. Each kind of work
// and depth has its own layer with the depth in its name; words are on TEXT, and
// leaders on GUIDE. Work that only shows on this face is on layers NOT_CUT_HERE.
//
// Where a cutter is named, inside corners have its radius, and what is left to
// hand is told on TEXT (see [WriteHandWork]); without one they are square.
func WriteDXF(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item, f parts.Face, c Cutter) error {
	if err := c.check(); err != nil {
		return err
	}
	if err := shaped(item); err != nil {
		return fmt.Errorf("router's file of %s: %w", item.Name, err)
	}
	if !slices.Contains(WorkedFaces(item), f) {
		return &FaceError{item.Name, faceName(item, f)}
	}
	d, err := facePlan(v, item, f, c)
	if err != nil {
		return fmt.Errorf("router's file of %s: %w", item.Name, err)
	}
	var out bytes.Buffer
	if err := writeDXF(&out, d); err != nil {
		return fmt.Errorf("router's file of %s: %w", item.Name, err)
	}
	_, err = out.WriteTo(w)
	return err
}

func faceName(item *vehicle.Item, f parts.Face) string {
	if f < parts.Upper || f > parts.SecondEnd {
		return "seventh face" // a part has six
	}
	return item.FaceWords(f)
}

// facePlan draws one face with its words, the face's own origin at 0, 0.
func facePlan(v *vehicle.Vehicle, item *vehicle.Item, f parts.Face, c Cutter) (outline.Drawing, error) {
	letters, err := newLettering()
	if err != nil {
		return outline.Drawing{}, err
	}
	in := *v // the file is in millimetres, so its words are too
	in.Unit = quantity.Millimetres
	l := &layout{teller: teller{&in, item}, lettering: letters, paper: Paper{Name: "whole", Feed: unbounded}, only: &f, cutter: c}
	if err := l.settle(); err != nil {
		return outline.Drawing{}, err
	}
	d := l.drawing
	box, _ := d.Bounds()
	d.Add(l.faceTitle(f, form.Point{X: box.Min.X, Y: box.Min.Y - 12}))
	at := l.faces.Laid[0].At
	return once(d.Shifted(form.Point{X: -at.X, Y: -at.Y})), nil
}

// faceTitle says what the file is, under the face.
func (l *layout) faceTitle(f parts.Face, at form.Point) outline.Drawing {
	var d outline.Drawing
	long, wide, deep := l.item.Stick.Body.Box()
	corners := "inside corners drawn square: leave them for hand"
	if l.cutter > 0 {
		corners = fmt.Sprintf("inside corners drawn for a cutter of %.4g mm", Length(l.cutter).Millimetres())
	}
	say := []string{
		l.number() + " · " + l.stock(),
		l.issue(),
		"millimetres, full size · " + l.item.FaceWords(f) + " seen from outside the wood, " + l.leftEnd(f) + " to the left",
		fmt.Sprintf("finished %.1f x %.1f x %.1f mm · %s", long.Millimetres(), wide.Millimetres(), deep.Millimetres(), corners),
	}
	for _, h := range l.forHand {
		say = append(say, "for hand: "+h.ref+": "+h.words)
	}
	for i, words := range say {
		d.Texts = append(d.Texts, l.text(form.Point{X: at.X, Y: at.Y - Length(i)*6}, words, large, outline.Plain))
	}
	return d
}

// leftEnd names what lies to the left of a face as it is drawn.
func (l *layout) leftEnd(f parts.Face) string {
	switch f {
	case parts.FirstEnd:
		return l.item.FaceWords(parts.SecondSide)
	case parts.SecondEnd:
		return l.item.FaceWords(parts.FirstSide)
	}
	return l.item.FaceWords(parts.FirstEnd)
}

// once leaves out every line that is drawn already on the same layer.
func once(d outline.Drawing) outline.Drawing {
	seen := map[string]bool{}
	fresh := func(key string) bool {
		was := seen[key]
		seen[key] = true
		return !was
	}
	out := outline.Drawing{Texts: d.Texts}
	for _, p := range d.Paths {
		if fresh(p.Layer.Name() + pathKey(p)) {
			out.Paths = append(out.Paths, p)
		}
	}
	for _, c := range d.Circles {
		if fresh(fmt.Sprintf("%s o %.4f %.4f %.4f", c.Layer.Name(), c.Centre.X, c.Centre.Y, c.Diameter)) {
			out.Circles = append(out.Circles, c)
		}
	}
	return out
}

// pathKey is alike for paths alike to a ten-thousandth of a millimetre.
func pathKey(p outline.Path) string {
	var b bytes.Buffer
	for _, s := range p.Segments() {
		fmt.Fprintf(&b, " %.4f %.4f %.6f %.4f %.4f", s.A.X, s.A.Y, s.Bulge, s.B.X, s.B.Y)
	}
	return b.String()
}

// The library keeps its standard layer, style and line types once for all
// drawings and numbers them anew for each, so only one may be written at a time.
var oneDXF sync.Mutex

func writeDXF(w io.Writer, d outline.Drawing) error {
	oneDXF.Lock()
	defer oneDXF.Unlock()
	doc := dxf.NewDrawing()
	mend(doc)
	h := doc.Header()
	h.Version = "AC1021" // words in UTF-8
	h.InsUnit, h.InsLUnit = insunit.Millimeters, insunit.Decimal
	h.LtScale = 10
	if b, ok := d.Bounds(); ok {
		h.ExtMin = []float64{float64(b.Min.X), float64(b.Min.Y), 0}
		h.ExtMax = []float64{float64(b.Max.X), float64(b.Max.Y), 0}
	}
	for _, name := range layerNames(d) {
		on := onLayer(d, name)
		if _, err := doc.AddLayer(name, color.White, lineType(on), true); err != nil {
			return err
		}
		if err := draft(doc, on); err != nil {
			return err
		}
	}
	_, err := doc.WriteTo(w)
	return err
}

// mend takes out of a new drawing what readers complain of: a second paper layout
// that nothing owns, and a dictionary of groups without an owner.
func mend(doc *drawing.Drawing) {
	records := table.NewTable("BLOCK_RECORD")
	var blocks block.Blocks
	for _, name := range []string{"*Model_Space", "*Paper_Space"} {
		records.Add(table.NewBlockRecord(name))
		blocks = blocks.Add(block.NewBlock(name, ""))
	}
	tables := doc.Sections[drawing.TABLES].(table.Tables)
	tables[len(tables)-1] = records
	doc.Sections[drawing.BLOCKS] = blocks
	root := object.NewDictionary()
	styles, normal := object.NewAcDbDictionaryWDFLT(root)
	root.AddItem("ACAD_PLOTSTYLENAME", styles)
	doc.Sections[drawing.OBJECTS] = object.New().Add(root).Add(styles).Add(normal)
	doc.PlotStyle = normal
	doc.Layers["0"].SetPlotStyle(normal)
}

// lineType is dashed for a layer of hidden lines.
func lineType(d outline.Drawing) *table.LineType {
	for _, p := range d.Paths {
		if p.Pen == outline.Below {
			return table.LT_HIDDEN
		}
	}
	for _, c := range d.Circles {
		if c.Pen == outline.Below {
			return table.LT_HIDDEN
		}
	}
	return table.LT_CONTINUOUS
}

// draft draws on the current layer.
func draft(doc *drawing.Drawing, d outline.Drawing) error {
	for _, p := range d.Paths {
		var at [][]float64
		for _, v := range p.Run {
			at = append(at, []float64{float64(v.X), float64(v.Y)})
		}
		line, err := doc.LwPolyline(p.Closed, at...)
		if err != nil {
			return err
		}
		for i, v := range p.Run {
			if p.Closed || i+1 < len(p.Run) {
				line.Bulges[i] = v.Bulge
			}
		}
	}
	for _, c := range d.Circles {
		if _, err := doc.Circle(float64(c.Centre.X), float64(c.Centre.Y), 0, float64(c.Diameter/2)); err != nil {
			return err
		}
	}
	for _, t := range d.Texts {
		if _, err := doc.Text(t.Words, float64(t.At.X), float64(t.At.Y), 0, float64(t.Height)); err != nil {
			return err
		}
	}
	return nil
}
