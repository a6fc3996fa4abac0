package drawing

import (
	"fmt"
	"io"

	"lostwood/internal/sheet"
	"lostwood/internal/vehicle"
)

func markOf(v *vehicle.Vehicle, what string) sheet.Mark {
	return sheet.Mark{Title: what + ", " + v.Name + ", issue " + v.Issue, Subject: v.Name + ", issue " + v.Issue + ", survey " + surveyMark(v), Day: v.Date}
}

// WritePart writes the drawing of an item as a PDF, whole or not at all. The same
// vehicle gives the same bytes.
func WritePart(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item, m Making) error {
	all, err := Part(v, item, m)
	if err != nil {
		return err
	}
	return writePDF(w, markOf(v, v.Stem(item)), all)
}

func writePDF(w io.Writer, m sheet.Mark, all []sheet.Sheet) error {
	letters, err := sheet.NewLettering()
	if err != nil {
		return err
	}
	return sheet.WritePDF(w, letters, m, all)
}

// WriteSVG writes one sheet of a drawing as SVG.
func WriteSVG(w io.Writer, v *vehicle.Vehicle, s sheet.Sheet) error {
	letters, err := sheet.NewLettering()
	if err != nil {
		return err
	}
	return sheet.WriteSVG(w, letters, markOf(v, fmt.Sprintf("drawing %s", s.Name)), s)
}

// WriteGeneral writes the general arrangement as a PDF, as WritePart does a part.
func WriteGeneral(w io.Writer, v *vehicle.Vehicle, m Making) error {
	all, err := General(v, m)
	if err != nil {
		return err
	}
	return writePDF(w, markOf(v, v.Slug+" general arrangement"), all)
}
