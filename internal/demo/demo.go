// Package demo holds the survey that comes with the program: an orchard wagon
// invented for this project. It is made by lostwood/testdata/orchardwagon from
// a true set of sizes, with measuring errors and one blunder.
package demo

import _ "embed"

// Name is what messages call the survey.
const Name = "orchard-wagon.toml"

//go:embed orchard-wagon.toml
var survey []byte

// Survey returns the survey's bytes.
func Survey() []byte { return append([]byte(nil), survey...) }
