package layout

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/units"

	"github.com/stretchr/testify/require"
)

// focusedAt is a plan with nothing but a camera, focused on and counting pixels in the plane at dMM.
func focusedAt(dMM, lensMM, fNumber float64) Plan {
	c := Camera{Sensor: Size{36, 24}, WidthPx: 3600, HeightPx: 2400, LensMM: lensMM, FNumber: fNumber, FocusMM: dMM}
	m := lensMM / (dMM - lensMM) // thin lens, Hecht, Optics, 5.2.3
	c.FrameWidthMM, c.FrameHeightMM = 36/m, 24/m
	return Plan{Drop: Drop{CameraMM: dMM}, Camera: c}
}

const micrometrePx = 10.0 // of focusedAt's pixels

// The worked example of the US Army correspondence course SS0507, learning event 10, "calculate hyperfocal
// distance": a 50 mm lens, taken as 2 inches, at f/8, with a circle of confusion of 0.002 inches. The
// hyperfocal distance is 20.8 feet; focused there, sharpness, a blur within that circle, goes from 10.4 feet
// to infinity. The course leaves out one focal length (1 %) and rounds to a tenth of a foot.
func TestBlurDiscAgainstAWorkedHyperfocalDistance(t *testing.T) {
	const foot = 12 * units.MMPerInch
	p := focusedAt(20.8*foot, 2*units.MMPerInch, 8)
	circlePx := 0.002 * units.MMPerInch * 1000 / micrometrePx
	for _, c := range []struct {
		name string
		dMM  float64
	}{{"the far limit, infinity", 1e12}, {"the near limit, 10.4 feet", 10.4 * foot}} {
		require.InEpsilon(t, circlePx, p.discPx(c.dMM, p.Camera.FocusMM), 0.015, c.name)
	}
	require.Zero(t, p.discPx(20.8*foot, p.Camera.FocusMM), "what is in focus has no blur")
}

// By hand: a point at d has its image at v = Fd/(d - F) (thin lens, Hecht, Optics, 5.2.3), its rays come from
// the pupil, F/N across, and the sensor stands at v_f = F d_f/(d_f - F) = (1 + m)F. So the disc there is F/N
// |v - v_f|/v, which is (F/N) m |d - d_f|/d with m = F/(d_f - F).
func TestBlurDiscOnTheSensor(t *testing.T) {
	p := focusedAt(300, 100, 16)
	m := 100.0 / (300 - 100)
	require.InEpsilon(t, 100.0/16*m*(300-295)/295*1000/micrometrePx, p.discPx(295, 300), 1e-12)
}

// The first dark ring of the Airy pattern is the first zero of J1, at pi times 1.22 (Hecht, Optics, 10.2.5).
// By Rayleigh's criterion, two points apart by its radius are told apart: 1500/N line pairs on a millimetre
// (Jacobson and others, The Manual of Photography, recalled from memory; green light, a far subject), so that
// the radius is 0.005 mm at f/8 and 0.042 mm at f/64. At life size the working stop is twice the marked one.
func TestAiryDisc(t *testing.T) {
	require.InDelta(t, 0, math.J1(math.Pi*2.44/2), 1e-3)
	for _, n := range []float64{4, 8, 16, 64} {
		far := focusedAt(1e9, 100, n).Camera
		require.InEpsilon(t, 2/(1500/n)*1000/micrometrePx, far.AiryPx(), 0.01, "f/%g", n)
		require.InEpsilon(t, focusedAt(1e9, 100, 2*n).Camera.AiryPx(), focusedAt(200, 100, n).Camera.AiryPx(), 1e-6,
			"f/%g at life size", n)
	}
}

// bodied is the usual plan at 400 mm for a body and a stop.
func bodied(t *testing.T, body flip.Body, fNumber float64) Plan {
	t.Helper()
	s := plain()
	s.Drop.Body, s.DistanceMM, s.Camera.FNumber = body, 400, fNumber
	return mustPlan(t, s)
}

var bodies = []flip.Body{flip.Ball, flip.UprightRod, flip.LevelRod}

