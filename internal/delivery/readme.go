package delivery

import (
	"fmt"

	"lostwood/internal/vehicle"
)

// readme says what each folder is and what to heed.
func readme(v *vehicle.Vehicle) string {
	return fmt.Sprintf(`%s, issue %s, %s
Worked out from survey %s.

cnc/              one binary STL a distinct part and hand, in MILLIMETRES
joiner/           full-size patterns (PDF), dimensioned drawings with the general arrangement,
                  and the cutting list
yard/             timber to buy, by species and thickness, and an order for the sawmill
smith/            the iron that is missing: what to buy, what to make, how long to cut it
record/           record.html: the vehicle to look at and all that is known of it, in any
                  browser, with no network; sizes with give or take and how we know,
                  findings, what the wood will do with the seasons, the survey itself

File names say: number, name, timber, thickness, number off, hand, issue.
A handed part is made once for each hand: NEAR is the left side looking forward.

Before cutting
  - Check the 100 mm bars on every pattern sheet with a steel rule, both ways.
    Print at actual size: "fit to page" spoils every part.
  - Check one size of every mesh against the cutting list: the files are in millimetres.
  - Read record/ first. A guess is marked as a guess: settle it before you cut.
  - Offer up to the irons before boring through.

Safety
  - Wood dust harms: extract it at the machine and wear a mask that fits.
    Old paint is likely to hold lead: test it, work wet, never burn or dry-sand it.
  - Keep the guards on. Machines, hot iron and steam are for trained hands.
  - Nothing here says that a part or vehicle is fit to carry a load, a person or a
    horse's pull. Have a competent wheelwright or engineer judge it; local codes
    and rules for vehicles on roads come first.
`, v.Name, v.Issue, v.Date.Format("2 January 2006"), v.Hash)
}
