package colour

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour/icctest"
)

// plain is a curve that changes nothing.
func plain(v float64) float64 { return v }

// tabled are profiles by tables, of each kind, in 8 and 16 bits, by Lab and by XYZ, for four, three and one component.
func tabled() map[string][]byte {
	tables := func(space, connects string, version byte, a2b0 []byte) []byte {
		return icctest.Printer(space, connects, version, icctest.Tag{Name: "A2B0", Data: a2b0},
			icctest.Tag{Name: "B2A0", Data: icctest.PressInks()})
	}
	power := func(p float64) func(v float64) float64 { return func(v float64) float64 { return math.Pow(v, p) } }
	return map[string][]byte{
		"cmyk-mft2": icctest.Press(),
		"cmyk-mft1": tables("CMYK", "Lab ", 2, icctest.Lut(4, 7, 1, power(0.8), plain, func(v []float64) [3]float64 {
			u := make([]float64, 4)
			for i := range v {
				u[i] = math.Pow(v[i], 1/0.8)
			}
			return icctest.EncodedLab(icctest.PressLab(u))
		})),
		"cmyk-mAB": tables("CMYK", "Lab ", 4, icctest.AToB(4, 8, 2, icctest.Formula(0, 1.1), icctest.Gamma(512),
			icctest.Table(), 1.0/0.9, -0.05/0.9, func(v []float64) [3]float64 {
				encoded := icctest.EncodedLab(icctest.PressLab(v))
				for i := range encoded { // the matrix undone, then the M curve
					encoded[i] = 0.9*encoded[i] + 0.05
				}
				return [3]float64{math.Sqrt(encoded[0]), math.Sqrt(encoded[1]), math.Sqrt(encoded[2])}
			})),
		"cmyk-mft2-xyz": icctest.CoarsePress(),
		"rgb-mft2-xyz":  icctest.Scanner(),
		"grey-mft2": tables("GRAY", "Lab ", 2, icctest.Lut(1, 9, 2, plain, plain, func(v []float64) [3]float64 {
			return icctest.Legacy([3]float64{100 * math.Pow(v[0], 0.7), 0, 0})
		})),
	}
}

// components are how many a profile of tabled has.
func components(name string) int {
	switch name[:3] {
	case "rgb":
		return 3
	case "gre":
		return 1
	}
	return 4
}

// What an outside colour engine makes of the same profiles, Little CMS 2.14. With -artifacts this test leaves the
// profiles and the colours to ask for; testdata/littlecms/README.md says how it was asked.
func TestTablesAgainstLittleCMS(t *testing.T) {
	for name, profile := range tabled() {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, os.WriteFile(filepath.Join(t.ArtifactDir(), name+".icc"), profile, 0o600))
			n := components(name)
			var asked [][4]uint8
			levels := map[int][]uint8{1: {0, 10, 60, 100, 128, 200, 255}, 3: {0, 60, 128, 200, 255},
				4: {0, 60, 128, 200, 255}}[n]
			for i := range int(math.Pow(float64(len(levels)), float64(n))) {
				var c [4]uint8
				for k := range n {
					c[k] = levels[i%len(levels)]
					i /= len(levels)
				}
				asked = append(asked, c)
			}
			writeAsked(t, name, asked, n)
			want := readWanted(t, name)
			require.Len(t, want, len(asked))
			worst, sum, inSRGB := 0.0, 0.0, inSRGB(t, profile, n)
			for i, c := range asked {
				for k, got := range inSRGB(c) {
					off := math.Abs(got - want[i][k])
					worst, sum = max(worst, off), sum+off*off
				}
			}
			t.Logf("%d colours: %.2f levels at worst, %.3f by root mean square", len(asked), worst,
				math.Sqrt(sum/float64(3*len(asked))))
			require.LessOrEqual(t, worst, map[bool]float64{true: 1, false: 3}[n == 4])
			require.Less(t, math.Sqrt(sum/float64(3*len(asked))), 0.5, "0.29 is what rounding to whole levels takes")
		})
	}
}

// inSRGB is what the program makes of colours: sRGB's levels.
func inSRGB(t *testing.T, profile []byte, components int) func(c [4]uint8) [3]float64 {
	if components == 4 {
		inks, err := ReadInks(profile)
		require.NoError(t, err)
		return func(c [4]uint8) [3]float64 {
			pix := c[:]
			inks.ToRGB(pix)
			require.Equal(t, uint8(255), pix[3])
			return [3]float64{float64(pix[0]), float64(pix[1]), float64(pix[2])}
		}
	}
	space, err := OwnSpace(profile, components == 1)
	require.NoError(t, err)
	require.NotNil(t, space)
	return func(c [4]uint8) [3]float64 {
		if components == 1 {
			c[1], c[2] = c[0], c[0]
		}
		return space.inSRGB([3]int{int(c[0]), int(c[1]), int(c[2])})
	}
}

// writeAsked writes colours as transicc takes them: per cent of inks, levels of lights.
func writeAsked(t *testing.T, name string, asked [][4]uint8, n int) {
	f, err := os.Create(filepath.Join(t.ArtifactDir(), name+".ask"))
	require.NoError(t, err)
	defer f.Close()
	for _, c := range asked {
		for _, v := range c[:n] {
			if n == 4 {
				fmt.Fprintf(f, "%.9f ", float64(v)*100/255)
			} else {
				fmt.Fprintf(f, "%d ", v)
			}
		}
		fmt.Fprintln(f)
	}
}

