package colour

import (
	"encoding/binary"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour/icctest"
)

// mixedProfile has a curve of a kind of its own for each colour: a power, none, a table.
func mixedProfile() []byte {
	c := icctest.DisplayP3.Colorants
	return icctest.Profile("RGB ", 4,
		icctest.Tag{Name: "rXYZ", Data: icctest.XYZ(c[0])}, icctest.Tag{Name: "gXYZ", Data: icctest.XYZ(c[1])},
		icctest.Tag{Name: "bXYZ", Data: icctest.XYZ(c[2])},
		icctest.Tag{Name: "rTRC", Data: icctest.Gamma(0x1cd)}, icctest.Tag{Name: "gTRC", Data: icctest.Table()},
		icctest.Tag{Name: "bTRC", Data: icctest.Table(0, 8000, 30000, 65535)})
}

// inSRGB is what a colour of 8 bits is in sRGB's levels, not rounded.
func (s *Space) inSRGB(levels [3]int) (out [3]float64) {
	for i, row := range s.ToSRGB {
		light := 0.0
		for k := range levels {
			light += float64(row[k]) * float64(s.Light(uint8(levels[0]), uint8(levels[1]), uint8(levels[2]))[k])
		}
		out[i] = 255 * LightToSRGB(max(0, min(light, 1)))
	}
	return out
}

// What an outside colour engine makes of colours under the same profiles, saved to files: transicc 5.1 of lcms 2.14,
// "transicc -t1 -n -s -i FILE.icc -o '*sRGB'". It clips to what sRGB can show.
func TestOwnSpaceAgainstLCMS(t *testing.T) {
	const within = 0.02 // levels
	colours := [][3]int{{0, 0, 0}, {255, 255, 255}, {128, 128, 128}, {200, 120, 100}, {110, 150, 90}, {90, 110, 170},
		{40, 50, 45}, {30, 200, 60}}
	for _, c := range []struct {
		name    string
		profile []byte
		want    [][3]float64
	}{
		{"Adobe RGB (1998)", icctest.AdobeRGB.Profile(), [][3]float64{
			{0, 0, 0}, {255, 254.9997, 255}, {129.0307, 129.0302, 129.0308}, {223.7651, 120.8148, 99.0575},
			{87.3370, 151.4076, 85.6180}, {79.3297, 110.4826, 173.5428}, {29.6254, 46.4278, 40.6075}, {0, 201.3064, 36.5551},
		}},
		{"Display P3", icctest.DisplayP3.Profile(), [][3]float64{
			{0, 0, 0}, {254.9979, 255, 255}, {128, 128.0027, 128.0014}, {212.9809, 114.9999, 94.7681},
			{98.0985, 151.3983, 82.4129}, {84.6915, 110.7486, 174.7291}, {37.3638, 50.3762, 44.6763}, {0, 203.6241, 12.8190},
		}},
		{"ProPhoto", icctest.ProPhoto.Profile(), [][3]float64{
			{0, 0, 0}, {254.9979, 255, 255}, {146.3713, 146.3743, 146.3728}, {255, 114.1385, 114.6532},
			{97.4589, 173.9403, 96.1138}, {12.8689, 132.9922, 191.6196}, {38.9073, 67.6671, 58.2466}, {0, 229.8604, 0},
		}},
		{"a curve for each", mixedProfile(), [][3]float64{
			{0, 0, 0}, {254.9979, 255, 255}, {134.7097, 189.3391, 143.1830}, {215.7683, 181.2037, 107.8244},
			{103.5539, 203.9850, 91.2359}, {84.9487, 177.6177, 181.6583}, {0, 124.3628, 66.2297}, {0, 233.1977, 50.5442},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := OwnSpace(c.profile, false)
			require.NoError(t, err)
			for i, levels := range colours {
				out := got.inSRGB(levels)
				require.InDeltaSlice(t, c.want[i][:], out[:], within, "%v", levels)
			}
		})
	}
}

