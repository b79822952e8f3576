package layout

import (
	"fmt"
	"math"

	"dropsheet/flip"
)

// CameraSetup is the camera as asked for. FrameWidthMM, when it is not 0, counts in place of LensMM.
type CameraSetup struct {
	Sensor   Size
	WidthPx  int
	HeightPx int
	LensMM   float64 // focal length
	// SensorAssumed tells that nobody said how large the sensor is, and a usual one was taken.
	SensorAssumed bool
	FrameWidthMM  float64 // the width seen in the plane of the drop's centre
	FNumber       float64 // the stop: focal length over pupil diameter
	FrameRate     float64 // frames a second; 0 when not asked for
	Focus         Focus
	SharpToPx     float64 // blur, in frame pixels, that passes for sharp; 0 for DefaultSharpToPx
	Eye           bool    // it is somebody's eye
}

// DefaultSharpToPx is how much blur passes for sharp unless more or less is asked for: two pixels, about what
// a frame shown pixel for pixel still hides (common practice, no source).
const DefaultSharpToPx = 2.0

// Camera is what the camera records. Pixels are square: where the sensor's sides are not in the proportion of the
// pixels, the largest part of it that is counts.
type Camera struct {
	Sensor Size `json:"sensor_mm"` // the part in use
	// SensorAssumed tells that nobody said how large it is, and a usual one was taken.
	SensorAssumed bool    `json:"sensor_assumed,omitempty"`
	WidthPx       int     `json:"width_px"`
	HeightPx      int     `json:"height_px"`
	LensMM        float64 `json:"lens_mm"`         // focal length
	FrameWidthMM  float64 `json:"frame_width_mm"`  // seen in the plane of the drop's centre
	FrameHeightMM float64 `json:"frame_height_mm"` // likewise
	FNumber       float64 `json:"f_number"`
	FrameRate     float64 `json:"frame_rate,omitempty"` // frames a second
	Focus         Focus   `json:"focus"`
	FocusMM       float64 `json:"focus_mm"`      // entrance pupil to the plane that is in focus
	SharpToPx     float64 `json:"sharp_to_px"`   // blur that passes for sharp, a diameter in frame pixels
	Eye           bool    `json:"eye,omitempty"` // it is somebody's eye
}

// PupilMM is the diameter of the entrance pupil: focal length over f-number.
func (c Camera) PupilMM() float64 { return c.LensMM / c.FNumber }

// PixelMM is the size of a pixel in the plane of the drop's centre.
func (c Camera) PixelMM() float64 { return c.FrameWidthMM / float64(c.WidthPx) }

// At returns the point of the drop's plane, optical mm, that frame pixel coordinates look through;
// whole numbers are pixel corners, so a pixel's centre is at (i + 0.5, j + 0.5).
func (c Camera) At(iPx, jPx float64) Point {
	return Point{
		(iPx - float64(c.WidthPx)/2) / float64(c.WidthPx) * c.FrameWidthMM,
		(jPx - float64(c.HeightPx)/2) / float64(c.HeightPx) * c.FrameHeightMM,
	}
}

// FramePoint is a place in the frame, in pixels as At counts them.
type FramePoint struct {
	XPx float64 `json:"x"`
	YPx float64 `json:"y"`
}

// Pixel is the frame pixel, as a Px of At, that looks through a point of the drop's plane: At undone.
func (c Camera) Pixel(through Point) FramePoint {
	return FramePoint{(through.XMM/c.FrameWidthMM + 0.5) * float64(c.WidthPx),
		(through.YMM/c.FrameHeightMM + 0.5) * float64(c.HeightPx)}
}

// Bounds far beyond any camera.
const (
	maxPx        = 100_000 // a frame's side
	minFNumber   = 0.5     // the least that a lens in air can have
	maxFNumber   = 1000.0
	minFrameRate = 0.001 // of a camera that stands for a quarter of an hour
	maxFrameRate = 1e9
	maxSharpToPx = 1e6 // more than any frame has
)

