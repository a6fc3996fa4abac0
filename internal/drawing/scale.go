package drawing

import "fmt"

// A Scale is how many millimetres of the thing one of the paper stands for, to one.
type Scale int

// reductions are the scales of ISO 5455 that are used, largest first.
func reductions() []Scale { return []Scale{1, 2, 5, 10, 20, 50} }

// String is the scale as drawings have it: "1:5".
func (s Scale) String() string { return fmt.Sprintf("1:%d", int(s)) }

// of is a length of the thing on paper.
func (s Scale) of(l Length) Length { return l / Length(s) }
