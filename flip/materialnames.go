package flip

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// MaxIndex bounds a bare index, to catch a slip of the decimal point (13.33). Nothing clear reaches it:
// diamond is 2.42 and rutile below 3; germanium, the highest of common lens materials, comes to 4 but is
// opaque to the eye (from memory).
const MaxIndex = 4

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
		return Material{}, fmt.Errorf("%q is neither a material nor an index\nhint: take %s, or a number such as 1.38", s,
			materialNames())
	}
	if !(index > 1 && index <= MaxIndex) {
		return Material{}, fmt.Errorf("index %q is out of range\nhint: give a number above 1 and at most %d, or take %s", s,
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
