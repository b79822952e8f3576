package proof

import (
	"dropsheet/flip"
	"dropsheet/layout"
)

// lens turns a pixel into rays.
type lens struct {
	camera    layout.Camera
	cameraMM  float64 // entrance pupil to the drop's plane
	pupilMM   float64 // radius of the entrance pupil; 0 for a pinhole
	airyPx    float64 // radius of the Airy disc, its first dark ring; 0 for none
	pixelXMM  float64 // width of a pixel in the plane in focus
	pixelYMM  float64 // its height there
	middleXPx float64 // where the axis passes the frame
	middleYPx float64
}

// newLens is a camera's lens that far from the drop. A sharp one is a pinhole.
func newLens(camera layout.Camera, cameraMM float64, sharp bool) lens {
	l := lens{camera: camera, cameraMM: cameraMM, middleXPx: float64(camera.WidthPx) / 2,
		middleYPx: float64(camera.HeightPx) / 2}
	if sharp {
		l.camera.FocusMM = cameraMM
	} else {
		l.pupilMM, l.airyPx = camera.PupilMM()/2, camera.AiryPx()/2
	}
	inFocus := l.camera.FocusMM / cameraMM
	l.pixelXMM = camera.FrameWidthMM / float64(camera.WidthPx) * inFocus
	l.pixelYMM = camera.FrameHeightMM / float64(camera.HeightPx) * inFocus
	return l
}

// pinhole tells whether everything is in focus.
func (l *lens) pinhole() bool { return l.pupilMM == 0 && l.airyPx == 0 }

// aim is a sample through one lens.
type aim struct {
	xPx, yPx           float64 // where in the frame, from the pixel's middle, diffraction included
	pupilXMM, pupilYMM float64 // where on the pupil
	pixelShare         float64 // of the whole pixel's variance: what the ray's patch has
	pupilShare         float64 // likewise of the whole pupil's
	time               float64 // when: shares of the exposure from its middle, -1/2 to 1/2
	timeShare          float64 // of the whole exposure's variance
	fallsMM            float64 // how far below their places the drops are then
}

// aim takes a set of rays through the lens. Each has its share of the pixel and the pupil, and its own part
// of the diffraction.
func (l *lens) aim(set []sample) []aim {
	aims := make([]aim, len(set))
	share := overlap / float64(len(set))
	for k, s := range set {
		airy := s.airySpread * l.airyPx
		aims[k] = aim{
			xPx: s.x + s.airyX*l.airyPx, yPx: s.y + s.airyY*l.airyPx,
			pupilXMM: s.pupilX * l.pupilMM, pupilYMM: s.pupilY * l.pupilMM,
			pixelShare: share + airy*airy, pupilShare: share,
		}
	}
	return aims
}

// ray is one of a pixel's rays: from its place on the pupil through what its place in the frame sees of the
// plane in focus.
func (l *lens) ray(i, j int, a *aim) flip.Ray {
	to := flip.Vec{
		X: (float64(i) + 0.5 + a.xPx - l.middleXPx) * l.pixelXMM,
		Y: (float64(j) + 0.5 + a.yPx - l.middleYPx) * l.pixelYMM,
		Z: l.camera.FocusMM - l.cameraMM,
	}
	return l.between(to, a.pupilXMM, a.pupilYMM)
}

// pupilRay is the ray from a place on the pupil through the point of the plane in focus that the frame's
// point p looks at. All are optical mm; p lies in the drop's plane.
func (l *lens) pupilRay(p layout.Point, pupilX, pupilY float64) flip.Ray {
	scale := l.camera.FocusMM / l.cameraMM
	return l.between(flip.Vec{X: p.XMM * scale, Y: p.YMM * scale, Z: l.camera.FocusMM - l.cameraMM}, pupilX, pupilY)
}

// between is the ray from a place on the pupil to a point.
func (l *lens) between(to flip.Vec, pupilX, pupilY float64) flip.Ray {
	from := flip.Vec{X: pupilX, Y: pupilY, Z: -l.cameraMM}
	return flip.Ray{From: from, Dir: to.Sub(from).Unit()}
}
