package flip_test

import (
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// Below, the named materials are checked against formulas and tables from outside. Where a copy of the source
// was read, the copy is named: "rii" is the public database of refractiveindex.info, "chemicals" the Python
// library of that name.

// waterIndex is IAPWS R9-97, equation (1): the index against vacuum of water at a temperature in kelvin, a
// density in kg/m3 and a wavelength in micrometres. Coefficients as several public copies have them (the
// Python libraries iapws and chemicals among them).
func waterIndex(temperatureK, density, wavelengthUM float64) float64 {
	const uv, ir = 0.229202, 5.432937
	d, t, l2 := density/1000, temperatureK/273.15, math.Pow(wavelengthUM/0.589, 2)
	a := d * (0.244257733 + 9.74634476e-3*d - 3.73234996e-3*t + 2.68678472e-4*l2*t + 1.58920570e-3/l2 +
		2.45934259e-3/(l2-uv*uv) + 0.900704920/(l2-ir*ir) - 1.66626219e-2*d*d)
	return math.Sqrt((2*a + 1) / (1 - a))
}

// IAPWS R9-97, table 3, as the tests of the Python library iapws and others quote it. The table goes by
// pressure, 0.1 MPa here; the densities that belong to it (IAPWS-95) are 999.843 at 0 Celsius, quoted
// likewise, and 0.4603 for steam, from memory.
func TestWaterFormulaAgainstItsTable(t *testing.T) {
	for _, c := range []struct {
		name                                string
		temperatureK, density, wavelengthUM float64
		want, tolerance                     float64
	}{
		{"ultraviolet", 273.15, 999.843, 0.2265, 1.394527, 1e-6},
		{"yellow", 273.15, 999.843, 0.589, 1.334344, 1e-6},
		{"infrared", 273.15, 999.843, 1.01398, 1.326135, 1e-6},
		{"steam", 473.15, 0.4603, 0.589, 1.0001456, 1e-7},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.InDelta(t, c.want, waterIndex(c.temperatureK, c.density, c.wavelengthUM), c.tolerance)
		})
	}
}

// airIndex is Ciddor's dry standard air (Applied Optics 35, 1566 (1996), equation (1), coefficients as public
// copies have them), at 1013.25 hPa, taken from its 15 Celsius to another temperature as an ideal gas.
func airIndex(temperatureK, wavelengthUM float64) float64 {
	s := 1 / (wavelengthUM * wavelengthUM)
	return 1 + 1e-8*(5792105/(238.0185-s)+167917/(57.362-s))*288.15/temperatureK
}

// The figure for air at 20 Celsius and 633 nm is Ciddor's full equation in the Python library ref_index. It
// has 20 % humidity in it, which takes off 2e-7.
func TestAirFormula(t *testing.T) {
	require.InDelta(t, 1.0002716285, airIndex(293.15, 0.633), 5e-7)
}

// waterDensity is that of Tanaka and others, Metrologia 38, 301 (2001), in kg/m3 at 101.325 kPa from 0 to 40 Celsius;
// coefficients as several public copies have them. One of these gives 998.2067 at 20 Celsius.
func waterDensity(celsius float64) float64 {
	return 999.974950 * (1 - math.Pow(celsius-3.983035, 2)*(celsius+301.797)/(522528.9*(celsius+69.34881)))
}

// The release claims 1.5e-5 in this range (from memory); 0.5e-5 more is for
// taking 589.3 nm as measured in vacuum.
func TestWaterAgainstIAPWS(t *testing.T) {
	require.InDelta(t, 998.2067, waterDensity(20), 5e-5)
	got := waterIndex(293.15, waterDensity(20), 0.5893) / airIndex(293.15, 0.5893)
	require.InDelta(t, got, material(t, "water").Index, 2e-5)
}

// seaWaterIndex is Quan and Fry, Applied Optics 34, 3477 (1995), against air: salinity in g/kg, Celsius,
// nanometres; good to the error of its data. Coefficients as several public copies have them.
func seaWaterIndex(salinity, temperatureC, wavelengthNM float64) float64 {
	s, t, l := salinity, temperatureC, wavelengthNM
	return 1.31405 + (1.779e-4-1.05e-6*t+1.6e-8*t*t)*s - 2.02e-6*t*t +
		(15.868+0.01155*s-0.00423*t)/l - 4382/(l*l) + 1.1455e6/(l*l*l)
}

