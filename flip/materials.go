package flip

// Material is what a drop, rod or ball is made of.
type Material struct {
	Name  string  // as flags and job files write it; of a bare index, the number
	Index float64 // refractive index relative to air, above 1

	// TemperatureC and WavelengthNM are the conditions that Index holds for.
	// A bare index comes without any: both are 0.
	TemperatureC float64 // degrees Celsius
	WavelengthNM float64 // nanometres, in air

	Source string // where Index comes from

	Dispersion Dispersion // of a bare index and a syrup, not known: zero
	Liquid     Liquid     // of a solid, and of a bare index: zero
}

// Dispersion is how much more a material bends blue light than red, by its index at two lines of hydrogen,
// relative to air and at Material.TemperatureC.
type Dispersion struct {
	BlueIndex float64 // at the F line, 486.1 nm
	RedIndex  float64 // at the C line, 656.3 nm
	Source    string
}

// Known tells whether there is anything to reckon with.
func (d Dispersion) Known() bool { return d.BlueIndex > 0 }

// Liquid is how a liquid moves and holds together, at Material.TemperatureC.
type Liquid struct {
	DensityKgPerM3 float64
	TensionNPerM   float64 // surface tension against air
	ViscosityPaS   float64 // dynamic viscosity
	Source         string
}

// Known tells whether there is anything to reckon with.
func (l Liquid) Known() bool { return l.DensityKgPerM3 > 0 }

// The yellow lines that tables of refractive indices use: sodium D (the middle of the pair) for liquids,
// helium d for glass.
const (
	sodiumNM = 589.3
	heliumNM = 587.6
)

// materials are in order of rising index, which puts water first and the solids last. Every index is relative
// to air, since air is what surrounds the drop; against vacuum each would be some 0.0004 more. (For acrylic
// the copy of the source that was read doesn't say which; samples of acrylic differ by more than that.) None
// of the sources was read in the original: liquid_index_test.go and liquid_flow_test.go say for each which copy
// was, or that it is from memory, and check the value by another route.
//
// Liquids as one meets them hold together less than pure ones: a little soap takes off more than half of water's
// surface tension (common knowledge, no source).
var materials = []Material{
	{
		"water", 1.33299, 20, sodiumNM, "ICUMSA sucrose table (1974) at 0 %; IAPWS R9-97 over the index of air agrees",
		Dispersion{1.33712, 1.33115, "IAPWS R9-97 over the index of air"},
		Liquid{998.207, 0.07274, 1.0016e-3, "Tanaka and others (2001); IAPWS R1-76; ISO/TR 3666"},
	},
	{
		"sea-water", 1.3394, 20, sodiumNM, "Quan and Fry, Applied Optics 34, 3477 (1995), 35 g of salt in a kilogram",
		Dispersion{1.3437, 1.3375, "Quan and Fry, Applied Optics 34, 3477 (1995)"},
		Liquid{1024.8, 0.07382, 1.077e-3, "UNESCO EOS-80; IAPWS R14-19; Sharqawy and others (2010)"},
	},
	{
		"ethanol", 1.3611, 20, sodiumNM, "CRC Handbook of Chemistry and Physics, 95th edition (2014)",
		Dispersion{1.3654, 1.3593, "differences from D by Rheims and others (1997)"},
		Liquid{789.3, 0.02239, 1.203e-3, "CRC Handbook of Chemistry and Physics, 102nd edition; tension: Jasper (1972)"},
	},
	{
		"syrup-20", 1.36384, 20, sodiumNM, "ICUMSA sucrose table (1974), 20 % sugar by mass", Dispersion{},
		Liquid{1081.0, 0.0738, 1.945e-3, "CRC Handbook of Chemistry and Physics, 102nd edition; tension from memory"},
	},
	{
		"syrup-40", 1.39986, 20, sodiumNM, "ICUMSA sucrose table (1974), 40 % sugar by mass", Dispersion{},
		Liquid{1176.5, 0.0749, 6.162e-3, "CRC Handbook of Chemistry and Physics, 102nd edition; tension from memory"},
	},
	{
		"syrup-60", 1.44193, 20, sodiumNM, "ICUMSA sucrose table (1974), 60 % sugar by mass", Dispersion{},
		Liquid{1286.4, 0.0771, 58.487e-3, "CRC Handbook of Chemistry and Physics, 102nd edition; tension from memory"},
	},
	{
		"glycerol", 1.4746, 20, sodiumNM, "CRC Handbook of Chemistry and Physics, 95th edition (2014)",
		Dispersion{1.4792, 1.4723, "differences from D by Rheims and others (1997)"},
		Liquid{1261.1, 0.0634, 1.46, "CRC Handbook of Chemistry and Physics, 102nd edition; tension from memory"},
	},
	{
		"acrylic", 1.4925, 20.1, heliumNM, "Beadie and others, Applied Optics 54, F139 (2015)",
		Dispersion{1.4984, 1.4901, "Beadie and others, Applied Optics 54, F139 (2015)"}, Liquid{},
	},
	{
		"crown-glass", 1.5168, 22, heliumNM, "Schott, data sheet of N-BK7",
		Dispersion{1.52238, 1.51432, "Schott, data sheet of N-BK7"}, Liquid{},
	},
}
