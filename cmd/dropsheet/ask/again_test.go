package ask

import (
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// jobOf is a job that was asked for with these words, whose print is 900 mm wide at 400 mm.
func jobOf(words job.Asked) *job.Job {
	var p layout.Plan
	p.Picture.WidthMM, p.Picture.HeightMM, p.Drop.DistanceMM = 900, 600, 400
	p.Camera.Sensor = layout.Size{WidthMM: 36, HeightMM: 24}
	return &job.Job{Version: job.Version, Asked: words, Plan: p,
		Artwork: job.Artwork{WidthPx: 300, HeightPx: 200}}
}

// A job's words stand but for the flags given and those that say the same in another way; of three of which two are
// enough, the one gives way that follows from the others.
func TestWordsGiveWay(t *testing.T) {
	type words = job.Asked
	for _, c := range []struct {
		name  string
		was   words
		given []string
		want  words
	}{
		{"nothing given", words{"distance": {"40cm"}, "round": {"true"}, "avoid": {"0.1,0.1,0.1", "0.5,0.5,0.1"}}, nil,
			words{"distance": {"40cm"}, "round": {"true"}, "avoid": {"0.1,0.1,0.1", "0.5,0.5,0.1"}}},
		{"another stop", words{"distance": {"40cm"}, "aperture": {"f/22"}}, []string{"--aperture", "f/11"},
			words{"distance": {"40cm"}, "aperture": {"f/11"}}},
		{"a list takes the place of the job's", words{"avoid": {"0.1,0.1,0.1", "0.5,0.5,0.1"}},
			[]string{"--avoid", "0.2,0.2,0.2"}, words{"avoid": {"0.2,0.2,0.2"}}},
		{"a switch off", words{"round": {"true"}, "distance": {"40cm"}}, []string{"--round=false"},
			words{"distance": {"40cm"}}},
		{"pixels by themselves, of those of a size", words{"pixels": {"1280x800"}, "pixel-size": {"28um"}},
			[]string{"--pixels", "640x400"}, words{"pixels": {"640x400"}, "sensor": {"36mmx24mm"}}},
		{"pixels and their size", words{"pixels": {"1280x800"}, "pixel-size": {"28um"}},
			[]string{"--pixels", "640x400", "--pixel-size", "20um"}, words{"pixels": {"640x400"}, "pixel-size": {"20um"}}},
		{"the drop by a nozzle", words{"drop": {"4mm"}}, []string{"--nozzle", "3mm"}, words{"nozzle": {"3mm"}}},
		{"a printer for margins", words{"margin": {"4mm"}, "lap": {"8mm"}}, []string{"--printer", "study"},
			words{"printer": {"study"}, "lap": {"8mm"}}},
		{"a background for a surround", words{"surround": {"navy"}, "surround-size": {"2mx1m"}},
			[]string{"--background", "black"}, words{"background": {"black"}}},
		{"fill, of distance and fill", words{"distance": {"40cm"}, "fill": {"0.8"}}, []string{"--fill", "0.9"},
			words{"distance": {"40cm"}, "fill": {"0.9"}}},
		{"print size, of distance and fill", words{"distance": {"40cm"}, "fill": {"0.8"}},
			[]string{"--print-size", "90x60cm"}, words{"distance": {"40cm"}, "print-size": {"90x60cm"}}},
		{"fill, of distance and print size", words{"distance": {"40cm"}, "print-size": {"90x60cm"}},
			[]string{"--fill", "0.9"}, words{"distance": {"40cm"}, "fill": {"0.9"}}},
		{"distance, of print size and fill", words{"fill": {"0.8"}, "print-size": {"90x60cm"}},
			[]string{"--distance", "30cm"}, words{"distance": {"30cm"}, "fill": {"0.8"}}},
		{"fill, of distance and the most sheets", words{"distance": {"40cm"}, "max-sheets": {"12"}},
			[]string{"--fill", "0.9"}, words{"distance": {"40cm"}, "fill": {"0.9"}}},
		{"the most sheets, of distance and fill", words{"distance": {"40cm"}, "fill": {"0.8"}},
			[]string{"--max-sheets", "12"}, words{"distance": {"40cm"}, "max-sheets": {"12"}}},
		{"another bound", words{"distance": {"4m"}, "fill": {"0.8"}, "max-sheets": {"900"}},
			[]string{"--max-sheets", "800"}, words{"distance": {"4m"}, "fill": {"0.8"}, "max-sheets": {"800"}}},
		{"a board, of distance and fill", words{"distance": {"40cm"}, "fill": {"0.8"}}, []string{"--board-width", "60cm"},
			words{"distance": {"40cm"}, "board-width": {"60cm"}}},
		{"frame width, of lens and camera distance", words{"lens": {"90mm"}, "camera-distance": {"30cm"}},
			[]string{"--frame-width", "40mm"}, words{"frame-width": {"40mm"}, "camera-distance": {"30cm"}}},
		{"camera distance, of lens and frame width", words{"lens": {"90mm"}, "frame-width": {"40mm"}},
			[]string{"--camera-distance", "50cm"}, words{"lens": {"90mm"}, "camera-distance": {"50cm"}}},
		{"another lamp, of two of which each had its own light",
			words{"lamp": {"1m,0m,1m", "-1m,0m,1m"}, "lamp-lux": {"1000", "2000"}, "lamp-size": {"5cm"}},
			[]string{"--lamp", "60cm,0cm,80cm"}, words{"lamp": {"60cm,0cm,80cm"}, "lamp-size": {"5cm"}}},
		{"even seams", words{"avoid": {"0.1,0.1,0.1"}}, []string{"--seams", "even"}, words{"seams": {"even"}}},
		{"places to avoid, of even seams", words{"seams": {"even"}}, []string{"--avoid", "0.1,0.1,0.1"},
			words{"avoid": {"0.1,0.1,0.1"}}},
		{"left out", words{"surround": {"navy"}, "distance": {"40cm"}}, []string{"--without", "surround"},
			words{"distance": {"40cm"}}},
		{"left out, with what means nothing without it", words{"lamp": {"1m,0m,1m"}, "lamp-lux": {"900"}, "level": {"true"},
			"surround": {"navy"}, "surround-size": {"1x1m"}}, []string{"--without", "lamp", "--without", "surround"}, words{}},
		{"a scale keeps the distance", words{"distance": {"40cm"}, "fill": {"0.8"}}, []string{"--scale", "1.05"},
			words{"distance": {"40cm"}, "print-size": {"945mm"}}},
		{"a scale keeps a distance that followed", words{"print-size": {"90x60cm"}}, []string{"--scale", "0.5"},
			words{"distance": {"400mm"}, "print-size": {"450mm"}}},
		{"a scale with a fill", words{"distance": {"40cm"}}, []string{"--scale", "2", "--fill", "0.8"},
			words{"fill": {"0.8"}, "print-size": {"1.8m"}}},
		{"a scale with a distance", words{"fill": {"0.8"}}, []string{"--scale", "2", "--distance", "1m"},
			words{"distance": {"1m"}, "print-size": {"1.8m"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var m Make
			flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
			m.Register(flags)
			require.NoError(t, flags.Parse(c.given))
			m.again.of = jobOf(c.was)
			require.NoError(t, m.layUnder(c.was))
			require.Equal(t, c.want, asked(flags))
		})
	}
}

// What can't be asked of a job, or of anything else.
func TestAskedAgainInWrongWords(t *testing.T) {
	for _, c := range []struct {
		name  string
		was   job.Asked // nil for an artwork
		given []string
		says  string
	}{
		{"a scale of an artwork", nil, []string{"--scale", "1.1"}, "--scale changes a job\nhint: name the folder of one"},
		{"an artwork's artwork", nil, []string{"--artwork", "x.png"}, "--artwork changes a job"},
		{"a word that was not said", job.Asked{"lap": {"8mm"}}, []string{"--without", "surround"},
			"not asked for with --surround\nhint: its words are lap"},
		{"two sizes", job.Asked{}, []string{"--scale", "1.1", "--print-size", "60cm"}, "give one of them"},
		{"a word of another dropsheet", job.Asked{"hue": {"7"}}, nil, "--hue, which this dropsheet does not know"},
		{"a word that can't be", job.Asked{"lap": {"wide"}}, nil, `the job's own words can't be taken: --lap: "wide"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			var m Make
			flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
			m.Register(flags)
			require.NoError(t, flags.Parse(c.given))
			err := error(nil)
			if c.was == nil {
				err = m.Of("harbour.jpg")
			} else {
				m.again.of = jobOf(c.was)
				err = job.WrongWords(m.layUnder(c.was))
			}
			require.ErrorContains(t, err, c.says)
			require.True(t, job.IsWrongWords(err))
		})
	}
}