func TestSeaWater(t *testing.T) {
	sea, water := material(t, "sea-water"), material(t, "water")
	require.InDelta(t, seaWaterIndex(35, sea.TemperatureC, sea.WavelengthNM), sea.Index, 5e-5, "rounded to four decimals")
	require.InDelta(t, seaWaterIndex(0, 20, 589.3), water.Index, 3e-5,
		"without salt the formula must be water, and against air")

	// McNeil's older formula (Optical Engineering 16, 128 (1977), reference from memory, coefficients from a public copy),
	// given to four decimals.
	const l, temperatureC, salinity = 589.3, 20.0, 35.0
	mcNeil := 1.3247 - 2.5e-6*temperatureC*temperatureC + salinity*(2e-4-8e-7*temperatureC) + 3300/(l*l) - 3.2e7/(l*l*l*l)
	require.InDelta(t, mcNeil, sea.Index, 1e-4)
}

// sellmeier is n2 = 1 + sum of B l2/(l2 - C), the B and C given in turn; l in micrometres.
func sellmeier(wavelengthUM float64, coefficients ...float64) float64 {
	l2, n2 := wavelengthUM*wavelengthUM, 1.0
	for i := 0; i < len(coefficients); i += 2 {
		n2 += coefficients[i] * l2 / (l2 - coefficients[i+1])
	}
	return math.Sqrt(n2)
}

// evenPowers is the sum of A l^-2k for k = 0, 1, 2...; l in micrometres.
func evenPowers(wavelengthUM float64, coefficients ...float64) (sum float64) {
	for k, a := range coefficients {
		sum += a * math.Pow(wavelengthUM, -2*float64(k))
	}
	return sum
}

// Ethanol and glycerol are the handbook's figures, 1.3611 and 1.4746, as the file "CRC Handbook Organic RI"
// of chemicals has them; the syrups are the ICUMSA table as chemicals has it from a refractometer maker's
// data book.
func TestIndexAgainstASecondSource(t *testing.T) {
	const d, he = 0.5893, 0.58756 // sodium and helium lines, micrometres
	beadie := math.Sqrt(6.1209e-3*he*he - 1.5004e-3*math.Pow(he, 4) +
		evenPowers(he, 2.1778, 2.3678e-2, -4.2137e-3, 7.3417e-4, -4.5042e-5))
	const glycerolPerKelvin = -2.2e-4 // International Tables for Crystallography C (2006), table 3.3.2.1

	for _, c := range []struct {
		material        string
		want, tolerance float64
		source          string
	}{
		// Two refractometer papers lie 4e-4 and 5e-4 above the handbook.
		{"ethanol", sellmeier(d, 0.83189, 0.00930, -0.15582, -49.45200), 6e-4, "Kedenburg and others 2012, 20 Celsius, rii"},
		{"ethanol", evenPowers(d, 1.35265, 0.00306, 0.00002), 6e-4, "Rheims and others 1997, 20 Celsius, rii"},
		// Glycerol draws water from the air; 1 % of it takes off 0.0014, so measured samples lie lower than the handbook.
		{"glycerol", 1.473, 2e-3, "International Tables for Crystallography C (2006), table 3.3.2.1, 20 Celsius"},
		{"glycerol", evenPowers(d, 1.45797, 0.00598, -0.00036) - 5*glycerolPerKelvin, 2e-3,
			"Rheims and others 1997, 25 Celsius, rii"},
		// The handbook's own table of solutions, in a Java library's copy (flanagan): four decimals, an older measurement.
		{"syrup-20", 1.3639, 1e-4, "CRC Handbook, 216.2 g/l"},
		{"syrup-40", 1.3999, 1e-4, "CRC Handbook, 470.6 g/l"},
		{"syrup-60", 1.4419, 1e-4, "CRC Handbook, 771.9 g/l"},
		// The first line is the source itself; the others show how far samples of acrylic differ.
		{"acrylic", beadie, 5e-5, "Beadie and others 2015, 20.1 Celsius, rii"},
		{"acrylic", sellmeier(he, 1.1819, 0.011313), 2e-3, "Sultanova and others 2009, 20 Celsius, rii"},
		{"acrylic", sellmeier(he, 0.99654, 0.00787, 0.18964, 0.02191, 0.00411, 3.85727), 2e-3,
			"Szczurowski 2013, 23 Celsius, rii"},
		// The published n_d is 1.51680; Schott states 22 Celsius and air at 1013 hPa for its Sellmeier coefficients.
		{"crown-glass", sellmeier(he, 1.03961212, 0.00600069867, 0.231792344, 0.0200179144, 1.01046945, 103.560653), 5e-6,
			"Schott catalogue of 2017, N-BK7, rii"},
	} {
		t.Run(c.material+", "+c.source, func(t *testing.T) {
			require.InDelta(t, c.want, material(t, c.material).Index, c.tolerance)
		})
	}
}