// Every kind of curve, as a grey profile's. The light is the Y, per cent, of "transicc -t1 -n -i FILE.icc -o
// '*XYZ'" of the same engine, at these levels.
func TestTonesAgainstLCMS(t *testing.T) {
	levels := [...]int{0, 20, 60, 64, 128, 200, 255}
	for _, c := range []struct {
		name  string
		curve []byte
		want  [len(levels)]float64
	}{
		{"no points", icctest.Table(), [...]float64{0, 7.8431, 23.5294, 25.0980, 50.1961, 78.4314, 100}},
		{"a power", icctest.Gamma(461), [...]float64{0, 1.0215, 7.3860, 8.2963, 28.9049, 64.5653, 100}},
		{"two points", icctest.Table(6000, 60000), [...]float64{9.1554, 15.6176, 28.5435, 29.8360, 50.5165, 73.7819,
			91.5541}},
		{"five points", icctest.Table(0, 1000, 9000, 40000, 65535),
			[...]float64{0, 0.4791, 1.4359, 1.5732, 14.1039, 66.3844, 100}},
		{"function 0", icctest.Formula(0, 2.2), [...]float64{0, 0.3697, 4.1452, 4.7776, 21.9520, 58.5973, 100}},
		{"function 1", icctest.Formula(1, 2.2, 1.1, -0.1), [...]float64{0, 0, 1.7458, 2.1904, 17.4434, 55.1104, 100}},
		{"function 2", icctest.Formula(2, 2, 0.9, -0.1, 0.2), [...]float64{19.9997, 19.9997, 21.2487, 21.5841, 32.3729,
			56.7077, 83.9977}},
		{"function 3", icctest.SRGB.Curve, [...]float64{0, 0.6996, 4.5189, 5.1272, 21.5865, 57.7584, 100}},
		{"function 4", icctest.Formula(4, 2, 0.9, 0.05, 0.3, 0.25, 0.05, 0.02),
			[...]float64{2.0004, 4.3534, 9.0593, 12.6115, 30.1771, 62.1359, 95.2497}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := readSpace(icctest.Grey(c.curve), true)
			require.NoError(t, err)
			for i, level := range levels {
				require.InDelta(t, c.want[i], 100*float64(got.tones[0][level]), 0.002, "level %d", level)
			}
			require.Equal(t, got.tones[0], got.tones[1])
			require.Equal(t, got.tones[0], got.tones[2])
			require.Equal(t, [3][3]float32{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, got.ToSRGB)
		})
	}
}

// A curve whose formula has no end stays within nothing and full light.
func TestWildTones(t *testing.T) {
	const most = 32767
	for name, curve := range map[string][]byte{
		"over and under":      icctest.Formula(4, 3, most, -most, most, 0.5, most, -most),
		"a power under 0":     icctest.Formula(0, -most),
		"a power of nothing":  icctest.Gamma(0),
		"a falling base":      icctest.Formula(1, 1.5, -2, 1),
		"the root of nothing": icctest.Formula(3, 0, 0, 0, 0, 0),
	} {
		tone, err := readTone(curve)
		require.NoError(t, err, name)
		for level, light := range tone {
			require.True(t, light >= 0 && light <= 1, "%s: level %d is %v", name, level, light)
		}
	}
}

// sRGB by its usual profile, by our formula or a table, and grey with its curve, are as if there were no
// profile. A plain power of 2.2 is another thing.
func TestSRGBIsNoSpaceOfItsOwn(t *testing.T) {
	points := make([]uint16, 1024)
	for i := range points {
		points[i] = uint16(math.Round(65535 * SRGBToLight(float64(i)/1023)))
	}
	// raised is the table a share of a level off from sRGB's curve where it is steepest to the eye.
	raised := func(levels float64) icctest.Space {
		points := make([]uint16, 1024)
		for i := range points {
			points[i] = uint16(math.Round(65535 * SRGBToLight(min(1, float64(i)/1023+levels/255*4*float64(i)/1023*
				(1-float64(i)/1023)))))
		}
		return icctest.Space{Colorants: icctest.SRGB.Colorants, Curve: icctest.Table(points...), Version: 2}
	}
	by := func(curve []byte) icctest.Space {
		return icctest.Space{Colorants: icctest.SRGB.Colorants, Curve: curve, Version: 2}
	}
	for _, c := range []struct {
		name    string
		profile []byte
		grey    bool
		own     bool
	}{
		{"sRGB by a formula", icctest.SRGB.Profile(), false, false},
		{"sRGB by a table", by(icctest.Table(points...)).Profile(), false, false},
		{"grey with its curve", icctest.Grey(icctest.Table(points...)), true, false},
		{"its colours, up to 0.8 levels off", raised(0.8).Profile(), false, false},
		{"its colours, up to 1.3 levels off", raised(1.3).Profile(), false, true},
		{"its colours, a power of 2.2", by(icctest.Gamma(563)).Profile(), false, true},
		{"grey, a power of 2.2", icctest.Grey(icctest.Gamma(563)), true, true},
		{"its curve, other colours", icctest.DisplayP3.Profile(), false, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := OwnSpace(c.profile, c.grey)
			require.NoError(t, err)
			require.Equal(t, c.own, got != nil)
		})
	}
}

