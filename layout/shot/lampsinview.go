package shot

import (
	"dropsheet/flip"
	"dropsheet/layout"
)

// Sighting is a lamp that the camera sees, on its way directly or through the drop.
type Sighting struct {
	Lamp  int               `json:"lamp"` // counted from 1
	Path  string            `json:"path"`
	Frame layout.FramePoint `json:"frame_px"` // where only its blur comes in, a place that it reaches
}

// sliverShare is the share of the drop's radius from which on it shows a lamp as a sliver, at a third of its
// light or less (Fresnel, index 1.333).
const sliverShare = 0.99

// lampsInView lists the lamps that stand in the camera's view: before the board, in the frame, or between
// drop and board where the drop shows them. A lamp whose blur comes in, by any part of the pupil, is in the
// frame.
func (s Shot) lampsInView() []Sighting {
	all := []Sighting{}
	d := s.Drop
	for i, lamp := range s.Lamps {
		behindMM := d.DistanceMM - lamp.ZMM // of the drop's centre; below zero before it
		if d.CameraMM+behindMM > 0 {
			direct := blurred{s.Plan, flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: behindMM}, false}
			if pupil, ok := direct.seen(); ok {
				all = append(all, Sighting{i + 1, Direct, s.Camera.Pixel(direct.shows(pupil))})
			}
		}
		if behindMM < s.Sight().Drop.RadiusMM() {
			continue
		}
		if through, ok := s.seenThrough(behindMM, layout.Point{XMM: lamp.XMM, YMM: lamp.YMM}); ok &&
			s.shareOfRadius(through) < sliverShare {
			if nearest, ok := catches(s.Camera, through, s.throughBlur(behindMM, through)); ok {
				all = append(all, Sighting{i + 1, ThroughDrop, s.Camera.Pixel(nearest)})
			}
		}
	}
	return all
}
