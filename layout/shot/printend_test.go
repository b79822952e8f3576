package shot

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// How much of the frame past the drop is not printed, and whether any is, against the exact place of the
// picture that each of many places at random shows.
func TestPrintEndsAgainstThePicture(t *testing.T) {
	const seed = 65
	random := rand.New(rand.NewSource(seed))
	ends, whole := 0, 0
	for name, s := range bentSetups() {
		for _, frameMM := range []float64{15, 60, 200} {
			s.Camera.LensMM, s.Camera.FrameWidthMM = 0, frameMM
			p := mustPlan(t, s)
			c := Of(p).Coverage()
			if c.PrintEnds == nil {
				whole++
			} else {
				ends++
			}
			past, without := 0.0, 0.0
			for range 1500 {
				at := layout.Point{XMM: (random.Float64() - 0.5) * p.Camera.FrameWidthMM,
					YMM: (random.Float64() - 0.5) * p.Camera.FrameHeightMM}
				l, ok := p.Sight().Trace(p.Sight().PinholeRay(at.XMM, at.YMM))
				if !ok || l.Through {
					continue
				}
				past++
				if !inked(p, l.XMM, l.YMM) {
					without++
					require.True(t, c.PrintEnds != nil || math.Abs(l.XMM) > p.Backdrop.WidthMM/2-0.1 ||
						math.Abs(l.YMM) > p.Backdrop.HeightMM/2-0.1,
						"seed %d, %s, %g mm: nothing printed at %v", seed, name, frameMM, l)
				}
			}
			if c.PrintEnds != nil && past > 500 {
				// 4 sigma of 1,000 draws
				require.InDelta(t, without/past, c.PrintEnds.Share, 0.06, "seed %d, %s, %g mm", seed, name, frameMM)
			}
		}
	}
	require.Greater(t, ends, 10)
	require.Greater(t, whole, 3)
}

// Where it ends: of a square on one side of the axis, straight and inside, the near side is 0.1 of sqrt(0.9²
// + 0.5²) of the fill off the axis in the drop, and level with the axis the closed form of the reach puts it
// on the board; its corners bow further out.
func TestPrintEndsWhereTheSideLies(t *testing.T) {
	for _, off := range []float64{-0.4, 0.4} {
		s := plain()
		s.Proportions, s.DistanceMM, s.Look, s.Fit, s.Framing.OffX = 1, 300, layout.Straight, layout.Inside, off
		p := mustPlan(t, s)
		c := Of(p).Coverage()
		require.True(t, c.Covered())
		require.NotNil(t, c.PrintEnds)
		require.Len(t, c.PrintEnds.Edges, 1)
		nearMM, ok := p.Sight().ReachMM(0.85 * 0.1 / math.Hypot(0.9, 0.5))
		require.True(t, ok)
		nearPx := nearMM / p.BoardPerDrop() / p.Camera.PixelMM()
		e := c.PrintEnds.Edges[0]
		awayPx := math.Abs(e.AtPx - float64(p.Camera.WidthPx)/2)
		require.Greater(t, awayPx, nearPx)
		require.Less(t, awayPx, 3*nearPx)
		require.Equal(t, map[bool]string{true: "right", false: "left"}[off < 0], e.Side, "the drop turns it over")

		s.Surround = "#000000"
		require.Nil(t, Of(mustPlan(t, s)).Coverage().PrintEnds)
	}
	require.Nil(t, Of(mustPlan(t, plain())).Coverage().PrintEnds)
}

// A background is printed all over the sheets that there are: what it leaves are the cells without a sheet.
func TestABackgroundEndsWithItsSheets(t *testing.T) {
	s := plain()
	s.DistanceMM, s.Look, s.Fit, s.Background = 400, layout.Straight, layout.Inside, "#203040"
	s.Paper = layout.Paper{Name: "small", WidthMM: 100, HeightMM: 100}
	s.Camera.LensMM, s.Camera.FrameWidthMM = 0, 600
	p := mustPlan(t, s)
	bare := p.Backdrop.Columns*p.Backdrop.Rows - len(p.Sheets)
	require.Positive(t, bare)
	require.NotNil(t, Of(p).Coverage().PrintEnds)
	s.Camera.FrameWidthMM = 20
	require.Nil(t, Of(mustPlan(t, s)).Coverage().PrintEnds)
}

// How much of the frame is not printed, by areas: a straight round picture on the axis is a disc on the board, and past
// the drop, which hides a disc, the rest of the frame is bare. The share is rounded to a hundredth, and it is told too
// large: places on the frame's own edge, which are bare, count as much as others, so of 101 places each way the ink has
// (100/101)² of its share, a fiftieth less.
func TestUnprintedShareByAreas(t *testing.T) {
	s := plain()
	s.DistanceMM, s.Look, s.Framing.Round = 300, layout.Straight, true
	s.Camera.LensMM, s.Camera.FrameWidthMM = 0, 100
	print := mustPlan(t, s).Picture.Print()
	for _, wider := range []float64{1.1, 1.4} {
		s.Camera.FrameWidthMM = wider * 1.5 * print.HeightMM / mustPlan(t, s).BoardPerDrop()
		p := mustPlan(t, s)
		sees, hidesMM := p.Sees(), p.Sight().ApparentRadiusMM()*p.BoardPerDrop()
		require.InDelta(t, wider*print.HeightMM, sees.HeightMM, 1e-9)
		frame := sees.WidthMM*sees.HeightMM - math.Pi*hidesMM*hidesMM
		ink := math.Pi*print.HeightMM*print.HeightMM/4 - math.Pi*hidesMM*hidesMM
		require.InDelta(t, 1-ink/frame, Of(p).Coverage().PrintEnds.Share, 0.005+ink/frame/50, "%g times as high", wider)
	}
}
