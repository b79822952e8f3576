package main

import (
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

func TestProof(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 120, 80)
	folder := mustMake(t, art, "--pixels", "90x60", "--frame-width", "9mm")
	shot := func(flags ...string) []byte {
		out := filepath.Join(t.TempDir(), "shot.png")
		stdout, stderr, code := dropsheet(t, append([]string{"proof", folder, "--out", out}, flags...)...)
		require.Equal(t, exitDone, code, stderr)
		require.Contains(t, stdout, "written")
		data, err := os.ReadFile(out)
		require.NoError(t, err)
		return data
	}
	asMade, err := os.ReadFile(filepath.Join(folder, "proof.png"))
	require.NoError(t, err)
	require.Equal(t, asMade, shot(), "without flags it is the proof that make wrote")

	for _, flags := range [][]string{
		{"--sharp"}, {"--aperture", "f/64"}, {"--focus", "edge"}, {"--lens", "150mm"}, {"--frame-width", "12mm"},
		{"--camera-distance", "50cm"},
		{"--lamp", "-30cm,-20cm,40cm"},
		{"--lamp", "0cm,0cm,1m", "--lamp-lux", "1e5", "--iso", "200", "--shutter", "1/1000s"},
		{"--fall", "20cm", "--shutter", "1/10000s"}, {"--speed", "-2m/s", "--frame-rate", "12500"},
		{"--drop-at", "1mm,-1mm"}, {"--samples", "60"}, {"--sensor", "24x16mm"},
	} {
		require.NotEqual(t, asMade, shot(flags...), "%v changes nothing", flags)
	}

	out := filepath.Join(t.TempDir(), "shot.png")
	stdout, stderr, code := dropsheet(t, "proof", folder, "--pixels", "30x40", "--seam-width", "0mm", "--iso", "200",
		"--out", out)
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "to see it as recorded, say --frame-rate or --shutter and --lamp and --lamp-lux\n")
	f, err := os.Open(out)
	require.NoError(t, err)
	defer f.Close()
	config, err := png.DecodeConfig(f)
	require.NoError(t, err)
	require.Equal(t, []int{30, 40}, []int{config.Width, config.Height})

	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"glare", []string{"proof", folder, "--lamp", "0mm,0mm,80cm", "--pixels", "30x20", "--out", out, "--force"}, exitDone,
			"warning: shiny paper mirrors lamp 1 in the drop, at "},
		{"a drop out of the frame", []string{"proof", folder, "--drop-at", "20mm,0.5mm", "--pixels", "30x20", "--out", out,
			"--force"}, exitDone, "warning: at 20, 0.5 mm the drop is out of the frame, which is 9 x 6 mm there"},
		{"light as it is recorded", []string{"proof", folder, "--lamp", "0mm,0mm,80cm", "--lamp-lux", "1e6", "--iso", "100",
			"--shutter", "1/1000s", "--pixels", "30x20", "--out", out, "--force"}, exitDone, " % of the frame is clipped, "},
		{"a file that is there", []string{"proof", folder, "--out", out}, exitFailed, "--force"},
		{"the job itself", []string{"proof", folder, "--out", filepath.Join(folder, place.JobFile), "--force"}, exitFailed,
			"part of its job"},
		{"a folder", []string{"proof", folder, "--out", t.TempDir()}, exitFailed, "is a folder"},
		{"no job", []string{"proof"}, exitWrongWords, "takes one job"},
		{"lens, frame and distance", []string{"proof", folder, "--lens", "60mm", "--frame-width", "9mm", "--camera-distance",
			"20cm"}, exitWrongWords, "leave one of them out"},
		{"a place of one figure", []string{"proof", folder, "--drop-at", "1mm"}, exitWrongWords, "two lengths"},
		{"no rays", []string{"proof", folder, "--samples", "0"}, exitWrongWords, "from 1 to"},
		{"a lamp behind the board", []string{"proof", folder, "--lamp", "0mm,0mm,-1m"}, exitWrongWords,
			"in front of the board"},
		{"a lamp of two figures", []string{"proof", folder, "--lamp", "0mm,1m"}, exitWrongWords, "three lengths"},
		{"a camera in the drop", []string{"proof", folder, "--camera-distance", "2mm"}, exitWrongWords, "move it further"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, stderr, code := dropsheet(t, c.args...)
			require.Equal(t, c.code, code, stderr)
			require.Contains(t, stderr, c.says)
		})
	}
}
