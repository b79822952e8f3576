package shot

import (
	"math"
	"slices"

	"dropsheet/layout"
)

// Sharpness is what each stop does to sharpness and light, for a plan's camera at its framing.
type Sharpness struct {
	SharpToPx float64 `json:"sharp_to_px"` // blur up to which something passes for sharp
	// where Blur.Fill is worked out: the picture's fill, a little less where that is the very rim
	AtFill float64 `json:"at_fill"`
	// Holds is the stops at which the drop's edge and the picture in it are within SharpToPx; nil when none does it.
	Holds *StopRange `json:"holds"`
	Least Least      `json:"least"`
	// the best that any stop does for the picture alone, and for edge and picture, both counted over the picture's area
	PictureAlone FocusedStop `json:"picture_alone"`
	Whole        FocusedStop `json:"whole"`
	// Wider is the narrowest frame, at the same camera distance, that a stop holds within SharpToPx; nil when
	// the plan's own does, or none.
	Wider *OtherFrame `json:"wider_frame,omitempty"`
	Stops []StopLine  `json:"stops"`           // full stops, and the plan's own
	Mains []Mains     `json:"mains,omitempty"` // when the frame rate is known
}

// Least is the best that any stop does at the plan's framing.
type Least struct {
	FNumber  float64 `json:"f_number"`
	BlurPx   float64 `json:"blur_px"`
	AtDropMM float64 `json:"at_drop_mm"` // the same blur in the drop's plane: detail finer than that is not recorded
}

// StopRange is a stretch of stops, both ends included.
type StopRange struct {
	FromFNumber float64 `json:"from_f_number"` // the most open: below, defocus is too large
	ToFNumber   float64 `json:"to_f_number"`   // the most closed: above, diffraction is; f/64 when it still is not
}

// OtherFrame is a frame and the stop that does best in it.
type OtherFrame struct {
	FrameWidthMM float64 `json:"frame_width_mm"`
	FNumber      float64 `json:"f_number"`
	DropPx       float64 `json:"drop_px"` // how wide the drop then is
}

// StopLine is one stop.
type StopLine struct {
	FNumber float64 `json:"f_number"`
	Current bool    `json:"current"` // the plan's own
	// ExposureStops is how much lighter the frame gets than at the plan's stop, in stops; below 0 darker.
	ExposureStops float64 `json:"exposure_stops"`
	// FrameRate gives the plan's light at this stop, frames a second, the shutter open for the same share of a
	// frame; 0 when the plan has no rate.
	FrameRate float64 `json:"frame_rate,omitempty"`
	// NeededLux is what the board's middle needs at this stop, exposed as planned; 0 when that is not known.
	NeededLux float64 `json:"illuminance_needed_lux,omitempty"`
	Edge      Focused `json:"focus_edge"`
	Picture   Focused `json:"focus_picture"`
	Best      Focused `json:"focus_best"`
	Whole     Focused `json:"focus_whole"`
}

// Focused is a focus and its blur.
type Focused struct {
	FocusMM float64     `json:"focus_mm"` // from the entrance pupil
	Blur    layout.Blur `json:"blur_px"`
	AreaPx  float64     `json:"picture_area_px"` // the picture's over its area
}

// FocusedStop is a stop with its focus and the blur that it comes to.
type FocusedStop struct {
	FNumber float64 `json:"f_number"`
	FocusMM float64 `json:"focus_mm"` // from the entrance pupil
	BlurPx  float64 `json:"blur_px"`
}

// Sharpness works the table out.
func (s Shot) Sharpness() Sharpness {
	out := Sharpness{SharpToPx: s.Camera.SharpToPx, AtFill: s.BlurFill()}
	var worstPx float64
	out.Least.FNumber, worstPx = s.sharpestStop()
	out.Least.BlurPx, out.Least.AtDropMM = worstPx, worstPx*s.Camera.PixelMM()
	out.PictureAlone = s.leastOverStops(s.PictureFocusMM, s.OverAreaPx)
	out.Whole = s.leastOverStops(s.WholeFocusMM, s.WholePx)
	if worstPx <= out.SharpToPx {
		out.Holds = s.stopsThatHold(out.Least.FNumber, out.SharpToPx)
	} else if !s.Camera.Eye { // which has the frame that it has
		out.Wider = s.widerFrame(worstPx, out.SharpToPx)
	}
	for _, n := range s.tableStops() {
		out.Stops = append(out.Stops, s.stopLine(n))
	}
	if s.Camera.FrameRate > 0 {
		out.Mains = mains(s.Camera.FrameRate)
	}
	return out
}

// tableStops is the full stops from f/4 to f/64, and the plan's own in its place or in that of the full stop
// whose mark it is.
func (s Shot) tableStops() []float64 {
	own := s.Camera.FNumber
	stops := []float64{own}
	ownExact, _ := fullStop(own)
	for k := 4.0; k <= 12; k++ {
		if n := math.Exp2(k / 2); n != ownExact {
			stops = append(stops, n)
		}
	}
	slices.Sort(stops)
	return stops
}

// stopLine is a table's line.
func (s Shot) stopLine(fNumber float64) StopLine {
	at := func(focusMM float64) Focused {
		return Focused{focusMM, s.BlurAt(fNumber, focusMM), s.OverAreaPx(fNumber, focusMM)}
	}
	line := StopLine{
		FNumber: fNumber, Current: fNumber == s.Camera.FNumber,
		ExposureStops: ExposureStops(s.Camera.FNumber, fNumber),
		Edge:          at(s.EdgeMM()), Picture: at(s.PictureFocusMM(fNumber)), Best: at(s.BestFocusMM(fNumber)),
		Whole: at(s.WholeFocusMM(fNumber)),
	}
	line.FrameRate = s.Camera.FrameRate * math.Exp2(line.ExposureStops)
	line.NeededLux, _ = s.NeededLux(fNumber)
	return line
}
