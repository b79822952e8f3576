package colour

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// Space is what a picture's levels mean by its own profile. From levels to linear light of sRGB's
// primaries, whose whites are one: ToSRGB (Light). Of a profile by tables, and of one for grey, the matrix changes
// nothing.
type Space struct {
	table *baked // of a profile by tables for RGB; nil for any other, which goes by the rest
	// tones is the light of each level, 0 to 1 of the full light of the profile's red, green and blue.
	tones [3][256]float32
	// ToSRGB takes that light to sRGB's, row by row. What sRGB can't show comes out under 0 or over 1.
	ToSRGB [3][3]float32
}

// Light is that of levels, to be mixed as it is: linear, of the profile's own red, green and blue, and ToSRGB takes
// what comes of it to sRGB's. A grey picture has its level three times.
func (s *Space) Light(red, green, blue uint8) [3]float32 {
	if s.table != nil {
		var light [3]float32
		for i, v := range s.table.at([mostComponents]uint8{red, green, blue}) {
			light[i] = float32(v) / fullLight
		}
		return light
	}
	return [3]float32{s.tones[0][red], s.tones[1][green], s.tones[2][blue]}
}

// Grey is the light of a grey picture's level.
func (s *Space) Grey(level uint8) float32 { return s.tones[0][level] }

// OwnSpace is what a profile makes of the levels of a grey or an RGB picture; nil when they are sRGB's to within a
// level. The error says why the profile can't be followed: tables can, a matrix with curves, and a curve for grey.
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
	if s, err := tableSpace(profile, grey); s != nil || err != nil { // tables go before a matrix (8.10)
		return s, err
	}
	if pcs := string(profile[20:24]); pcs != "XYZ " { // 7.2.7
		return nil, fmt.Errorf("it has no table and connects to %q, where a matrix needs XYZ", pcs)
	}
	tags := map[string][]byte{}
	for i := range tagCount(profile) {
		name, at, n := tagEntry(profile, i)
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
	return &Space{tones: [3][256]float32{tone, tone, tone}, ToSRGB: identity}, nil
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
		s.tones[i] = tone
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
			for k, v := range s.Light(uint8(levels[0]), uint8(levels[1]), uint8(levels[2])) {
				light += float64(row[k]) * float64(v)
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
