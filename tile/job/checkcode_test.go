package job

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/report"
)

// What has no part in how the sheets come out has none in their code.
func TestCheckCode(t *testing.T) {
	code := func(change func(*layout.Setup)) string {
		code, err := jobOf(t, func(s *layout.Setup) {
			s.Lamps, s.Level = []layout.Lamp{{XMM: -400, YMM: -400, ZMM: 300}, {XMM: 400, YMM: -400, ZMM: 300}}, true
			change(s)
		}).code()
		require.NoError(t, err)
		return code
	}
	each := func(set func(i int, l *layout.Lamp)) func(*layout.Setup) {
		return func(s *layout.Setup) {
			for i := range s.Lamps {
				set(i, &s.Lamps[i])
			}
		}
	}
	plain := code(func(*layout.Setup) {})
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		same   bool
	}{
		{"exposure", func(s *layout.Setup) { s.Shooting.ISO, s.Shooting.ShutterS = 400, 1e-4 }, true},
		{"motion", func(s *layout.Setup) { s.Shooting.FallMM, s.Shooting.PlaybackFPS = 200, 30 }, true},
		{"inches", func(s *layout.Setup) { s.Inches = true }, true},
		{"what the drop comes from", func(s *layout.Setup) { s.Shooting.JetMM = 2 }, true},
		{"a sensor that nobody named", func(s *layout.Setup) { s.Camera.SensorAssumed = true }, true},
		{"lamps' lux, all alike", each(func(_ int, l *layout.Lamp) { l.LuxAt1M = 5000 }), true},
		{"lamps' faces", each(func(_ int, l *layout.Lamp) { l.SizeMM = 80 }), true},
		{"one lamp stronger", each(func(i int, l *layout.Lamp) { l.LuxAt1M = 5000 * float64(1+i) }), false},
		{"lamps' beams", each(func(_ int, l *layout.Lamp) { l.BeamDeg = 90 }), false},
		{"lamps' aims", each(func(_ int, l *layout.Lamp) { l.Aim.XMM = 50 }), false},
		{"lamps that the print does not make up for", func(s *layout.Setup) { s.Level = false }, false},
		{"the drop", func(s *layout.Setup) { s.Drop.DiameterMM = 4 }, false},
		{"a rod", func(s *layout.Setup) { s.Drop.Body = flip.LevelRod }, false},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.same, plain == code(c.change)) })
	}
	t.Run("lamps that the print does not make up for, aimed elsewhere", func(t *testing.T) {
		unlevelled := func(s *layout.Setup) { s.Level = false }
		require.Equal(t, code(unlevelled), code(func(s *layout.Setup) {
			unlevelled(s)
			s.Lamps[0].BeamDeg, s.Lamps[1].Aim.AtDrop = 30, true
		}))
	})
	t.Run("what is kept for people", func(t *testing.T) {
		j := jobOf(t, func(*layout.Setup) {})
		was, err := j.code()
		require.NoError(t, err)
		j.Plan.Picture.NearAxisReachMM *= 1.02 // told for a camera far off
		j.Asked, j.Artwork.Copy, j.Shot = Asked{"fill": {"0.9"}}, "artwork.jpg", report.Shot{NeededLux: 5}
		is, err := j.code()
		require.NoError(t, err)
		require.Equal(t, was, is)
	})
}

// A job of one sheet has no seam: an empty list in its file, where once there was none, and the same code.
func TestNoSeamIsAnEmptyList(t *testing.T) {
	j := jobOf(t, func(s *layout.Setup) { s.DistanceMM = 60 })
	require.Len(t, j.Sheets, 1)
	text, err := json.Marshal(j)
	require.NoError(t, err)
	require.Contains(t, string(text), `"seams":[]`)
	is, err := j.code()
	require.NoError(t, err)
	j.Seams = nil
	was, err := j.code()
	require.NoError(t, err)
	require.Equal(t, was, is)
}
