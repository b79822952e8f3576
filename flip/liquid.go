package flip

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Material is what a drop, rod or ball is made of.
type Material struct {
	Name  string  // as flags and job files write it; of a bare index, the number
	Index float64 // refractive index relative to air, above 1

	// TemperatureC and WavelengthNM are the conditions that Index holds for.
	// A bare index comes without any: both are 0.
	TemperatureC float64 // degrees Celsius
	WavelengthNM float64 // nanometres, in air

	Source string // where Index comes from
}

// MaxIndex bounds a bare index, to catch a slip of the decimal point (13.33). Nothing clear reaches it:
// diamond is 2.42 and rutile below 3; germanium, the highest of common lens materials, comes to 4 but is
// opaque to the eye (from memory).
const MaxIndex = 4

// The yellow lines that tables of refractive indices use: sodium D (the middle of the pair) for liquids,
// helium d for glass.
const (
	sodiumNM = 589.3
	heliumNM = 587.6
)

// materials are in order of rising index, which puts water first and the solids last. Every index is relative
// to air, since air is what surrounds the drop; against vacuum each would be some 0.0004 more. (For acrylic
// the copy of the source that was read doesn't say which; samples of acrylic differ by more than that.) None
// of the sources was read in the original: liquid_index_test.go says for each which copy was, and checks the
// value by another route.
var materials = []Material{
	{"water", 1.33299, 20, sodiumNM, "ICUMSA sucrose table (1974) at 0 %; IAPWS R9-97 over the index of air agrees"},
	{"sea-water", 1.3394, 20, sodiumNM, "Quan and Fry, Applied Optics 34, 3477 (1995), 35 g of salt in a kilogram"},
	{"ethanol", 1.3611, 20, sodiumNM, "CRC Handbook of Chemistry and Physics, 95th edition (2014)"},
	{"syrup-20", 1.36384, 20, sodiumNM, "ICUMSA sucrose table (1974), 20 % sugar by mass"},
	{"syrup-40", 1.39986, 20, sodiumNM, "ICUMSA sucrose table (1974), 40 % sugar by mass"},
	{"syrup-60", 1.44193, 20, sodiumNM, "ICUMSA sucrose table (1974), 60 % sugar by mass"},
	{"glycerol", 1.4746, 20, sodiumNM, "CRC Handbook of Chemistry and Physics, 95th edition (2014)"},
	{"acrylic", 1.4925, 20.1, heliumNM, "Beadie and others, Applied Optics 54, F139 (2015)"},
	{"crown-glass", 1.5168, 22, heliumNM, "Schott, data sheet of N-BK7"},
}

// Materials returns the materials that have a name, in order of rising index.
func Materials() []Material {
	return slices.Clone(materials)
}

// MaterialByName finds a material; upper and lower case, spaces and hyphens make no difference, so that "Sea
// water" is sea-water.
func MaterialByName(name string) (Material, bool) {
	for _, m := range materials {
		if plainName(m.Name) == plainName(name) {
			return m, true
		}
	}
	return Material{}, false
}

// ParseMaterial reads a material's name, as MaterialByName does, or a bare refractive index above 1 and at
// most 4, such as "1.38". The error says which names and numbers are taken. ParseMaterial of a material's
// Name gives that material again.
func ParseMaterial(s string) (Material, error) {
	if m, ok := MaterialByName(s); ok {
		return m, nil
	}
	text := strings.TrimSpace(s)
	// ParseFloat alone would take words such as "nan" and hexadecimal numbers too. A number too great for it comes back as
	// infinite, with an error, and is out of range all the same.
	index, err := strconv.ParseFloat(text, 64)
	if strings.Trim(text, "0123456789.eE+-") != "" || errors.Is(err, strconv.ErrSyntax) {
		return Material{}, fmt.Errorf("%q is neither a material nor an index: take %s, or a number such as 1.38", s,
			materialNames())
	}
	if !(index > 1 && index <= MaxIndex) {
		return Material{}, fmt.Errorf("index %q is out of range: give a number above 1 and at most %d, or take %s", s,
			MaxIndex, materialNames())
	}
	return Material{Name: strconv.FormatFloat(index, 'g', -1, 64), Index: index, Source: "given as a number"}, nil
}

// materialNames lists the names that are taken, for messages.
func materialNames() string {
	names := make([]string, len(materials))
	for i, m := range materials {
		names[i] = m.Name
	}
	return strings.Join(names, ", ")
}

// plainName drops what MaterialByName overlooks.
func plainName(name string) string {
	return strings.ToLower(strings.NewReplacer(" ", "", "-", "").Replace(name))
}
