package flip_test

import (
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

func TestMaterialsOrderAndFacts(t *testing.T) {
	list := flip.Materials()
	require.Equal(t, "water", list[0].Name, "the default liquid comes first")
	seen := map[string]bool{}
	for i, m := range list {
		require.False(t, seen[m.Name], "%s is listed twice", m.Name)
		seen[m.Name] = true
		require.NotEmpty(t, m.Source, m.Name)
		require.True(t, m.TemperatureC > 0 && m.TemperatureC < 40, "%s: room temperature, not %g", m.Name, m.TemperatureC)
		require.True(t, m.WavelengthNM > 400 && m.WavelengthNM < 700, "%s: visible light, not %g nm", m.Name, m.WavelengthNM)
		if i > 0 {
			require.Greater(t, m.Index, list[i-1].Index, "%s is out of order", m.Name)
		}
	}
	for _, name := range []string{
		"water", "sea-water", "ethanol", "glycerol", "syrup-20", "syrup-40", "syrup-60", "acrylic", "crown-glass",
	} {
		require.True(t, seen[name], name)
	}
}

func TestMaterialsIsACopy(t *testing.T) {
	flip.Materials()[0].Index = 9
	require.Less(t, flip.Materials()[0].Index, 2.0)
}

// acceptedMaterials seeds the fuzz target too.
var acceptedMaterials = []struct {
	name, in, want string
	index          float64 // 0: that of the named material
}{
	{"plain name", "water", "water", 0},
	{"capitals", "WATER", "water", 0},
	{"space for hyphen", "sea water", "sea-water", 0},
	{"joined", "seawater", "sea-water", 0},
	{"spaces around, capital", " Crown glass ", "crown-glass", 0},
	{"number in the name", "syrup 40", "syrup-40", 0},
	{"bare index", "1.38", "1.38", 1.38},
	{"bare index, spaces around", " 1.5 ", "1.5", 1.5},
	{"exponent", "138e-2", "1.38", 1.38},
	{"just above one", "1.0001", "1.0001", 1.0001},
	{"the most", "4", "4", 4},
}

func TestParseMaterial(t *testing.T) {
	for _, c := range acceptedMaterials {
		t.Run(c.name, func(t *testing.T) {
			got, err := flip.ParseMaterial(c.in)
			require.NoError(t, err)
			require.Equal(t, c.want, got.Name)
			require.NotEmpty(t, got.Source)
			named, isName := flip.MaterialByName(c.in)
			require.Equal(t, c.index == 0, isName)
			if isName {
				require.Equal(t, named, got)
				return
			}
			require.Equal(t, c.index, got.Index)
			require.Zero(t, got.WavelengthNM)
			require.Zero(t, got.TemperatureC)
		})
	}
}

func TestParseMaterialRefuses(t *testing.T) {
	const names = "water, sea-water, ethanol, syrup-20, syrup-40, syrup-60, glycerol, acrylic, crown-glass"
	for _, c := range []struct{ name, in, want string }{
		{"unknown name", "milk", `"milk" is neither a material nor an index` +
			"\nhint: take " + names + `, or a number such as 1.38`},
		{"nothing", "", `"" is neither`},
		{"part of a name", "glass", `"glass" is neither`},
		{"decimal comma", "1,33", `"1,33" is neither`},
		{"two points", "1.3.3", `"1.3.3" is neither`},
		{"a lone sign", "-", `"-" is neither`},
		{"not a number", "nan", `"nan" is neither`},
		{"infinite", "+Inf", `"+Inf" is neither`},
		{"hexadecimal", "0x1.8p0", `"0x1.8p0" is neither`},
		{"that of air", "1", `index "1" is out of range` + "\nhint: give a number above 1 and at most 4, or take " + names},
		{"below one", "0.9", `index "0.9" is out of range`},
		{"negative", "-1.33", `index "-1.33" is out of range`},
		{"slip of the point", "13.33", `index "13.33" is out of range`},
		{"too great for a float64", "1e999", `index "1e999" is out of range`},
		{"too small for a float64", "1e-999", `index "1e-999" is out of range`},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := flip.ParseMaterial(c.in)
			require.ErrorContains(t, err, c.want)
			require.Zero(t, got)
		})
	}
}

func FuzzParseMaterial(f *testing.F) {
	require.NotEmpty(f, acceptedMaterials)
	for _, c := range acceptedMaterials {
		f.Add(c.in)
	}
	for _, in := range []string{"", "-", "nan", "Inf", "0x2", "1e999", "1_0", "\xff", "sea\u00a0water"} {
		f.Add(in)
	}
	f.Fuzz(func(t *testing.T, in string) {
		m, err := flip.ParseMaterial(in)
		if err != nil {
			require.Zero(t, m)
			return
		}
		require.False(t, math.IsNaN(m.Index))
		require.True(t, m.Index > 1 && m.Index <= 4, "index %g", m.Index)
		again, err := flip.ParseMaterial(m.Name)
		require.NoError(t, err, "a material's name must be taken again")
		require.Equal(t, m, again)
	})
}
