package layout

import (
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// byAngles follows a ray to the board by angles, in the plane that it shares with a ball's middle: refraction turns
// it by 2(i - r), and it passes the middle as near as before (van de Hulst, 1957, 12.21). ok is false where it misses
// the ball.
func byAngles(from, to flip.Vec, radiusMM, index, boardMM float64) (x, y float64, ok bool) {
	way := to.Sub(from).Unit()
	nearest := from.Sub(way.Scale(from.Dot(way)))
	b := math.Sqrt(nearest.Dot(nearest))
	if b >= radiusMM {
		return 0, 0, false
	}
	out := flip.Vec{X: 1}
	if b > 0 {
		out = nearest.Scale(1 / b)
	}
	sin, cos := math.Sincos(2 * (math.Asin(b/radiusMM) - math.Asin(b/(index*radiusMM))))
	after, passes := way.Scale(cos).Sub(out.Scale(sin)), out.Scale(cos).Add(way.Scale(sin)).Scale(b)
	along := (boardMM - passes.Z) / after.Z
	return passes.X + along*after.X, passes.Y + along*after.Y, true
}

// spreadByTurning is the spread of the picture by rays from a square lattice over the pupil: those that meet the ball.
// met is the share of them.
func spreadByTurning(p Plan, fill, focusMM float64) (s Spread, met float64) {
	r, n, camera, board := p.Drop.DiameterMM/2, p.Drop.Index, p.Drop.CameraMM, p.Drop.DistanceMM
	at := fill * r * camera / math.Sqrt(camera*camera-r*r)
	const stepMM = 1e-5
	lands := func(x, y float64) (float64, float64) {
		x, y, _ = byAngles(flip.Vec{Z: -camera}, flip.Vec{X: x, Y: y}, r, n, board)
		return x, y
	}
	further, _ := lands(at+stepMM, 0)
	nearer, _ := lands(at-stepMM, 0)
	_, beside := lands(at, stepMM)
	pxMM := p.Camera.FrameWidthMM / float64(p.Camera.WidthPx)

	const lattice = 500
	pupilMM := p.Camera.LensMM / p.Camera.FNumber / 2
	var all, n1, x1, x2, y2 float64
	for i := range lattice {
		for j := range lattice {
			u, v := (float64(i)+0.5)*2/lattice-1, (float64(j)+0.5)*2/lattice-1
			if u*u+v*v > 1 {
				continue
			}
			all++
			from := flip.Vec{X: u * pupilMM, Y: v * pupilMM, Z: -camera}
			x, y, ok := byAngles(from, flip.Vec{X: at * focusMM / camera, Z: focusMM - camera}, r, n, board)
			if ok {
				n1, x1, x2, y2 = n1+1, x1+x, x2+x*x, y2+y*y
			}
		}
	}
	return Spread{
		4 * math.Sqrt(x2/n1-x1/n1*x1/n1) * 2 * stepMM / math.Abs(further-nearer) / pxMM,
		4 * math.Sqrt(y2/n1) * stepMM / math.Abs(beside) / pxMM,
	}, n1 / all
}

// Where the pupil overhangs the drop, the blur is that of the rays that meet it, against a trace of many that shares no
// code.
func TestBlurWhereThePupilOverhangsTheDrop(t *testing.T) {
	for _, c := range []struct {
		name                              string
		camera, board, frame, stop, focus float64
		fill, wantPx                      float64 // the larger of both, of the first two as another program had it
	}{
		{"a pupil that just overhangs", 150, 200, 8, 8, 148.409, 0.95, 56.4},
		{"by a fiftieth", 300, 1000, 20, 5.7, 298.484, 0.95, 23.4},
		{"by a quarter", 150, 200, 8, 8, 148.454, 0.98, 0},
		{"nearly by half", 150, 200, 8, 2, 148.454, 0.985, 0},
		{"by no ray", 150, 200, 8, 8, 148.454, 0.85, 0},
		{"a focus behind the drop", 150, 200, 8, 4, 152, 0.95, 0},
		{"a lens wide open", 150, 200, 8, 1.4, 147, 0.9, 0},
	} {
		s := plain()
		s.Drop.DiameterMM, s.CameraMM, s.DistanceMM, s.Fill = 3, c.camera, c.board, c.fill
		s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.LensMM = 1920, 1280, 0
		s.Camera.FrameWidthMM, s.Camera.FNumber = c.frame, c.stop
		p := mustPlan(t, s)
		got := p.spread(c.fill, c.focus)
		want, met := spreadByTurning(p, c.fill, c.focus)
		t.Logf("%s: %.3f of the rays; got %.2f, want %.2f", c.name, met, got, want)
		require.InEpsilon(t, want.TangentialPx, got.TangentialPx, 0.02, c.name)
		require.InEpsilon(t, want.SagittalPx, got.SagittalPx, 0.02, c.name)
		if c.wantPx > 0 {
			require.InEpsilon(t, c.wantPx, math.Hypot(got.LargerPx(), p.Camera.AiryPx()), 0.02, c.name)
		}
	}
}
