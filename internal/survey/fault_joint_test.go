package survey

import (
	"testing"
)

func TestJointFaults(t *testing.T) {
	for _, f := range []faulty{
		{
			"joint of nothing", front + things + `[[▲joint]]
deep = "1"
`,
			`a joint that does not say what it is`,
			`write tenon, housing, notch or mortise and the part that is cut: tenon = "cross-bar"`,
		},
		{
			"joint of two sorts", front + things + `[[joint]]
notch = "sill"
▲housing = "sill"
for = "cross-bar"
deep = "1"
`,
			`a joint that is a notch and a housing`,
			`write two joints`,
		},
		{
			"tenon with no end", front + things + `[[▲joint]]
tenon = "cross-bar"
into = "sill"
long = 1
wide = 1
thick = "1/2"
`,
			`a tenon with no “end”`,
			`write end = "both", or which end has it`,
		},
		{
			"tenon on no such end", front + things + `[[joint]]
tenon = "cross-bar"
into = "sill"
end = ▲"fore"
long = 1
wide = 1
thick = "1/2"
`,
			`a tenon on the fore end of “cross-bar”, which runs across`,
			`write near or off, or both`,
		},
		{
			"tenon of nothing known", front + things + `[[joint]]
tenon = ▲"crossbar"
into = "sill"
end = "both"
long = 1
wide = 1
thick = "1/2"
`,
			`“crossbar”, which is no iron and no part here`,
			`did you mean cross-bar?`,
		},
		{
			"tenon into iron", front + things + `[[joint]]
tenon = "cross-bar"
into = ▲"plate"
end = "both"
long = 1
wide = 1
thick = "1/2"
`,
			`a tenon into “plate”, which is an iron`,
			`write the part that has the mortise`,
		},
		{
			"notch in iron", front + things + `[[joint]]
notch = ▲"plate"
for = "stake"
`,
			`a notch of “plate”, which is an iron`,
			`write the part of wood that is cut`,
		},
		{
			"housing with no depth", front + things + `[[▲joint]]
housing = "sill"
for = "cross-bar"
`,
			`a housing with no “deep”`,
			`write deep = "1/2", or whatever it is`,
		},
		{
			"joined to itself", front + things + `[[joint]]
notch = "sill"
for = ▲"sill"
`,
			`“sill” joined to itself`,
			`write what it meets`,
		},
	} {
		t.Run(f.name, f.run)
	}
}
