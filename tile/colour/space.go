package colour

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"strings"
)

// Space is what a picture's levels mean by its own profile. From levels to linear light of sRGB's
// primaries, whose whites are one: ToSRGB (Tones[0][red], Tones[1][green], Tones[2][blue]). A grey picture's
// three tones are the same, and its matrix changes nothing.
type Space struct {
	// Tones is the light of each level, 0 to 1 of the full light of the profile's red, green and blue.
	Tones [3][256]float32
	// ToSRGB takes that light to sRGB's, row by row. What sRGB can't show comes out under 0 or over 1.
	ToSRGB [3][3]float32
}

// OwnSpace is what a profile makes of the levels of a grey or an RGB picture; nil when they are sRGB's to within a
// level. The error says why the profile can't be followed: only a matrix with curves can, and a curve for grey.
func OwnSpace(profile []byte, grey bool) (*Space, error) {
	s, err := readSpace(profile, grey)
	if err != nil || s.isSRGB() {
		return nil, err
	}
	return s, nil
}

// readSpace reads a profile for grey or for RGB pictures. Clauses are those of ICC.1:2010, recalled from memory.
func readSpace(profile []byte, grey bool) (*Space, error) {
	if err := CheckProfile(profile, grey); err != nil {
		return nil, err
	}
	if pcs := string(profile[20:24]); pcs != "XYZ " { // 7.2.7
		return nil, fmt.Errorf("it connects to %q, and only XYZ is followed", pcs)
	}
	tags := map[string][]byte{}
	for i := range tagCount(profile) {
		name, at, n := tagEntry(profile, i)
		if strings.HasPrefix(name, "A2B") || strings.HasPrefix(name, "D2B") { // these go before a matrix (8.10)
			return nil, fmt.Errorf("it goes by tables (%s), and only a matrix with curves is followed", name)
		}
		if kind := name[1:]; tags[name] == nil && (kind == "XYZ" || kind == "TRC") {
			tags[name] = profile[at : at+n]
		}
	}
	if grey { // 8.3.4, 8.4.4: a printer's too has but the curve
		return greySpace(tags["kTRC"])
	}
	if string(profile[12:16]) == "prtr" { // 8.5: a printer's has tables
		return nil, errors.New("it is a printer's")
	}
	return matrixSpace(tags)
}

// greySpace reads a grey profile's curve, which goes from level to a share of the white (F.2).
func greySpace(curve []byte) (*Space, error) {
	tone, err := readTone(curve)
	if err != nil {
		return nil, fmt.Errorf("its curve kTRC %w", err)
	}
	return &Space{Tones: [3][256]float32{tone, tone, tone}, ToSRGB: [3][3]float32{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}, nil
}

// matrixSpace reads a three-component matrix profile: curves to light, colorants to XYZ (F.3), and from
// there sRGB's matrix back.
func matrixSpace(tags map[string][]byte) (*Space, error) {
	var s Space
	toSRGB := xyzToSRGBLight()
	for i, colour := range []string{"r", "g", "b"} {
		tone, err := readTone(tags[colour+"TRC"])
		if err != nil {
			return nil, fmt.Errorf("its curve %sTRC %w", colour, err)
		}
		s.Tones[i] = tone
		colorant, err := readXYZ(tags[colour+"XYZ"])
		if err != nil {
			return nil, fmt.Errorf("its colorant %sXYZ %w", colour, err)
		}
		for row, v := range toSRGB.times(colorant) {
			s.ToSRGB[row][i] = float32(v)
		}
	}
	return &s, nil
}

// readXYZ reads an XYZType of one colour (10.27).
func readXYZ(data []byte) (xyz [3]float64, err error) {
	if err := refuseTag(data, "XYZ ", 8+3*4); err != nil {
		return xyz, err
	}
	for i := range xyz {
		xyz[i] = fixed16(data[8+4*i:])
	}
	return xyz, nil
}

// refuseTag says what is wrong with a tag that should be of a type and at least so long; nil stands for one
// that is not there.
func refuseTag(data []byte, kind string, bytes int) error {
	switch {
	case data == nil:
		return errors.New("is missing")
	case len(data) >= 4 && string(data[:4]) != kind:
		return fmt.Errorf("is of the kind %q", data[:4])
	case len(data) < bytes:
		return errors.New("is cut short")
	}
	return nil
}

// fixed16 reads an s15Fixed16Number (4.6).
func fixed16(data []byte) float64 { return float64(int32(binary.BigEndian.Uint32(data))) / 65536 }

// isSRGB says whether no colour is a whole level off from sRGB's, on a grid of 17 levels' step and on every
// grey. The profiles of sRGB that are about differ from its standard by rounding, the widest spread by half a
// level where red should be nil beside full green.
func (s *Space) isSRGB() bool {
	near := func(levels [3]int) bool {
		for i, row := range s.ToSRGB {
			light := 0.0
			for k, v := range levels {
				light += float64(row[k]) * float64(s.Tones[k][v])
			}
			if !(math.Abs(255*LightToSRGB(max(0, min(light, 1)))-float64(levels[i])) < 1) {
				return false
			}
		}
		return true
	}
	for v := range 256 {
		if !near([3]int{v, v, v}) {
			return false
		}
	}
	const step, steps = 17, 16 // 0 to 255
	for n := range steps * steps * steps {
		if !near([3]int{step * (n % steps), step * (n / steps % steps), step * (n / steps / steps)}) {
			return false
		}
	}
	return true
}
