package derive

import (
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// hardware is what the survey tells of a span's own bolt or clip.
func hardware(s *span) vehicle.Hardware {
	f := s.fastening
	h := vehicle.Hardware{Sunk: f.Sunk}
	switch f.Head {
	case survey.SquareNeck:
		h.Head = vehicle.SquareNeck
	case survey.FlushHead:
		h.Head = vehicle.Flush
	}
	if f.Inside != nil {
		h.Inside = f.Inside.Value
	}
	h.Missing = f.Missing.Lacks(s.hand, s.row+1) || s.unseen()
	if b := f.Bolt; b != nil {
		h.Bolt = &vehicle.OldBolt{
			ID: b.ID, Length: b.Length.Value, Thread: valueOf(b.Thread), Nut: valueOf(b.Nut),
			Washer: valueOf(b.Washer), Proud: valueOf(b.Proud),
		}
	}
	return h
}

// unseen reports whether nothing at all was read of a span's bolt. A clip is told by
// its width, and so was seen.
func (s *span) unseen() bool {
	f := s.fastening
	if f.What == "clip" || f.Bolt != nil || s.grip != nil && s.grip.Taken() {
		return false
	}
	if s.row < len(f.Bolts) && len(f.Bolts[s.row]) > 0 {
		side := 0
		if s.hand == vehicle.Off {
			side = len(f.Bolts[s.row]) - 1
		}
		return f.Bolts[s.row][side] == nil
	}
	return true
}

func valueOf(r *survey.Reading) quantity.Length {
	if r == nil {
		return 0
	}
	return r.Value
}
