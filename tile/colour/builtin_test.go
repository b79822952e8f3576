package colour

import (
	"encoding/binary"
	"testing"

	"github.com/stretchr/testify/require"
)

// parsed is a profile read back by the layout of ICC.1:2001-04, 6.1 to 6.5; clauses and published figures in
// this file are recalled from memory.
type parsed struct {
	t    *testing.T
	icc  []byte
	tags map[string][]byte
}

func parse(t *testing.T, icc []byte) parsed {
	be := binary.BigEndian
	require.Equal(t, len(icc), int(be.Uint32(icc)))
	tags := map[string][]byte{}
	for i := range int(be.Uint32(icc[128:])) {
		e := icc[132+12*i:]
		offset, size := be.Uint32(e[4:]), be.Uint32(e[8:])
		require.Zero(t, offset%4, "tag data begins at a multiple of four")
		tags[string(e[:4])] = icc[offset : offset+size]
	}
	return parsed{t, icc, tags}
}

func (p parsed) xyz(tag string) []float64 {
	data := p.tags[tag]
	require.Equal(p.t, "XYZ \x00\x00\x00\x00", string(data[:8]))
	require.Len(p.t, data, 20)
	var out []float64
	for i := range 3 {
		out = append(out, float64(int32(binary.BigEndian.Uint32(data[8+4*i:])))/65536)
	}
	return out
}

// curve evaluates a curveType as a reader does: a straight line between points.
func (p parsed) curve(tag string, v float64) float64 {
	data := p.tags[tag]
	require.Equal(p.t, "curv\x00\x00\x00\x00", string(data[:8]))
	n := int(binary.BigEndian.Uint32(data[8:]))
	require.Len(p.t, data, 12+2*n)
	point := func(i int) float64 { return float64(binary.BigEndian.Uint16(data[12+2*i:])) / 65535 }
	at := v * float64(n-1)
	i := min(int(at), n-2)
	return point(i) + (at-float64(i))*(point(i+1)-point(i))
}

func TestHeadersOfTheBuiltInProfiles(t *testing.T) {
	for _, grey := range []bool{false, true} {
		icc := SRGBProfile(grey)
		space, wantTags := "RGB ", []string{"desc", "cprt", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"} // 6.3.2.2
		if grey {
			space, wantTags = "GRAY", []string{"desc", "cprt", "wtpt", "kTRC"} // 6.3.2.1
		}
		require.NoError(t, CheckProfile(icc, grey))
		require.Error(t, CheckProfile(icc, !grey))
		p := parse(t, icc)
		require.Equal(t, []byte{2, 0x40, 0, 0}, icc[8:12], "version 2.4")
		require.Equal(t, "mntr"+space+"XYZ ", string(icc[12:24]))
		require.Equal(t, "acsp", string(icc[36:40]))
		// The D50 that every profile must state, as published bytes (ICC.1:2001-04, 6.1, header bytes 68 to 79;
		// from memory of many profiles).
		require.Equal(t, []byte{0, 0, 0xF6, 0xD6, 0, 1, 0, 0, 0, 0, 0xD3, 0x2D}, icc[68:80])
		for _, tag := range wantTags {
			require.Contains(t, p.tags, tag)
		}
		require.Len(t, p.tags, len(wantTags))
		require.InDeltaSlice(t, []float64{0.9642, 1, 0.8249}, p.xyz("wtpt"), 1.0/65536)
		require.Equal(t, byte(0), p.tags["cprt"][len(p.tags["cprt"])-1])
		desc := p.tags["desc"]
		ascii := binary.BigEndian.Uint32(desc[8:])
		require.Equal(t, byte(0), desc[12+ascii-1])
		require.Len(t, desc, int(12+ascii+4+4+2+1+67))
	}
}

// What we write for sRGB is what an artwork that carries it is taken for.
func TestTheBuiltInProfilesAreReadAsSRGBs(t *testing.T) {
	for _, grey := range []bool{false, true} {
		space, err := OwnSpace(SRGBProfile(grey), grey)
		require.NoError(t, err)
		require.Nil(t, space)
	}
}

func TestSRGBColorantsAgainstPublishedFigures(t *testing.T) {
	p := parse(t, srgbProfile())
	// Lindbloom, "RGB/XYZ Matrices", sRGB with D50 reference white (Bradford). He takes D65 and D50 from ASTM E308,
	// not from the chromaticity of IEC 61966-2-1 and the ICC header, which moves the figures by up to 0.0005.
	published := map[string][]float64{
		"rXYZ": {0.4360747, 0.2225045, 0.0139322},
		"gXYZ": {0.3850649, 0.7168786, 0.0971045},
		"bXYZ": {0.1430804, 0.0606169, 0.7141733},
	}
	sum := []float64{0, 0, 0}
	for tag, want := range published {
		got := p.xyz(tag)
		require.InDeltaSlice(t, want, got, 0.0005, tag)
		for i := range sum {
			sum[i] += got[i]
		}
	}
	require.InDeltaSlice(t, []float64{0.9642, 1, 0.8249}, sum, 2.0/65536,
		"full red, green and blue together are the white of the connection space")
}

func TestCurvesAgainstPublishedFigures(t *testing.T) {
	tests := []struct {
		name           string
		value          float64
		want, withinBy float64
	}{
		{"black", 0, 0, 0},
		{"white", 1, 1, 0},
		// by hand: ((0.46667+0.055)/1.055)^2.4 = 0.49447^2.4
		{"119, the middle grey of test charts: 18.45 %", 119.0 / 255, 0.18448, 0.00002},
		// by hand: ((0.73725+0.055)/1.055)^2.4 = 0.75095^2.4
		{"188 is half the light", 188.0 / 255, 0.50289, 0.00002},
		{"the line near black: 10 / 12.92", 10.0 / 255, 0.0030353, 0.00001},
		{"the join", 0.04045, 0.0031308, 0.00001}, // IEC 61966-2-1 gives the join both ways: 0.04045 and 0.0031308
	}
	for _, profile := range []struct {
		p    parsed
		tags []string
	}{{parse(t, srgbProfile()), []string{"rTRC", "gTRC", "bTRC"}}, {parse(t, greyProfile()), []string{"kTRC"}}} {
		for _, tag := range profile.tags {
			for _, test := range tests {
				require.InDelta(t, test.want, profile.p.curve(tag, test.value), test.withinBy, "%s, %s", tag, test.name)
			}
		}
	}
}
