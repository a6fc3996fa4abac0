package delivery

import (
	"bytes"

	"lostwood/internal/listing"
	"lostwood/internal/smith"
)

// smithing lists what the smith gets; nothing where no iron is missing.
func (o Order) smithing(stem string) []job {
	list := smith.Of(o.Vehicle)
	if len(list.Pieces) == 0 {
		return nil
	}
	return []job{
		{"smith/" + stem + "_smith.pdf", func(b *bytes.Buffer) error { return list.WritePDF(b) }},
		{"smith/" + stem + "_smith.txt", func(b *bytes.Buffer) error { return list.Write(b, listing.Table) }},
		{"smith/" + stem + "_smith.csv", func(b *bytes.Buffer) error { return list.Write(b, listing.CSV) }},
	}
}
