package delivery

import (
	"bytes"

	"lostwood/internal/record"
)

// recording is the record for the archive, and the table for a museum's database.
func (o Order) recording(stem string) []job {
	m := record.Model{Vehicle: o.Vehicle, Survey: o.Survey, Accounts: o.Reasons.Accounts, Questions: o.Reasons.Questions}
	return []job{
		{"record/" + stem + "_record.pdf", func(b *bytes.Buffer) error { return record.WritePDF(b, m) }},
		{"record/" + stem + "_dimensions.csv", func(b *bytes.Buffer) error { return record.WriteCSV(b, o.Vehicle) }},
		{"record/" + stem + "_dimensions.json", func(b *bytes.Buffer) error { return record.WriteJSON(b, o.Vehicle) }},
		{"record/" + stem + "_dimensions.schema.json", func(b *bytes.Buffer) error { return record.WriteSchema(b) }},
	}
}
