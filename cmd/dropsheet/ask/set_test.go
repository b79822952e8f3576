package ask

import (
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// Words taken one by one come to the same as a command line that says them all, and one said again takes the place of
// the first, but for lamps, of which there may be many.
func TestWordsOneByOne(t *testing.T) {
	order := func(say func(*pflag.FlagSet) error) job.Order {
		var m Make
		flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
		m.Register(flags)
		require.NoError(t, say(flags))
		require.NoError(t, m.Of("clock.jpg"))
		o, err := m.Order()
		require.NoError(t, err)
		return o
	}
	atOnce := order(func(flags *pflag.FlagSet) error {
		return flags.Parse([]string{"--distance", "41cm", "--lamp", "1cm,2cm,30cm", "--lamp=-4cm,5cm,60cm", "--round"})
	})
	oneByOne := order(func(flags *pflag.FlagSet) error {
		for _, word := range [][2]string{{"distance", "40cm"}, {"lamp", "1cm,2cm,30cm"}, {"distance", "41cm"},
			{"round", "true"}, {"lamp", "-4cm,5cm,60cm"}} {
			if err := Set(flags, word[0], word[1]); err != nil {
				return err
			}
		}
		return nil
	})
	require.Equal(t, atOnce, oneByOne)
	require.InDelta(t, 410, oneByOne.Setup.DistanceMM, 1e-9)
	require.True(t, oneByOne.Setup.Framing.Round)
	require.Equal(t, []layout.Lamp{{XMM: 10, YMM: 20, ZMM: 300}, {XMM: -40, YMM: 50, ZMM: 600}}, oneByOne.Setup.Lamps)
	require.Equal(t, "clock-backdrop", oneByOne.Folder)
}

// A word that can't be taken is refused in the words of the command line.
func TestWordThatCantBeTaken(t *testing.T) {
	for _, c := range []struct{ name, value, says string }{
		{"distance", "40", `--distance: "40" has no unit`},
		{"distance", "0mm", "--distance: \"0mm\" is too small\nhint: write a length above 0mm"},
		{"round", "perhaps", `--round: "perhaps" can't be taken` + "\nhint: give the flag alone"},
		{"distnce", "40cm", "unknown flag: --distnce"},
	} {
		t.Run(c.name+" "+c.value, func(t *testing.T) {
			var m Make
			flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
			m.Register(flags)
			err := Set(flags, c.name, c.value)
			require.ErrorContains(t, err, c.says)
			require.True(t, job.IsWrongWords(err))
		})
	}
}
