package derive

import (
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// A Study is a derived vehicle together with the reasons for all its sizes.
type Study struct {
	Vehicle *vehicle.Vehicle

	assembly *assembly
	fit      *fit
	network  *network
	matter   []target // what the making hangs on
}

// Examine derives the vehicle that a survey describes, as Vehicle does, and keeps
// what is needed to tell why and what to measure next.
func Examine(s *survey.Survey, woods timber.Catalogue) (*Study, error) {
	st, err := study(s, woods)
	if err != nil {
		return nil, err
	}
	st.matter = st.targets()
	return st, nil
}

func study(s *survey.Survey, woods timber.Catalogue) (*Study, error) {
	if err := findTimbers(s, woods); err != nil {
		return nil, err
	}
	v := &vehicle.Vehicle{
		Name: s.Name, Slug: vehicle.Slug(s.Name), Issue: s.Issue, Date: s.Date, Hash: s.Hash, Unit: s.Unit,
	}
	var err error
	if v.Moisture, err = moisture(s); err != nil {
		return nil, err
	}
	n := newNetwork(s)
	n.bySeason(woods, v.Moisture.Service)
	fit, err := n.adjust()
	if err != nil {
		return nil, err
	}
	a := &assembly{network: n, fit: fit, vehicle: v}
	a.findings()
	a.windowFindings()
	a.parts()
	a.irons()
	a.fastenings()
	a.items()
	if err := a.wheels(); err != nil {
		return nil, err
	}
	a.loads()
	a.record()
	a.moves()
	a.openFindings()
	a.advice()
	return &Study{Vehicle: v, assembly: a, fit: fit, network: n}, nil
}
