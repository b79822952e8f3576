// Package proof renders what the camera will record: each pixel's rays are traced through the drop, or past it, to the backdrop.
//
// Frame: pixels, origin at the frame's top-left corner, whole numbers at pixel corners; layout.Camera.At says where a pixel looks.
package proof

import (
	"image"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// room is the light that comes from beyond the board: a dark room, just above black so that the board's edge can be told.
var room = texture.Light{0.0030, 0.0030, 0.0037}

// raysASide is how many rays a pixel has each way, where the drop or the board's edge passes through it or near it.
const raysASide = 4

// Pinhole renders the frame that the camera sees with everything in focus. Light lost at the drop's two surfaces is lost in the picture;
// light thrown back inside the drop is not followed.
func Pinhole(p layout.Plan, camera layout.Camera, picture *texture.Texture) *image.RGBA {
	v := view{sight: p.Sight(), camera: camera, board: p.Backdrop.Board(), turn: p.Drop.Reverses.Turn(), picture: picture}
	w, _ := picture.Size()
	v.pxPerMM = float64(w) / v.board.WidthMM
	frame := image.NewRGBA(image.Rect(0, 0, camera.WidthPx, camera.HeightPx))
	texture.Rows(camera.HeightPx, func(j int) {
		for i := range camera.WidthPx {
			frame.SetRGBA(i, j, v.pixel(i, j).SRGB())
		}
	})
	return frame
}

// CloseUp is the camera brought in until the frame is that many times the drop's apparent width, and square.
func CloseUp(p layout.Plan, sidePx int, drops float64) layout.Camera {
	c := p.Camera
	c.WidthPx, c.HeightPx = sidePx, sidePx
	c.FrameWidthMM = 2 * p.Sight().ApparentRadiusMM() * drops
	c.FrameHeightMM = c.FrameWidthMM
	return c
}

// Reduced is the camera with its pixels made fewer, so that neither side is over sidePx.
func Reduced(c layout.Camera, sidePx int) layout.Camera {
	if longer := max(c.WidthPx, c.HeightPx); longer > sidePx {
		w, h := c.WidthPx, c.HeightPx
		c.WidthPx, c.HeightPx = max(1, w*sidePx/longer), max(1, h*sidePx/longer)
	}
	return c
}

// view is all that a pixel needs.
type view struct {
	sight   flip.Sight
	camera  layout.Camera
	board   layout.Rect
	turn    flip.Turn
	picture *texture.Texture
	pxPerMM float64 // the artwork's pixels on a millimetre of board
}

// spot is where one ray landed.
type spot struct {
	flip.Landing
	lands bool
}

// pixel is the mean of the pixel's rays.
func (v view) pixel(i, j int) texture.Light {
	const n = raysASide
	if !v.nearDrop(i, j) {
		if light, plain := v.beside(i, j); plain {
			return light
		}
	}
	// A lattice of one more ray each way gives every ray a neighbour, and so its footprint on the board.
	var lattice [n + 1][n + 1]spot
	for b := range n + 1 {
		for a := range n + 1 {
			p := v.camera.At(float64(i)+(float64(a)+0.5)/float64(n), float64(j)+(float64(b)+0.5)/float64(n))
			l, ok := v.sight.Trace(v.sight.PinholeRay(p.XMM, p.YMM))
			lattice[b][a] = spot{l, ok}
		}
	}
	var sum texture.Light
	for b := range n {
		for a := range n {
			sum = sum.Add(v.light(lattice[b][a], lattice[b][a+1], lattice[b+1][a]))
		}
	}
	return sum.Scale(1.0 / (n * n))
}

// beside is the light of a pixel that looks past the drop: one ray does, unless the board's edge runs through the pixel.
func (v view) beside(i, j int) (light texture.Light, plain bool) {
	far := (v.sight.CameraMM + v.sight.DistanceMM) / v.sight.CameraMM
	land := func(a, b float64) spot {
		p := v.camera.At(float64(i)+a, float64(j)+b)
		return spot{flip.Landing{XMM: p.XMM * far, YMM: p.YMM * far, Transmittance: 1}, true}
	}
	first, last := land(0, 0), land(1, 1)
	if v.onBoard(first) != v.onBoard(last) {
		return texture.Light{}, false
	}
	return v.light(land(0.5, 0.5), land(1.5, 0.5), land(0.5, 1.5)), true
}

// onBoard tells whether a ray lands on the board.
func (v view) onBoard(s spot) bool {
	return math.Abs(s.XMM) <= v.board.WidthMM/2 && math.Abs(s.YMM) <= v.board.HeightMM/2
}

// nearDrop tells whether a pixel may look through the drop.
func (v view) nearDrop(i, j int) bool {
	p := v.camera.At(float64(i)+0.5, float64(j)+0.5)
	across := math.Hypot(p.XMM, p.YMM)
	switch v.sight.Drop.Body {
	case flip.UprightRod:
		across = math.Abs(p.XMM)
	case flip.LevelRod:
		across = math.Abs(p.YMM)
	}
	return across < v.sight.ApparentRadiusMM()+v.camera.PixelMM()
}

// light is what one ray brings: the picture where it lands, averaged over the step to its neighbours, or the room.
func (v view) light(s, right, below spot) texture.Light {
	if !s.lands {
		return texture.Light{} // only the inside of the drop could be there, and it is dark
	}
	if !v.onBoard(s) {
		return room.Scale(float32(s.Transmittance))
	}
	u, w := s.XMM/v.board.WidthMM+0.5, s.YMM/v.board.HeightMM+0.5
	if v.turn.ReverseX {
		u = 1 - u
	}
	if v.turn.ReverseY {
		w = 1 - w
	}
	spanMM := math.Sqrt(stepMM(s, right) * stepMM(s, below))
	return v.picture.At(u, w, spanMM*v.pxPerMM).Scale(float32(s.Transmittance))
}

// stepMM is how far apart two neighbouring rays land; where only one of them lands, or one of them passes beside the drop,
// nothing is known and the sharpest picture is taken.
func stepMM(s, t spot) float64 {
	if !t.lands || s.Through != t.Through {
		return 0
	}
	return math.Hypot(s.XMM-t.XMM, s.YMM-t.YMM)
}
