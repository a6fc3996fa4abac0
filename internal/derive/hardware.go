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
	if b := f.Bolt; b != nil {
		h.Bolt = &vehicle.OldBolt{
			ID: b.ID, Length: b.Length.Value, Thread: valueOf(b.Thread), Nut: valueOf(b.Nut),
			Washer: valueOf(b.Washer), Proud: valueOf(b.Proud),
		}
	}
	return h
}

func valueOf(r *survey.Reading) quantity.Length {
	if r == nil {
		return 0
	}
	return r.Value
}
