package drawing

import (
	"io"

	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
)

func markOf(v *vehicle.Vehicle, name string) sheet.Mark {
	of := v.Name + ", issue " + v.Issue
	return sheet.Mark{Title: name + ", " + of, Subject: of + ", survey " + surveyMark(v), Day: v.Date}
}

// WritePDF writes the sheets of one drawing, whole or not at all. The same
// sheets give the same bytes.
func WritePDF(w io.Writer, v *vehicle.Vehicle, name string, all []sheet.Sheet) error {
	letters, err := sheet.NewLettering()
	if err != nil {
		return err
	}
	return sheet.WritePDF(w, letters, markOf(v, name), all)
}

// WriteSVG writes one sheet of a drawing as SVG.
func WriteSVG(w io.Writer, v *vehicle.Vehicle, name string, s sheet.Sheet) error {
	letters, err := sheet.NewLettering()
	if err != nil {
		return err
	}
	return sheet.WriteSVG(w, letters, markOf(v, name), s)
}

// WritePart writes the drawing of an item as a PDF.
func WritePart(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item, m Making) error {
	all, err := Part(v, item, m)
	if err != nil {
		return err
	}
	return WritePDF(w, v, v.Stem(item)+" drawing", all)
}

// WriteGeneral writes the general arrangement as a PDF.
func WriteGeneral(w io.Writer, v *vehicle.Vehicle, m Making) error {
	all, err := General(v, m)
	if err != nil {
		return err
	}
	return WritePDF(w, v, v.Slug+" general arrangement", all)
}