// camera works out the frame for a drop that far from the entrance pupil, by the thin lens focused on the drop:
// magnification m = F/(D - F), frame width = sensor width / m (Hecht, Optics, 5.2.3).
func (c CameraSetup) camera(cameraMM float64) (Camera, error) {
	if c.WidthPx < 1 || c.HeightPx < 1 || c.WidthPx > maxPx || c.HeightPx > maxPx {
		return Camera{}, fmt.Errorf("a frame of %dx%d pixels can't be\nhint: take 1 to %[3]d a side", c.WidthPx,
			c.HeightPx, maxPx)
	}
	if err := allLengths(named{"the sensor's width", c.Sensor.WidthMM},
		named{"the sensor's height", c.Sensor.HeightMM}); err != nil {
		return Camera{}, err
	}
	if !(c.FNumber >= minFNumber && c.FNumber <= maxFNumber) {
		return Camera{}, fmt.Errorf("a stop of f/%g can't be\nhint: take one between f/%g and f/%g", c.FNumber, minFNumber,
			maxFNumber)
	}
	if c.FrameRate != 0 && !(c.FrameRate >= minFrameRate && c.FrameRate <= maxFrameRate) {
		return Camera{}, fmt.Errorf("%g frames a second can't be\nhint: take a rate from %g to %g", c.FrameRate,
			minFrameRate, maxFrameRate)
	}
	if !(c.SharpToPx >= 0 && c.SharpToPx <= maxSharpToPx) {
		return Camera{}, fmt.Errorf("a blur of %g pixels can't be asked for\n"+
			"hint: take one above 0 and up to %g", c.SharpToPx,
			maxSharpToPx)
	}
	proportions := float64(c.WidthPx) / float64(c.HeightPx)
	out := Camera{Sensor: c.Sensor, WidthPx: c.WidthPx, HeightPx: c.HeightPx, FNumber: c.FNumber, FrameRate: c.FrameRate,
		Focus: c.Focus, SharpToPx: c.SharpToPx, SensorAssumed: c.SensorAssumed,
		Eye: c.Eye}
	if out.SharpToPx == 0 {
		out.SharpToPx = DefaultSharpToPx
	}
	out.Sensor.WidthMM = c.usedMM()
	out.Sensor.HeightMM = out.Sensor.WidthMM / proportions

	if c.FrameWidthMM != 0 {
		if err := allLengths(named{"the frame's width", c.FrameWidthMM}); err != nil {
			return Camera{}, err
		}
		m := out.Sensor.WidthMM / c.FrameWidthMM
		out.FrameWidthMM, out.LensMM = c.FrameWidthMM, cameraMM*m/(1+m)
	} else {
		if err := allLengths(named{"the lens's focal length", c.LensMM}); err != nil {
			return Camera{}, err
		}
		if c.LensMM >= cameraMM {
			return Camera{}, fmt.Errorf("a %gmm lens can't focus on a drop %gmm away\n"+
				"hint: move the camera further off than the "+
				"focal length, or give the width of the frame at the drop instead of the lens", c.LensMM, cameraMM)
		}
		out.LensMM = c.LensMM
		out.FrameWidthMM = out.Sensor.WidthMM * (cameraMM - c.LensMM) / c.LensMM
	}
	out.FrameHeightMM = out.FrameWidthMM / proportions
	return out, nil
}

// AsSetup is a camera as it would be asked for.
func (c Camera) AsSetup() CameraSetup {
	return CameraSetup{Sensor: c.Sensor, WidthPx: c.WidthPx, HeightPx: c.HeightPx, LensMM: c.LensMM, FNumber: c.FNumber,
		FrameRate: c.FrameRate, Focus: c.Focus, SharpToPx: c.SharpToPx, SensorAssumed: c.SensorAssumed,
		Eye: c.Eye}
}

// usedMM is the width of the largest part of the sensor that has the pixels' proportions.
func (c CameraSetup) usedMM() float64 {
	return min(c.Sensor.WidthMM, c.Sensor.HeightMM*float64(c.WidthPx)/float64(c.HeightPx))
}

// FramedFromMM is how far from the drop the entrance pupil stands so that the lens frames FrameWidthMM: by the thin
// lens, F (1 + frame width / sensor width) (Hecht, Optics, 5.2.3).
func (c CameraSetup) FramedFromMM() float64 { return c.LensMM * (1 + c.FrameWidthMM/c.usedMM()) }

// roomyShare is how much of the frame a body takes up at most that is said to fit it (common practice, no source).
const roomyShare = 0.8

// HoldsFromMM is how far from a rod the entrance pupil stands at least so that it fits the frame across, with room on
// both sides, in whole centimetres.
func (c CameraSetup) HoldsFromMM(d flip.Drop) float64 {
	const step, tries = 10.0, 20
	mm := 2 * d.DiameterMM
	for range tries { // from nearer by, a rod looks wider
		sight := flip.Sight{Drop: d, CameraMM: mm}
		c.FrameWidthMM = 2 * sight.ApparentRadiusMM() / roomyShare
		if d.Body == flip.LevelRod {
			c.FrameWidthMM *= float64(c.WidthPx) / float64(c.HeightPx)
		}
		needs := math.Ceil(c.FramedFromMM()/step) * step
		if needs <= mm {
			return mm
		}
		mm = needs
	}
	return mm
}
