package pdftest

import (
	"fmt"
	"image/color"
	"testing"

	"github.com/stretchr/testify/require"
)

// handmade is a PDF file written by hand from ISO 32000-1, annex H.3 (recalled from memory), so that the
// reader is not tested with our own writer. PDFium mends its missing cross-reference table.
const handmade = `%%PDF-1.4
1 0 obj <</Type /Catalog /Pages 2 0 R>> endobj
2 0 obj <</Type /Pages /Kids [3 0 R 4 0 R] /Count 2>> endobj
3 0 obj <</Type /Page /Parent 2 0 R /MediaBox [0 0 200 100] /CropBox [0 0 200 100] /BleedBox [5 6 190 95]
 /TrimBox [10 20 180 90]
 /Resources <</Font <</F 5 0 R>>>> /Contents 6 0 R>> endobj
4 0 obj <</Type /Page /Parent 2 0 R /MediaBox [0 0 50 70] /CropBox [0 0 40 60]>> endobj
5 0 obj <</Type /Font /Subtype /Type1 /BaseFont /Helvetica>> endobj
6 0 obj <</Length %d>> stream
%s
endstream endobj
7 0 obj <</Title (Harbour)>> endobj
trailer <</Root 1 0 R /Info 7 0 R /Size 8>>
%%%%EOF
`

func TestReadsAFileWrittenByHand(t *testing.T) {
	content := "1 0 0 rg 0 50 100 50 re f BT /F 12 Tf 20 20 Td (QUAY 7) Tj ET"
	doc := Open(t, fmt.Appendf(nil, handmade, len(content), content))

	require.Equal(t, 2, doc.PageCount())
	require.Equal(t, "Harbour", doc.Title())
	require.Equal(t, "QUAY 7", doc.Text(1))
	require.Empty(t, doc.Text(2))

	w, h := doc.PageSizePoints(1)
	require.Equal(t, [2]float64{200, 100}, [2]float64{w, h})
	require.Equal(t, Boxes{
		Media: Box{0, 0, 200, 100},
		Crop:  Box{0, 0, 200, 100},
		Bleed: Box{5, 6, 190, 95},
		Trim:  Box{10, 20, 180, 90},
	}, doc.PageBoxes(1))
	require.Equal(t, Boxes{
		Media: Box{0, 0, 50, 70},
		Crop:  Box{0, 0, 40, 60},
		Bleed: Box{0, 0, 40, 60}, // absent: the crop box
		Trim:  Box{0, 0, 40, 60},
	}, doc.PageBoxes(2))

	// The Q of Helvetica has the box 39 -56 739 737, in thousandths of its size (Adobe Font Metrics, Core 14;
	// from memory). This one has 12 points and starts at (20, 20). The reader's stand-in for Helvetica may
	// differ a little.
	letters := doc.Letters(1)
	require.Equal(t, "Q", letters[0].Text)
	require.InDelta(t, 20.5, letters[0].LeftPt, 1)
	require.InDelta(t, 28.9, letters[0].RightPt, 1)
	require.InDelta(t, 19.3, letters[0].BottomPt, 1)
	require.InDelta(t, 28.8, letters[0].TopPt, 1)
	require.Empty(t, doc.Letters(2))

	drawn := doc.Render(1, 144) // two pixels to the point
	require.Equal(t, 400, drawn.Bounds().Dx())
	require.Equal(t, 200, drawn.Bounds().Dy())
	require.Equal(t, color.RGBA{255, 0, 0, 255}, drawn.RGBAAt(50, 50), "the upper left quarter is red")
	require.Equal(t, color.RGBA{255, 255, 255, 255}, drawn.RGBAAt(350, 50))
	require.Equal(t, color.RGBA{255, 255, 255, 255}, drawn.RGBAAt(10, 190))
}

func TestParallelTestsShareTheReader(t *testing.T) {
	for i := range 4 {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			t.Parallel()
			content := fmt.Sprintf("BT /F 12 Tf 20 20 Td (SHEET %d) Tj ET", i)
			doc := Open(t, fmt.Appendf(nil, handmade, len(content), content))
			require.Equal(t, fmt.Sprintf("SHEET %d", i), doc.Text(1))
		})
	}
}