// In the middle of the drop, traced bundles agree with the thin-lens formula: across a body's axis the
// picture hangs at ImageMM; along a rod it is seen as through a glass plate of the rod's thickness, which
// brings it nearer by t(1 - 1/n) (Hecht, Optics, problem on the plane plate; also Kingslake, Optical System
// Design: image shift of a parallel plate, both from memory).
func TestSpreadInTheMiddleIsTheThinLens(t *testing.T) {
	for _, body := range bodies {
		for _, fNumber := range []float64{16, 64} {
			p := bodied(t, body, fNumber)
			plateMM := p.Drop.CameraMM + p.Drop.DistanceMM - p.Drop.DiameterMM*(1-1/p.Drop.Index)
			for _, focus := range []float64{p.EdgeMM(), p.BestFocusMM(fNumber), p.ImageMM() - 3} {
				got := p.spread(0, focus)
				wantAlong := p.discPx(plateMM, focus)
				if body == flip.Ball {
					wantAlong = p.discPx(p.ImageMM(), focus)
				}
				require.InEpsilon(t, p.discPx(p.ImageMM(), focus), got.TangentialPx, 1e-3, "%s f/%g focus %g", body, fNumber, focus)
				require.InEpsilon(t, wantAlong, got.SagittalPx, 1e-3, "%s f/%g focus %g", body, fNumber, focus)
			}
		}
	}
}

// spreadByHand is the blur of a ball's picture at a fill as narrow bundles make it, in pixels, without diffraction.
// Tangentially: rays of the plane that holds the axis turn by 2(i - r) and keep their impact parameter (van de Hulst,
// 1957, 12.21). Sagittally: the ray turned about the line from the ball's centre to the point in focus still goes
// through both, and where it lands turns with it, so that shifts on pupil and board are in proportion to their
// distances from that line.
func spreadByHand(p Plan, fill, focus float64) (tangential, sagittal float64) {
	r, n, camera, board := p.Drop.DiameterMM/2, p.Drop.Index, p.Drop.CameraMM, p.Drop.DistanceMM
	// lands is the height on the board of the ray from x on the pupil toward (qx, qz).
	lands := func(x, qx, qz float64) float64 {
		a := math.Atan2(qx-x, qz+camera)
		b := x*math.Cos(a) + camera*math.Sin(a) // distance from the centre, signed
		after := a - 2*(math.Asin(b/r)-math.Asin(b/(n*r)))
		return board*math.Tan(after) + b/math.Cos(after)
	}
	apparent := camera * math.Tan(math.Asin(r/camera))
	qx, qz := fill*apparent*focus/camera, focus-camera
	const step = 1e-4
	onBoard := (lands(step, qx, qz) - lands(-step, qx, qz)) / (2 * step) * p.Camera.PupilMM()
	mmPerPx := (lands(0, (fill*apparent+step)*focus/camera, qz) - lands(0, (fill*apparent-step)*focus/camera,
		qz)) / (2 * step) * p.Camera.PixelMM()
	tangential = math.Abs(onBoard / mmPerPx)

	y := lands(0, qx, qz)
	fromLine := func(x, z float64) float64 { return math.Abs(x*qz-z*qx) / math.Hypot(qx, qz) }
	sagittal = p.Camera.PupilMM() * fromLine(y, board) / fromLine(0, -camera)
	sagittal /= math.Abs(y) / (fill * apparent) * p.Camera.PixelMM()
	return tangential, sagittal
}

// Away from the middle, narrow bundles agree with a second route that shares no code with the trace.
func TestSpreadTowardTheRimByHand(t *testing.T) {
	p := bodied(t, flip.Ball, 1000)
	for _, fill := range []float64{0.2, 0.5, 0.85, 0.95} {
		for _, focus := range []float64{p.EdgeMM(), 297.4, p.ImageMM()} {
			tangential, sagittal := spreadByHand(p, fill, focus)
			got := p.spread(fill, focus)
			require.InEpsilon(t, tangential, got.TangentialPx, 2e-3, "tangential at %g, focus %g", fill, focus)
			require.InEpsilon(t, sagittal, got.SagittalPx, 2e-3, "sagittal at %g, focus %g", fill, focus)
		}
	}
}

