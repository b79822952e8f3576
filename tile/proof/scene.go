package proof

import (
	"context"
	"image"
	"math"
	"slices"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// Scene is a job under the camera.
type Scene struct {
	Plan        layout.Plan
	Camera      layout.Camera // the plan's own, or another to try
	Picture     *texture.Texture
	SeamWidthMM float64 // width of the bare paper edge that shows at seams; 0 for none
	// where the drops' centres are in their plane, optical mm from the axis; none: one on the axis. They do not overlap
	Drops []layout.Point
	// Motion is how they move; there they are in the exposure's middle. AsRecorded sets it.
	Motion Motion
	Sharp  bool // a pinhole: everything in focus, no diffraction
	// White is the light of the print's white, where the lamps light it most, in the frame: 1 is what just clips, and what
	// it is when it is 0. AsRecorded sets it as the camera would.
	White float64
	// rays for a pixel inside the drop; 0 for DefaultSamples. Others take shares or multiples of it. With one, a draft,
	// rays through the drop land by slopes.
	Samples int
}

// DefaultSamples is the usual number of rays for a pixel inside the drop.
const DefaultSamples = 24

// Rays for other pixels, as multiples of those: beside the drop the board is magnified and its blur even, at
// its edge light and dark meet.
const (
	besideShare  = 0.5
	edgeMultiple = 2
)

// pinholeSamples are enough where nothing is out of focus.
const pinholeSamples = 8

// Pinhole renders a frame with everything in focus and no seams.
func Pinhole(p layout.Plan, camera layout.Camera, picture *texture.Texture) *image.RGBA {
	// only a context that ends gives an error
	frame, _ := Scene{Plan: p, Camera: camera, Picture: picture, Sharp: true,
		Samples: pinholeSamples}.Render(context.Background(), nil)
	return frame
}

// Render renders the frame on all processors. done, if not nil, is called after every row, from many goroutines.
// It returns ctx's error when ctx ends first.
func (s Scene) Render(ctx context.Context, done func()) (*image.RGBA, error) {
	v := s.view()
	return v.render(ctx, s.Plan.Lamps, done)
}

func (v *view) render(ctx context.Context, lamps []layout.Lamp, done func()) (*image.RGBA, error) {
	v.beside, v.lattice = v.newBeside(ctx), v.newLattice(ctx)
	v.rings, v.mirrors = v.newRingsOfAll(ctx)
	lit := v.newGlints(ctx, lamps)
	v.landings = v.newLandings(ctx, v.inside, v.edgeBox())
	frame, drops := image.NewRGBA(image.Rect(0, 0, v.camera.WidthPx, v.camera.HeightPx)), v.edgeBox()
	texture.Rows(v.camera.HeightPx, func(j int) {
		if ctx.Err() != nil {
			return
		}
		row := frame.Pix[j*frame.Stride:][:4*v.camera.WidthPx]
		for i := range v.camera.WidthPx {
			at := image.Point{X: i, Y: j}
			var light texture.Light
			if at.In(drops) {
				light = v.pixel(i, j)
			} else {
				light = v.besidePixel(i, j)
			}
			c := light.Add(lit.at(at, v.camera.WidthPx)).Scale(v.white).SRGB()
			row[4*i], row[4*i+1], row[4*i+2], row[4*i+3] = c.R, c.G, c.B, c.A
		}
		if done != nil {
			done()
		}
	})
	return frame, ctx.Err()
}

// places are the drops' centres.
func (s Scene) places() []layout.Point {
	if len(s.Drops) == 0 {
		return []layout.Point{{}}
	}
	return s.Drops
}

// view prepares what every pixel needs.
func (s Scene) view() view {
	v := view{
		sight: s.Plan.Sight(), tracer: s.Plan.Sight().Tracer(), camera: s.Camera, drops: s.places(),
		surface: board.New(s.Plan, s.Picture).WithSeams(s.SeamWidthMM), lamps: s.Plan.Light(),
		white: 1,
	}
	if s.White > 0 {
		v.white = float32(s.White)
	}
	n := s.Samples
	if n == 0 {
		n = DefaultSamples
	}
	v.lens = newLens(s.Camera, s.Plan.Drop.CameraMM, s.Sharp)
	v.inside, v.draft = v.lens.aim(raySet(n)), n == 1
	v.past = v.lens.aim(raySet(max(4, int(float64(n)*besideShare))))
	v.atEdge = v.lens.aim(raySet(n * edgeMultiple))
	v.motion, v.sweep = s.Motion, s.Motion.sweep()
	if v.moves() {
		s.Motion.place(&v.lens, v.inside, s.Plan.ImageMM())
		s.Motion.place(&v.lens, v.atEdge, s.Plan.Drop.CameraMM)
	}
	v.outline.WidthMM, v.outline.HeightMM = v.sight.OutlineMM()
	v.direct = v.directSpread()
	for k := range v.inside {
		v.thrownPx = max(v.thrownPx, math.Hypot(v.inside[k].xPx, v.inside[k].yPx))
	}
	v.edgePatches = v.patchesAtEdge()
	v.edgeReachesMM = v.reachesAtEdge()
	v.edgeBlurMM = slices.Max(v.edgeReachesMM)
	if v.skin = v.newSkin(n); v.moves() {
		s.Motion.place(&v.lens, v.skin.aims, s.Plan.Drop.CameraMM)
	}
	return v
}

// CloseUp is the square part of the frame, shown in sidePx pixels each way, that is that many times the drop's apparent
// width, or its height where that is greater. The camera stays where and what it is, and only a part of its sensor is
// read out: what is blurred is so by as much of the drop.
func CloseUp(p layout.Plan, sidePx int, drops float64) layout.Camera {
	c := p.Camera
	c.WidthPx, c.HeightPx = sidePx, sidePx
	radiusMM := p.Sight().ApparentRadiusMM()
	if _, halfHeightMM := p.Sight().OutlineMM(); p.Sight().Drop.Oblate() {
		radiusMM = max(radiusMM, halfHeightMM)
	}
	if p.Drop.Body == flip.Hanging {
		radiusMM = max(p.Sight().Drop.AboveMM(), p.Sight().Drop.BelowMM())
	}
	sideMM := 2 * radiusMM * drops
	sensorMM := c.Sensor.WidthMM * sideMM / c.FrameWidthMM
	c.FrameWidthMM, c.FrameHeightMM = sideMM, sideMM
	c.Sensor = layout.Size{WidthMM: sensorMM, HeightMM: sensorMM}
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