func TestProfilesNotFollowed(t *testing.T) {
	good := icctest.AdobeRGB.Profile()
	header := func(at int, text string) []byte {
		p := slices.Clone(good)
		copy(p[at:], text)
		return p
	}
	with := func(name string, data []byte) []byte { // a tag in front of the good ones, which then counts
		c := icctest.AdobeRGB.Colorants
		return icctest.Profile("RGB ", 2, icctest.Tag{Name: name, Data: data},
			icctest.Tag{Name: "rXYZ", Data: icctest.XYZ(c[0])}, icctest.Tag{Name: "gXYZ", Data: icctest.XYZ(c[1])},
			icctest.Tag{Name: "bXYZ", Data: icctest.XYZ(c[2])},
			icctest.Tag{Name: "rTRC", Data: icctest.Gamma(563)}, icctest.Tag{Name: "gTRC", Data: icctest.Gamma(563)},
			icctest.Tag{Name: "bTRC", Data: icctest.Gamma(563)})
	}
	long := icctest.Table(1, 2, 3)
	binary.BigEndian.PutUint32(long[8:], 1<<32-1)
	for _, c := range []struct {
		name    string
		profile []byte
		want    string
	}{
		{"connects to Lab", header(20, "Lab "), `it has no table and connects to "Lab ", where a matrix needs XYZ`},
		{"a printer's", header(12, "prtr"), "it is a printer's"},
		{"a device link", header(12, "link"), `its class "link"`},
		{"cut short", good[:200], "says that it has"},
		{"empty", []byte{}, "only 0 bytes"},
		{"a table of nothing", with("A2B0", make([]byte, 40)), `its table A2B0 is of the kind "\x00\x00\x00\x00"`},
		{"nothing in it", icctest.Profile("RGB ", 2), "its curve rTRC is missing"},
		{"a colorant is none", with("gXYZ", icctest.Gamma(1)), `its colorant gXYZ is of the kind "curv"`},
		{"a colorant cut short", with("bXYZ", icctest.XYZ(icctest.D50)[:16]), "its colorant bXYZ is cut short"},
		{"a curve is none", with("rTRC", icctest.XYZ(icctest.D50)), `its curve rTRC is of the kind "XYZ "`},
		{"a curve of no bytes", with("gTRC", nil), "its curve gTRC is cut short"},
		{"a curve of endless points", with("bTRC", long), "its curve bTRC says that it has 4294967295 points, more than " +
			"fit in it"},
		{"an unknown function", with("rTRC", icctest.Formula(5, 1, 1, 1, 1, 1, 1, 1)),
			"its curve rTRC is of the unknown function 5"},
		{"a function with too few numbers", with("rTRC", icctest.Formula(3, 1, 1, 1, 1)), "its curve rTRC is cut short"},
		{"a function that divides by nothing", with("rTRC", icctest.Formula(1, 1, 0, 1)),
			"its curve rTRC of function 1 divides by nothing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			colours, err := OwnSpace(c.profile, false)
			require.ErrorContains(t, err, c.want)
			require.Nil(t, colours)
		})
	}
	_, err := OwnSpace(icctest.Profile("GRAY", 2), true)
	require.EqualError(t, err, "its curve kTRC is missing")
}

// FuzzOwnSpace: whatever the bytes, an error or tones from 0 to 1 and a matrix of numbers.
func FuzzOwnSpace(f *testing.F) {
	seeds := [][]byte{icctest.AdobeRGB.Profile(), icctest.DisplayP3.Profile(), icctest.SRGB.Profile(), mixedProfile(),
		icctest.Profile("RGB ", 2, icctest.Tag{Name: "A2B0", Data: make([]byte, 40)})}
	for kind, numbers := range [][]float64{{2.2}, {2.2, 1.1, -0.1}, {2, 0.9, -0.1, 0.2}, {2.4, 0.9, 0.1, 0.1, 0.04},
		{2, 0.9, 0.05, 0.3, 0.25, 0.05, 0.02}} {
		seeds = append(seeds, icctest.Grey(icctest.Formula(byte(kind), numbers...)))
	}
	small := func(v []float64) [3]float64 { return [3]float64{v[0], v[len(v)/2], v[len(v)-1]} }
	seeds = append(seeds,
		icctest.Printer("RGB ", "Lab ", 4, icctest.Tag{Name: "A2B0", Data: icctest.Lut(3, 2, 1, plain, plain, small)}),
		icctest.Printer("RGB ", "XYZ ", 4, icctest.Tag{Name: "A2B1", Data: icctest.AToB(3, 2, 2, icctest.Formula(0, -1),
			icctest.Table(), icctest.Table(9, 7), 1, 0, small)}),
		icctest.Printer("GRAY", "Lab ", 2, icctest.Tag{Name: "A2B0", Data: icctest.Lut(1, 2, 1, plain, plain, small)}))
	seeds = append(seeds, icctest.Grey(icctest.Table()), icctest.Grey(icctest.Table(0, 9000, 65535)))
	for i, seed := range seeds {
		for _, grey := range []bool{false, true} {
			c, err := readSpace(seed, grey)
			require.False(f, c == nil && err == nil, fmt.Sprint("seed ", i))
		}
		f.Add(seed)
		f.Add(seed[:len(seed)-3])
	}
	f.Fuzz(func(t *testing.T, profile []byte) {
		if len(profile) >= 4 { // most changes would end at the length it states
			binary.BigEndian.PutUint32(profile, uint32(len(profile)))
		}
		for _, grey := range []bool{false, true} {
			c, err := readSpace(profile, grey)
			again, againErr := OwnSpace(profile, grey)
			require.Equal(t, err, againErr)
			if err != nil {
				require.Nil(t, c)
				require.Nil(t, again)
				continue
			}
			for _, tone := range c.tones {
				for level, light := range tone {
					require.True(t, light >= 0 && light <= 1, "level %d is %v", level, light)
				}
			}
			for _, row := range c.ToSRGB {
				for _, v := range row {
					require.False(t, math.IsNaN(float64(v)) || math.IsInf(float64(v), 0), "%v", row)
				}
			}
		}
	})
}
