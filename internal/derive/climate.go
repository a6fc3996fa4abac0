package derive

import (
	"fmt"

	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// moisture works out what the wood is bought, worked and kept at.
func moisture(s *survey.Survey) (vehicle.Moisture, error) {
	w := vehicle.Moisture{Bought: s.Wood.Bought, Worked: s.Wood.Worked}
	c, err := climate(s.Wood.Service)
	if err != nil {
		return w, fmt.Errorf("%s:%d:%d: %w", s.File, s.Wood.Service.At.Line, s.Wood.Service.At.Column, err)
	}
	w.Service, w.Driest, w.Wettest, w.Basis = c.Mean, c.Driest, c.Wettest, c.Basis.Source
	if w.Worked == 0 {
		w.Worked = w.Bought
	}
	return w, nil
}

// climate reads the survey's service climate in whichever way it was given.
func climate(c survey.Climate) (timber.Climate, error) {
	switch {
	case c.Place != "":
		return timber.At(c.Place)
	case len(c.Months) > 0:
		var months []timber.Month
		for _, m := range c.Months {
			months = append(months, timber.Month{Temperature: timber.Celsius(m[0]), Humidity: timber.Humidity(m[1] / 100)})
		}
		return timber.Monthly(months)
	}
	return timber.Between(c.Driest, c.Wettest)
}
