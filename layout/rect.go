package layout

// Point is a place, in mm of the board or of a page.
type Point struct {
	XMM float64 `json:"x"`
	YMM float64 `json:"y"`
}

// Size is an extent in mm.
type Size struct {
	WidthMM  float64 `json:"width"`
	HeightMM float64 `json:"height"`
}

// Rect is an upright rectangle, in mm of the board or of a page; (XMM, YMM) is its top-left corner.
type Rect struct {
	XMM      float64 `json:"x"`
	YMM      float64 `json:"y"`
	WidthMM  float64 `json:"width"`
	HeightMM float64 `json:"height"`
}

// RightMM is the x of the right side.
func (r Rect) RightMM() float64 { return r.XMM + r.WidthMM }

// BottomMM is the y of the bottom side.
func (r Rect) BottomMM() float64 { return r.YMM + r.HeightMM }

// Grow returns r with each side moved outward.
func (r Rect) Grow(by Sides) Rect {
	return Rect{r.XMM - by.LeftMM, r.YMM - by.TopMM, r.WidthMM + by.LeftMM + by.RightMM, r.HeightMM + by.TopMM +
		by.BottomMM}
}

// Sides is a length for each side of a rectangle.
type Sides struct{ LeftMM, TopMM, RightMM, BottomMM float64 }
