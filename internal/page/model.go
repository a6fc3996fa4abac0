package page

import (
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// A Model is all that a page shows. Only Vehicle is needed; what else is
// missing is left out of the page, or drawn as the fastenings tell.
type Model struct {
	Vehicle   *vehicle.Vehicle
	Version   string // of the program; empty where not known
	Survey    []byte // as it was written
	Accounts  []*vehicle.Account
	Questions *vehicle.Questions
	Spacings  []vehicle.Spacing
	Findings  []vehicle.Finding // besides the vehicle's own: of the seasons, of offering up
	Cutting   *listing.List     // a row an item, in their order
	Totals    *listing.List     // what to buy
	Drawings  []Drawing         // drawn from the bodies where there are none
	Photos    []Photo
	// Files are where an item's files stand, as seen from the page; nil for none.
	Files func(*vehicle.Item) []Link
	// Moving are the things that turn; found from the fastenings where nil.
	Moving []Moving
	// Order is how the members go together, by ID, step by step; found from the
	// fastenings where nil.
	Order [][]string
}

// A Link is a file that belongs to something on the page.
type Link struct{ Words, Path string } // Path has slashes, and is relative to the page

// A Drawing is a whole SVG file.
type Drawing struct {
	Title string
	SVG   []byte
}

// A Photo is a picture that the survey names: a JPEG or PNG file.
type Photo struct {
	Name string
	Data []byte
}

// A Moving is a group of members that turns about a line.
type Moving struct {
	Name     string             // as the page has it: "Turn the fore carriage"
	At       [3]quantity.Length // a place on the line
	Way      [3]float64         // along the line; turning is right-handed about it
	Members  []string           // by ID
	From, To quantity.Angle     // how far it turns
}
