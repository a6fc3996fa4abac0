package timber

import "strings"

// looks tell woods apart on a clean cut end and face, by genus. From memory of
// wood anatomy as handbooks teach it; a splinter is settled under a microscope.
var looks = map[string]string{
	"Carya":        "ring-porous, the latewood crossed by fine pale lines along the rings; heavy and hard",
	"Fraxinus":     "ring-porous, pale, latewood pores few and single; rays too fine to see on the face",
	"Quercus":      "ring-porous with broad rays, silver flecks on a quartered face; white oak's large pores are plugged, red oak's open",
	"Ulmus":        "ring-porous, latewood pores in wavy bands along the rings; grain often interlocked",
	"Acer":         "diffuse-porous, pale and close; small even flecks on a quartered face",
	"Liriodendron": "diffuse-porous, soft, greenish to brown heart, a pale line at each ring",
	"Tilia":        "diffuse-porous, very pale, soft and even",
	"Robinia":      "ring-porous, greenish-yellow heart, pores plugged; very hard",
	"Platanus":     "diffuse-porous, rays all large: a lacy fleck all over a quartered face; grain interlocked",
	"Betula":       "diffuse-porous, pores like flour dust; even, reddish heart",
	"Maclura":      "ring-porous, orange-yellow heart that colours water; very heavy",
	"Fagus":        "diffuse-porous, short dark flecks on a flat face; pinkish",
	"Liquidambar":  "diffuse-porous, close; grain interlocked",
	"Nyssa":        "diffuse-porous, very close; grain interlocked",
	"Pseudotsuga":  "softwood: no pores, strong contrast of early and late wood, resin",
	"Corymbia":     "diffuse-porous, heavy, pale brown to red; veins of gum are common",
	"Eucalyptus":   "diffuse-porous, no clear rings, pores single and slanting in lines; heavy",
	"Lophostemon":  "diffuse-porous, pinkish grey-brown, very close; grain interlocked",
	"Cardwellia":   "broad rays: large silver flecks on a quartered face; light, reddish",
	"Flindersia":   "diffuse-porous, pale; grain often interlocked",
}

// Look says how the wood looks, to hold against a surviving splinter, and that
// it is from memory. A genus of which nothing is written gives a *[NoFigureError].
func (s Species) Look() (string, Basis, error) {
	genus, _, _ := strings.Cut(s.Botanical, " ")
	words, ok := looks[genus]
	if !ok {
		return "", Basis{}, &NoFigureError{s.label(), "a description of its look", "compare with a named sample"}
	}
	return words, Basis{"anatomy of the genus", FromMemory}, nil
}