// Indices at the F and C lines of hydrogen, and what is left of their difference.
func TestDispersion(t *testing.T) {
	const f, c = 0.48613, 0.65627 // micrometres, in air
	water := func(l float64) float64 { return waterIndex(293.15, waterDensity(20), l) / airIndex(293.15, l) }
	sea := func(l float64) float64 { return seaWaterIndex(35, 20, 1000*l) }
	acrylic := func(l float64) float64 {
		return math.Sqrt(6.1209e-3*l*l - 1.5004e-3*math.Pow(l, 4) +
			evenPowers(l, 2.1778, 2.3678e-2, -4.2137e-3, 7.3417e-4, -4.5042e-5))
	}
	// Of ethanol and glycerol the differences count: samples differ by more in the index itself.
	rheimsEthanol := func(l float64) float64 { return evenPowers(l, 1.35265, 0.00306, 0.00002) }
	rheimsGlycerol := func(l float64) float64 { return evenPowers(l, 1.45797, 0.00598, -0.00036) }
	from := func(name string, index func(l float64) float64) func(l float64) float64 {
		return func(l float64) float64 { return material(t, name).Index + index(l) - index(0.5893) }
	}
	for _, row := range []struct {
		material        string
		index           func(wavelengthUM float64) float64
		tolerance       float64
		source          string
		least, mostAbbe float64 // (n - 1) / (blue - red)
	}{
		// 1.3371 and 1.3312, the handbooks' figures, are from memory, as are the Abbe numbers of water, acrylic and glass.
		{"water", water, 1e-5, "IAPWS R9-97", 55, 56.5},
		{"water", func(l float64) float64 { return seaWaterIndex(0, 20, 1000*l) }, 4e-5, "Quan and Fry without salt", 55,
			56.5},
		{"sea-water", sea, 5e-5, "Quan and Fry, rounded to four decimals", 53, 56.5},
		{"ethanol", from("ethanol", rheimsEthanol), 6e-5, "Rheims and others 1997, 20 Celsius, rii", 57, 63},
		{"ethanol", from("ethanol", func(l float64) float64 {
			return sellmeier(l, 0.83189, 0.00930, -0.15582, -49.45200)
		}), 2e-4, "Kedenburg and others 2012, 20 Celsius, rii", 57, 63},
		{"glycerol", from("glycerol", rheimsGlycerol), 6e-5, "Rheims and others 1997, 25 Celsius, rii", 66, 71},
		{"acrylic", acrylic, 6e-5, "Beadie and others 2015, rii", 56, 60},
		{"crown-glass", func(l float64) float64 {
			return sellmeier(l, 1.03961212, 0.00600069867, 0.231792344, 0.0200179144, 1.01046945, 103.560653)
		}, 6e-6, "Schott catalogue of 2017, N-BK7, rii", 64.1, 64.3},
	} {
		t.Run(row.material+", "+row.source, func(t *testing.T) {
			m := material(t, row.material)
			require.InDelta(t, row.index(f), m.Dispersion.BlueIndex, row.tolerance)
			require.InDelta(t, row.index(c), m.Dispersion.RedIndex, row.tolerance)
			abbe := (m.Index - 1) / (m.Dispersion.BlueIndex - m.Dispersion.RedIndex)
			require.True(t, abbe > row.least && abbe < row.mostAbbe, "Abbe number %g", abbe)
			require.NotEmpty(t, m.Dispersion.Source)
		})
	}
	for _, name := range []string{"syrup-20", "syrup-40", "syrup-60"} {
		require.False(t, material(t, name).Dispersion.Known(), name)
	}
	bare, err := flip.ParseMaterial("1.38")
	require.NoError(t, err)
	require.False(t, bare.Dispersion.Known())
	require.False(t, bare.Liquid.Known())
}

func material(t *testing.T, name string) flip.Material {
	t.Helper()
	m, ok := flip.MaterialByName(name)
	require.True(t, ok, name)
	return m
}
