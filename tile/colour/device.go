package colour

import (
	"errors"
	"fmt"
	"strings"
)

// device is what a profile by tables makes of colours. Clauses in this file are those of ICC.1:2010, recalled from
// memory.
type device struct {
	components int
	in         curves                            // of each component, before the grid; nil for none
	sides      []int                             // points of the grid, of each component; nil for none
	xyz        func(values []float64) [3]float64 // from what the curves give, 0 to 1, to XYZ with the white D50
}

// of is the XYZ of values of the components, 0 to 1.
func (d *device) of(values []float64) [3]float64 { return d.xyz(d.in.of(values)) }

// deviceTable reads a profile's table of so many components, or nil when it has none. Where there are several it is
// that of colours relative to the white, as pictures in a PDF are shown unless it says otherwise (ISO 32000-1,
// 8.6.5.8), else the one that stands for all (8.10.2).
func deviceTable(profile []byte, components int) (*device, error) {
	name := "A2B1"
	data := tagOf(profile, name)
	if data == nil {
		name = "A2B0"
		data = tagOf(profile, name)
	}
	if data == nil {
		return nil, nil
	}
	t, err := readStages(data, components, connected)
	if err != nil {
		return nil, fmt.Errorf("its table %s %w", name, err)
	}
	connect := pcsXYZ
	if string(profile[20:24]) == "Lab " { // 7.2.7
		connect = pcsLab
		if t.legacy {
			connect = pcsLegacyLab
		}
	}
	return &device{components, t.in, t.sides, func(values []float64) [3]float64 {
		out := t.rest(values)
		return connect([3]float64{out[0], out[1], out[2]})
	}}, nil
}

// table is what a profile's table has: curves, a grid, and what comes behind.
type table struct {
	in     curves
	sides  []int
	rest   stage // from what the curves give to three numbers, 0 to 1, that encode a colour
	legacy bool  // they are Lab as version 2 had it in 16 bits
}

// stage is what a step of a table makes of numbers, 0 to 1 all of them.
type stage func(values []float64) []float64

// tagOf is the data of a profile's first tag of a name, or nil.
func tagOf(profile []byte, name string) []byte {
	for i := range tagCount(profile) {
		if is, at, n := tagEntry(profile, i); is == name {
			return profile[at : at+n : at+n]
		}
	}
	return nil
}

// readStages reads a table of any of the three types, from so many numbers to so many.
func readStages(data []byte, from, to int) (table, error) {
	if len(data) < 4 {
		return table{}, errors.New("is cut short")
	}
	switch kind := string(data[:4]); kind {
	case "mft1":
		return readLut(data, from, to, 1)
	case "mft2":
		t, err := readLut(data, from, to, 2)
		t.legacy = true // in version 4 too (10.10)
		return t, err
	case "mAB ":
		return readAToB(data, from, to)
	default:
		return table{}, fmt.Errorf("is of the kind %q", strings.ToValidUTF8(kind, "?"))
	}
}

// How the space that profiles connect to is encoded as numbers from 0 to 1 (6.3.4.2 and, for Lab of 16 bits in
// version 2, 10.10): XYZ up to 1 + 32767/32768; L* up to 100 and a*, b* from -128, to 127 or, with 65280 for 255, a
// little over.
func pcsXYZ(v [3]float64) [3]float64 {
	const most = 1 + 32767.0/32768
	return [3]float64{v[0] * most, v[1] * most, v[2] * most}
}

func pcsLab(v [3]float64) [3]float64 {
	return labToXYZ(v[0]*100, v[1]*255-128, v[2]*255-128)
}

func pcsLegacyLab(v [3]float64) [3]float64 {
	const k = 65535.0 / 65280
	return pcsLab([3]float64{v[0] * k, v[1] * k, v[2] * k})
}

// labToXYZ is CIE 1976 L*a*b* about the white D50 (CIE 15:2004, 8.2.1 undone, recalled from memory).
func labToXYZ(l, a, b float64) (xyz [3]float64) {
	const knee = 6.0 / 29
	y := (l + 16) / 116
	for i, f := range [3]float64{y + a/500, y, y - b/200} {
		t := 3 * knee * knee * (f - 4.0/29)
		if f > knee {
			t = f * f * f
		}
		xyz[i] = t * d50[i]
	}
	return xyz
}
