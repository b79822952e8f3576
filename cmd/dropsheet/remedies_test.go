package main

import (
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"
)

// What no flag takes, or no setup can be made of, is refused with what to write in its place: the list of all flags
// would be no answer.
func TestRefusedValuesSayWhatToWrite(t *testing.T) {
	const noAnswer = "lists the flags"
	refused := 0
	for _, k := range commands {
		flags := flagsOf(k)
		flags.VisitAll(func(f *pflag.Flag) {
			for _, value := range []string{"", "nonsense", "-7", "0", "0mm", "0x0mm", "9e99", "1e9m", "1x1mm", "1e-9mm", "7,7"} {
				err := flags.Set(f.Name, value)
				if err == nil {
					continue
				}
				refused++
				_, hint, _ := strings.Cut(k.flagError(flags, err).Error(), "\nhint: ")
				require.NotEmpty(t, hint, "%s --%s %q", k.name, f.Name, value)
				require.NotContains(t, hint, noAnswer, "%s --%s %q", k.name, f.Name, value)
			}
		})
	}
	require.Greater(t, refused, 1000)

	for _, line := range []string{"--drop 0.001mm", "--distance 1mm", "--camera-distance 5mm", "--travel 2m", "--lap 1mm",
		"--fill 0.0000001", "--lamp 60cm,0cm,-80cm", "--max-sheets 1 --copies 500", "--lens 500mm", "--aperture f/0.1",
		"--print-size 900x600mm --distance 1m --fill 0.5", "--board-width 3cm", "--rows 500 --columns 500", "--margin 200mm",
		"--frame-rate 100 --shutter 1s", "--body upright-rod --wall 15mm", "--nozzle 50mm", "--shape 1:1000",
		"--pixels 900000x1", "--surround navy --surround-size 1x1cm", "--scale 2", "--without fill", "--artwork other.jpg",
		"--body hanging --drop 9mm", "--body upright-rod --oblate 0.9", "--lamp 6cm,0cm,8cm --lamp-lux 1 --lamp-lux 2"} {
		_, stderr, code := dropsheet(t, append([]string{"size"}, strings.Fields(line)...)...)
		require.Equal(t, exitWrongWords, code, "%s: %s", line, stderr)
		require.Contains(t, stderr, "\nhint: ", line)
		require.NotContains(t, stderr, noAnswer, line)
	}
}
