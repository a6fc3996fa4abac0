package vehicle

import (
	"strings"

	"lostwood/parts"
)

// FaceWords names a face as the joiner sees it on the fitted part: "outer
// side", "hind side", "fore end".
func (i *Item) FaceWords(f parts.Face) string {
	return i.words()[f]
}

func (i *Item) words() [6]string {
	switch i.Kind { // of a wheel, whichever way it lies
	case "spoke":
		return [6]string{"front", "one side", "back", "other side", "foot", "tongue"}
	case "nave":
		return [6]string{"upper side", "one side", "under side", "other side", "back end", "front end"}
	}
	switch i.Run {
	case Across:
		return [6]string{"upper face", "hind side", "under face", "fore side", "near end", "off end"}
	case Upright:
		return [6]string{"fore face", "outer side", "hind face", "inner side", "lower end", "upper end"}
	case Round:
		return [6]string{"back (to the tyre)", "inner side", "belly", "outer side", "first end", "second end"}
	}
	w := [6]string{"upper face", "near side", "under face", "off side", "fore end", "hind end"}
	switch i.Hand {
	case Near:
		w[1], w[3] = "outer side", "inner side"
	case Off:
		w[1], w[3] = "inner side", "outer side"
	}
	return w
}

// WorkWords says what an operation makes; work along an edge names the two faces
// that meet there as the joiner sees them: "chamfer, upper and fore side".
func (i *Item) WorkWords(op parts.Operation) string {
	var faces []string
	for _, f := range op.Meets {
		faces = append(faces, strings.TrimSuffix(i.FaceWords(f), " face"))
	}
	if len(faces) == 0 {
		return op.What
	}
	return op.What + ", " + strings.Join(faces, " and ")
}