// A rod is a ball cut through its middle across its axis, and which way it stands is all one.
func TestRodsSpreadAsABallAcross(t *testing.T) {
	ball, upright, level := bodied(t, flip.Ball, 64), bodied(t, flip.UprightRod, 64), bodied(t, flip.LevelRod, 64)
	for _, fill := range []float64{0, 0.5, 0.85} {
		for _, focus := range []float64{ball.EdgeMM(), ball.ImageMM()} {
			require.InDelta(t, ball.spread(fill, focus).TangentialPx, upright.spread(fill, focus).TangentialPx, 2e-3)
			require.InDelta(t, upright.spread(fill, focus).TangentialPx, level.spread(fill, focus).TangentialPx, 1e-6)
			require.InDelta(t, upright.spread(fill, focus).SagittalPx, level.spread(fill, focus).SagittalPx, 1e-6)
		}
	}
}

// A ball of dense flint looks backwards from a fill on: by hand, where 2(i - r) is a right angle, tan i =
// 1/(1 - sqrt(2)/n) (Snell), and with n = 1.8 sin i = 0.978. Where its last ray still lands and the one
// beside it does not, the scale there can't be told, and the blur is that of a fill further in; asked for all
// the same, it is past any frame.
func TestBlurWhereTheDropTurnsBack(t *testing.T) {
	p := bodied(t, flip.Ball, 16)
	p.Drop.Index = 1.8
	turnsBack := 1.0
	for step := 0.5; step > 1e-12; step /= 2 {
		if _, ok := p.Sight().HeightMM(turnsBack - step); !ok {
			turnsBack -= step
		}
	}
	require.InDelta(t, 0.978, turnsBack, 0.003, "but for the camera's distance")
	for _, off := range []float64{-3e-5, -1e-5, -1e-6, 1e-6, 1e-5} {
		p.Picture.Fill = turnsBack + off
		_, ok := p.bundle(p.BlurFill(), p.EdgeMM())
		require.True(t, ok, "%g off", off)
		require.LessOrEqual(t, p.BlurFill(), p.Picture.Fill)
		require.Greater(t, p.BlurFill(), p.Picture.Fill*outermostFill*outermostFill)
	}
	last := turnsBack - 1e-6
	_, ok := p.Sight().HeightMM(last)
	require.True(t, ok, "the last ray lands")
	require.Greater(t, p.spread(last, p.EdgeMM()).LargerPx(), float64(maxPx), "no scale")
	require.Greater(t, p.spread(turnsBack+1e-6, p.EdgeMM()).LargerPx(), float64(maxPx), "no ray")
}

// The rays on half a pupil take the mean over its disc of every x^a y^b that is even in y, x along the rows: up to
// the seventh degree in x and the 19th in all, so that squares of blurs up to the third are exact. That mean is 2/(n
// + 2) of the mean of cos^a sin^b over the circle, n = a + b, and that is (a-1)!! (b-1)!! / n!! for even a and 0 for
// odd (by Wallis's integrals).
func TestPupilRaysTakeTheMeanOfPolynomials(t *testing.T) {
	double := func(n int) float64 { // n!!
		product := 1.0
		for ; n > 1; n -= 2 {
			product *= float64(n)
		}
		return product
	}
	for a := range 8 {
		for b := 0; a+b < 20; b += 2 {
			n := a + b
			want := 0.0
			if a%2 == 0 {
				want = 2 / float64(n+2) * double(a-1) * double(b-1) / double(n)
			}
			got, area := 0.0, 0.0
			for _, row := range pupilRows {
				for _, place := range alongRow {
					x, weight := row.halfLength*(2*place.share-1), 2*row.halfLength*row.halfLength*place.weight
					got += weight * math.Pow(x, float64(a)) * math.Pow(row.aside, float64(b))
					area += weight
				}
			}
			require.InDelta(t, want, got/area, 1e-12, "x^%d y^%d", a, b)
		}
	}
}
