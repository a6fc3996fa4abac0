package outline

import (
	"math"
	"strconv"
	"strings"

	"lostwood/parts"
)

// A Role says what a layer holds.
type Role int

// The roles.
const (
	Wood    Role = iota // the outline of the face
	Cut                 // work entered from this face
	Leaving             // work seen here but entered elsewhere
	Centres             // crosses and axes
	Guide               // leaders, frames, arrows: never to cut
	Words               // lettering
	ForHand             // work from this face that no router does
)

// A Layer names what a line is for. Layers of equal Name are the same layer.
type Layer struct {
	Role  Role
	Work  parts.Work // for Cut, Leaving and ForHand
	Depth Length     // for Cut: how deep from this face; 0 where it goes through
}

// Name is fit for any drawing file: capitals, digits, underscore and point. Work
// has its depth in millimetres in it, to a thousandth, so that a router's tools can be set by it.
func (l Layer) Name() string {
	switch l.Role {
	case Wood:
		return "OUTLINE"
	case Centres:
		return "CENTRES"
	case Guide:
		return "GUIDE"
	case Words:
		return "TEXT"
	}
	work := strings.ToUpper(l.Work.String())
	switch {
	case l.Role == Leaving:
		return "NOT_CUT_HERE_" + work
	case l.Role == ForHand:
		return "FOR_HAND_" + work
	case l.Depth == 0:
		return work + "_THROUGH"
	}
	return work + "_DEEP_" + strconv.FormatFloat(math.Round(l.Depth.Millimetres()*1000)/1000, 'f', -1, 64) + "MM"
}
