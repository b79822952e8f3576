package raster

import (
	"image"
	"math"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Grid is the virtual raster of the picture: its size in pixels.
type Grid struct {
	WidthPx  int `json:"width_px"`
	HeightPx int `json:"height_px"`
}

// NewGrid chooses the grid for an artwork, upright and that many pixels wide and high: its own pixels where
// they are coarser than finest, and otherwise as many as finest asks for. No pixel is invented.
func NewGrid(picture layout.Rect, artWidthPx, artHeightPx int, finest units.Resolution) Grid {
	atMost := func(px int, mm float64) int { return max(1, min(px, evenPixels(mm*finest.PixelsPerMM()))) }
	g := Grid{atMost(artWidthPx, picture.WidthMM), atMost(artHeightPx, picture.HeightMM)}
	if g.WidthPx == artWidthPx || g.HeightPx == artHeightPx {
		// Proportions that differ by a hair must not resample one axis alone.
		return Grid{artWidthPx, artHeightPx}
	}
	return g
}

// perMM is the grid's resolution across and down.
func (g Grid) perMM(picture layout.Rect) (x, y float64) {
	return float64(g.WidthPx) / picture.WidthMM, float64(g.HeightPx) / picture.HeightMM
}

// Resolution is the grid's resolution across the picture.
func (g Grid) Resolution(picture layout.Rect) units.Resolution {
	x, _ := g.perMM(picture)
	return units.PerMM(x)
}

// fullChromaPPI is the resolution below which sheets keep colour in full: stored at half of it, as photographs mostly
// are, a pixel of chroma would be larger than 1/75 inch, 0.34 mm, which shows at reading distance (common practice,
// no source).
const fullChromaPPI = 150

// Chroma is how finely the sheets store colour, both ways: at the grid's resolution (4:4:4) where that is under 150
// pixels to the inch, and at half of it (4:2:0) from there on.
func (g Grid) Chroma(picture layout.Rect) image.YCbCrSubsampleRatio {
	if g.Resolution(picture).PixelsPerInch() < fullChromaPPI {
		return image.YCbCrSubsampleRatio444
	}
	return image.YCbCrSubsampleRatio420
}

// Pixels returns the grid pixels that a rectangle of the board touches; picture is where the picture lies on the board.
// From board mm to grid pixels: px = (mm - picture's left) times width px / picture width, likewise down.
func (g Grid) Pixels(picture, r layout.Rect) image.Rectangle {
	x, y := g.perMM(picture)
	return image.Rect(
		floor((r.XMM-picture.XMM)*x), floor((r.YMM-picture.YMM)*y),
		-floor((picture.XMM-r.RightMM())*x), -floor((picture.YMM-r.BottomMM())*y),
	)
}

// OnBoard returns the rectangle of the board that grid pixels cover: Pixels undone.
func (g Grid) OnBoard(picture layout.Rect, px image.Rectangle) layout.Rect {
	x, y := g.perMM(picture)
	return layout.Rect{
		XMM: picture.XMM + float64(px.Min.X)/x, YMM: picture.YMM + float64(px.Min.Y)/y,
		WidthMM: float64(px.Dx()) / x, HeightMM: float64(px.Dy()) / y,
	}
}

// evenPixels rounds up to an even number, so that chroma pixels come out whole.
func evenPixels(px float64) int { return max(2, -2*floor(-px/2)) }

// floor rounds down, but takes what lies within a millionth of a whole number for it: millimetres that were
// multiplied out must not ask for one pixel more.
func floor(v float64) int {
	const hair = 1e-6
	return int(math.Floor(v + hair))
}
