package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"

	"dropsheet/tile/colour"
)

// Filter says how the data of a picture is encoded.
type Filter int

// The filters that Stream writes (ISO 32000-1, 7.4; clauses in this file are recalled from memory).
const (
	DCT   Filter = iota + 1 // a baseline JPEG file
	Flate                   // zlib data, each row after its PNG filter type
)

// Picture is an encoded picture of 8 bits a component, grey or RGB. EncodeJPEG and EncodeFlate make one.
type Picture struct {
	WidthPx, HeightPx int
	Gray              bool
	Filter            Filter
	Data              []byte
	// Profile is the ICC profile that the pixels are in; colour.CheckProfile says whether it fits. Nil stands for sRGB,
	// or grey with the curve of sRGB. Equal profiles are written once; don't change one until Stream returns.
	Profile []byte
}

func (p Picture) check() error {
	switch {
	case p.WidthPx < 1 || p.HeightPx < 1:
		return fmt.Errorf("a size of %d x %d pixels: both must be above zero", p.WidthPx, p.HeightPx)
	case len(p.Data) == 0:
		return errors.New("no data")
	case p.Filter != DCT && p.Filter != Flate:
		return fmt.Errorf("filter %d is unknown\nhint: take DCT or Flate", p.Filter)
	}
	if p.Profile != nil {
		if err := colour.CheckProfile(p.Profile, p.Gray); err != nil {
			return fmt.Errorf("its colour profile can't be used: %w", err)
		}
	}
	return nil
}

// components returns how many numbers a pixel has.
func (p Picture) components() int {
	if p.Gray {
		return 1
	}
	return 3
}

// picture writes a picture in the place of a stub, with its profile before it if that is new (ISO 32000-1, 8.9.5).
func (u *update) picture(number int, p Picture) error {
	if err := p.check(); err != nil {
		return err
	}
	icc := p.Profile
	if icc == nil {
		icc = colour.SRGBProfile(p.Gray)
	}
	space, err := u.profile(icc, p.components())
	if err != nil {
		return err
	}
	filter := "/Filter /DCTDecode"
	if p.Filter == Flate {
		filter = fmt.Sprintf("/Filter /FlateDecode /DecodeParms <</Predictor %d /Colors %d /BitsPerComponent 8 /Columns %d>>",
			pngUpPredictor, p.components(), p.WidthPx)
	}
	u.begin(number)
	u.stream(fmt.Sprintf("<</Type /XObject /Subtype /Image /Width %d /Height %d /ColorSpace [/ICCBased %d 0 R] "+
		"/BitsPerComponent 8 %s",
		p.WidthPx, p.HeightPx, space, filter), p.Data)
	return nil
}

// profile returns the object number of an ICC profile, and writes it on first use (ISO 32000-1, 8.6.5.5).
func (u *update) profile(icc []byte, components int) (int, error) {
	for _, p := range u.profiles {
		if bytes.Equal(p.icc, icc) {
			return p.number, nil
		}
	}
	var packed bytes.Buffer
	z, err := zlib.NewWriterLevel(&packed, zlib.BestCompression)
	if err != nil {
		return 0, err
	}
	if _, err := z.Write(icc); err != nil {
		return 0, err
	}
	if err := z.Close(); err != nil {
		return 0, err
	}
	alternate := "/DeviceRGB"
	if components == 1 {
		alternate = "/DeviceGray"
	}
	number := u.size
	u.size++
	u.begin(number)
	u.stream(fmt.Sprintf("<</N %d /Alternate %s /Filter /FlateDecode", components, alternate), packed.Bytes())
	u.profiles = append(u.profiles, writtenProfile{icc: icc, number: number})
	return number, nil
}