// readWanted reads what Little CMS answered.
func readWanted(t *testing.T, name string) (want [][3]float64) {
	f, err := os.Open(filepath.Join("testdata", "littlecms", name+".txt"))
	require.NoError(t, err)
	defer f.Close()
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		var v [3]float64
		_, err := fmt.Sscan(lines.Text(), &v[0], &v[1], &v[2])
		require.NoError(t, err)
		want = append(want, v)
	}
	return want
}

// Whatever is wrong with a table is told, and nothing is asked for that is not there.
func TestTablesNotFollowed(t *testing.T) {
	good := icctest.Lut(4, 3, 2, plain, plain, func(v []float64) [3]float64 { return [3]float64{1 - v[3], 0.5, 0.5} })
	at := func(data []byte, i int, v ...byte) []byte {
		data = slices.Clone(data)
		copy(data[i:], v)
		return data
	}
	aToB := icctest.AToB(4, 3, 1, icctest.Table(), icctest.Table(), icctest.Table(), 1, 0,
		func(v []float64) [3]float64 { return [3]float64{1 - v[3], 0.5, 0.5} })
	for _, c := range []struct {
		name string
		a2b0 []byte
		want string
	}{
		{"good", good, ""},
		{"good, of another kind", aToB, ""},
		{"no bytes", nil, "its table A2B0 is cut short"},
		{"another kind", icctest.Gamma(1), `its table A2B0 is of the kind "curv"`},
		{"for RGB", at(good, 8, 3), "its table A2B0 is for 3 components in place of 4"},
		{"to inks", at(good, 9, 4), "its table A2B0 gives 4 numbers in place of 3"},
		{"a grid of one", at(good, 10, 1), "its table A2B0 has a grid of 1 points a side"},
		{"a grid of 255", at(good, 10, 255), "its table A2B0 is cut short"},
		{"curves of one point", at(good, 48, 0, 1), "its table A2B0 has curves of 1 and 33 points"},
		{"curves of 65535", at(good, 48, 255, 255), "its table A2B0 has curves of 65535 and 33 points"},
		{"cut short", good[:len(good)-1], "its table A2B0 is cut short"},
		{"a stage outside it", at(aToB, 24, 127, 255, 255, 255), "its table A2B0 has a stage outside it"},
		{"a stage over its head", at(aToB, 24, 0, 0, 0, 8), "its table A2B0 has a stage outside it"},
		{"no B curves", at(aToB, 12, 0, 0, 0, 0), "its table A2B0 has no B curves"},
		{"no grid", at(aToB, 24, 0, 0, 0, 0), "its table A2B0 has no grid"},
		{"numbers of three bytes", at(aToB, int(aToB[27])+int(aToB[26])<<8+16, 3),
			"its table A2B0 has a grid of numbers of 3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			inks, err := ReadInks(icctest.Printer("CMYK", "Lab ", 2, icctest.Tag{Name: "A2B0", Data: c.a2b0}))
			if c.want == "" {
				require.NoError(t, err)
				require.NotNil(t, inks)
				return
			}
			require.ErrorContains(t, err, c.want)
			require.Nil(t, inks)
		})
	}
	_, err := ReadInks(icctest.Printer("CMYK", "Lab ", 2))
	require.EqualError(t, err, "it has no table (A2B0)")
	_, err = ReadInks(icctest.AdobeRGB.Profile())
	require.EqualError(t, err, `it is for "RGB " and the picture is "CMYK"`)
	forged := icctest.Press()
	binary.BigEndian.PutUint32(forged[128:], 2_000_000_000)
	_, err = ReadInks(forged)
	require.EqualError(t, err, "it says that it has 2000000000 tags, more than fit in it")
}

// FuzzReadInks: whatever the bytes, an error or levels.
func FuzzReadInks(f *testing.F) {
	small := icctest.Lut(4, 2, 1, plain, plain, func(v []float64) [3]float64 { return [3]float64{1 - v[3], 0.5, 0.5} })
	aToB := icctest.AToB(4, 2, 1, icctest.Formula(3, 2.4, 0.9, 0.1, 0.1, 0.04), icctest.Table(0, 9000, 65535),
		icctest.Formula(0, -1), 1, 0, func(v []float64) [3]float64 { return [3]float64{v[0], v[1], v[3]} })
	for _, data := range [][]byte{small, aToB} {
		profile := icctest.Printer("CMYK", "XYZ ", 4, icctest.Tag{Name: "A2B1", Data: data})
		_, err := ReadInks(profile)
		require.NoError(f, err)
		f.Add(profile)
		f.Add(profile[:len(profile)-3])
	}
	f.Fuzz(func(t *testing.T, profile []byte) {
		if len(profile) >= 4 { // most changes would end at the length it states
			binary.BigEndian.PutUint32(profile, uint32(len(profile)))
		}
		inks, err := ReadInks(profile)
		if err != nil {
			require.Nil(t, inks)
			return
		}
		pix := []uint8{0, 0, 0, 0, 255, 255, 255, 255, 10, 100, 200, 30}
		inks.ToRGB(pix)
		require.Equal(t, [3]uint8{255, 255, 255}, [3]uint8{pix[3], pix[7], pix[11]})
	})
}
