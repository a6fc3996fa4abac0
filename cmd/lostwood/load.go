package main

import (
	"errors"
	"os"

	"lostwood/internal/cutlist"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/timbering"
	"lostwood/internal/vehicle"
)

// A source is a survey's bytes and what to call it in messages.
type source struct {
	name string
	data []byte
}

// open reads the survey that was named, or the one that comes with the program.
func open(args []string) (source, error) {
	if len(args) == 0 {
		return source{demo.Name, demo.Survey()}, nil
	}
	data, err := survey.Bytes(args[0])
	if faults := (*survey.Faults)(nil); errors.As(err, &faults) {
		return source{}, err
	}
	if err != nil {
		return source{}, misuse("%s cannot be read: %v", args[0], plain(err))
	}
	return source{args[0], data}, nil
}

// plain takes the program's own words off a file error.
func plain(err error) error {
	if p := (*os.PathError)(nil); errors.As(err, &p) {
		return p.Err
	}
	return err
}

// known reads a survey, and gives the woods it can speak of: the published ones
// and its own.
func known(s source) (*survey.Survey, timber.Catalogue, error) {
	published, err := timber.Published()
	if err != nil {
		return nil, published, err
	}
	read, err := survey.Read(s.name, s.data)
	if err != nil {
		return nil, published, err
	}
	woods, err := timbering.Woods(read, published)
	if err != nil {
		return nil, woods, err
	}
	return read, woods, timbering.Check(read, woods)
}

// derived is a survey's vehicle, and the woods it is made of.
func derived(s source) (*vehicle.Vehicle, timber.Catalogue, error) {
	read, woods, err := known(s)
	if err != nil {
		return nil, woods, err
	}
	v, err := derive.Vehicle(read, woods)
	return v, woods, err
}

// A job is a survey, the vehicle derived from it, the woods, and what its
// cutting list is worked out with as far as the survey says.
type job struct {
	survey   *survey.Survey
	vehicle  *vehicle.Vehicle
	study    *derive.Study
	woods    timber.Catalogue
	settings cutlist.Settings
}

func settled(s source) (job, error) {
	var j job
	var err error
	if j.survey, j.woods, err = known(s); err != nil {
		return j, err
	}
	if j.study, err = derive.Examine(j.survey, j.woods); err != nil {
		return j, err
	}
	j.vehicle = j.study.Vehicle
	j.settings, err = timbering.Settings(j.survey, j.vehicle, j.woods)
	return j, err
}
