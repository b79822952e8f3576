package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// The bench in letters keeps to its columns, and its lengths are to one scale: a letter is twice as high as wide.
func TestBenchView(t *testing.T) {
	for _, c := range []struct {
		name                 string
		cameraMM, distanceMM float64
	}{{"usual", 300, 400}, {"near", 300, 60}, {"a board far off", 300, 3000}, {"a camera far off", 4000, 300}} {
		t.Run(c.name, func(t *testing.T) {
			s := layout.Setup{Drop: flip.Drop{DiameterMM: 5, Index: 1.333}, DistanceMM: c.distanceMM, CameraMM: c.cameraMM,
				Proportions: 1.5, Fill: 0.85, MarginMM: 5, LapMM: 10}
			s.Paper, _ = layout.ParsePaper("A0")
			s.Camera = layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 600, HeightPx: 400,
				LensMM: 100, FNumber: 16, Focus: layout.FocusBest}
			p, err := s.Plan()
			require.NoError(t, err)
			lines := Of(p).BenchView()
			for _, line := range lines {
				require.LessOrEqual(t, len([]rune(line)), 60, line)
			}
			boards := 0
			axis := ""
			for _, line := range lines {
				if strings.HasSuffix(line, "#") {
					boards++
				}
				if strings.HasPrefix(line, "[]") {
					axis = line
				}
			}
			require.LessOrEqual(t, boards, 23)
			drop, board := strings.IndexByte(axis, 'o')-2, strings.IndexByte(axis, '#')-2
			perColumn := (c.cameraMM + c.distanceMM) / float64(board)
			require.InDelta(t, c.cameraMM, float64(drop)*perColumn, 1.5*perColumn)
			require.InDelta(t, p.Backdrop.HeightMM, float64(boards)*2*perColumn, 4*perColumn)
		})
	}
}
