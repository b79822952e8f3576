package sheet

import (
	"image"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// A sheet that is cut and packed band by band has the bytes of one that is cut whole, beyond the grid's first row too:
// flat, filtered, bent and levelled.
func TestBandsAreTheWhole(t *testing.T) {
	bent := func(s *layout.Setup) { s.Look, s.DistanceMM = layout.Straight, 300 }
	lit := func(s *layout.Setup) {
		s.Lamps, s.Level = []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}, {XMM: 600, YMM: -400, ZMM: 900}}, true
	}
	const w, h = 1500, 1000
	for name, c := range map[string]struct {
		shrink float64
		change func(*layout.Setup)
	}{"own pixels": {1, nil}, "filtered": {1.7, nil}, "bent": {1, bent}, "bent and filtered": {1.7, bent},
		"levelled": {1, lit}} {
		t.Run(name, func(t *testing.T) {
			j := cutFrom(flatJob(t, c.change), photo(w, h), c.shrink)
			r := pdf.WholeBlocks(image.Rect(-20, -20, 500, 900))
			for _, cut := range []func(image.Rectangle) image.Image{j.Source.Cut, j.Source.CutYCbCr} {
				whole, err := pdf.EncodeJPEG(cut(r), jpegQuality, j.Source.Chroma())
				require.NoError(t, err)
				banded, err := pdf.EncodeJPEGBands(r.Size(), bands(r, cut), jpegQuality, j.Source.Chroma())
				require.NoError(t, err)
				require.Equal(t, whole, banded)
			}
			whole, err := pdf.EncodeFlate(j.Source.Cut(r))
			require.NoError(t, err)
			banded, err := pdf.EncodeFlateBands(r.Size(), bands(r, j.Source.Cut))
			require.NoError(t, err)
			require.Equal(t, whole, banded)
		})
	}
}
