package flip_test

import (
	"fmt"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// allTurns lists all eight.
func allTurns() (turns []flip.Turn) {
	for i := range 8 {
		turns = append(turns, flip.Turn{SwapXY: i&1 != 0, ReverseX: i&2 != 0, ReverseY: i&4 != 0})
	}
	return turns
}

// apply turns a raster of lines of equal length, one byte a pixel, by asking Source for every pixel of the result.
func apply(t *testing.T, turn flip.Turn, picture []string) []string {
	t.Helper()
	w, h := len(picture[0]), len(picture)
	outW, outH := turn.Size(w, h)
	out := make([]string, outH)
	for y := range outH {
		line := make([]byte, outW)
		for x := range outW {
			px, py := turn.Source(x, y, w, h)
			require.True(t, px >= 0 && px < w && py >= 0 && py < h, "%+v: (%d, %d) comes from (%d, %d) outside", turn, x, y,
				px, py)
			line[x] = picture[py][px]
		}
		out[y] = string(line)
	}
	return out
}

// Every pixel has a letter of its own, so that no two turns give the same result. The results in the table were
// worked out from the words in the first column, not from the code.
var labelled = []string{
	"abc",
	"def",
}

func TestTurnByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		turn flip.Turn
		want []string
	}{
		{"as it is", flip.Turn{}, []string{"abc", "def"}},
		{"left and right", flip.Turn{ReverseX: true}, []string{"cba", "fed"}},
		{"up and down", flip.Turn{ReverseY: true}, []string{"def", "abc"}},
		{"half a turn", flip.HalfTurn, []string{"fed", "cba"}},
		{"rows for columns", flip.Turn{SwapXY: true}, []string{"ad", "be", "cf"}},
		{"quarter anticlockwise", flip.Turn{SwapXY: true, ReverseX: true}, []string{"cf", "be", "ad"}},
		{"quarter clockwise", flip.Turn{SwapXY: true, ReverseY: true}, []string{"da", "eb", "fc"}},
		{"rows for columns, the other diagonal", flip.Turn{SwapXY: true, ReverseX: true, ReverseY: true},
			[]string{"fc", "eb", "da"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, apply(t, c.turn, labelled))
		})
	}
}

func TestTurnSize(t *testing.T) {
	for _, turn := range allTurns() {
		w, h := turn.Size(7, 4)
		if turn.SwapXY {
			require.Equal(t, []int{4, 7}, []int{w, h}, "%+v", turn)
		} else {
			require.Equal(t, []int{7, 4}, []int{w, h}, "%+v", turn)
		}
	}
}

func TestHalfTurnTwiceIsNothing(t *testing.T) {
	require.Equal(t, flip.Turn{}, flip.HalfTurn.Then(flip.HalfTurn))
	require.Equal(t, labelled, apply(t, flip.HalfTurn, apply(t, flip.HalfTurn, labelled)))
}

// Then is checked by turning a picture twice, pixel by pixel, for all 64 pairs.
func TestThenIsOneTurnAfterTheOther(t *testing.T) {
	pictures := map[string][]string{
		"wide": labelled, "high": {"ab", "cd", "ef", "gh"}, "square": {"abc", "def", "ghi"}, "one pixel": {"a"},
		"one line": {"abcd"},
	}
	for name, picture := range pictures {
		for _, first := range allTurns() {
			for _, next := range allTurns() {
				t.Run(fmt.Sprintf("%s, %+v, %+v", name, first, next), func(t *testing.T) {
					want := apply(t, next, apply(t, first, picture))
					require.Equal(t, want, apply(t, first.Then(next), picture))
				})
			}
		}
	}
}

// A turn can always be undone by one of the eight, and no two of them are the same.
func TestTurnsAreAGroup(t *testing.T) {
	results := map[string]bool{}
	for _, turn := range allTurns() {
		results[fmt.Sprint(apply(t, turn, labelled))] = true
		undone := 0
		for _, back := range allTurns() {
			if turn.Then(back) == (flip.Turn{}) {
				undone++
				require.Equal(t, labelled, apply(t, back, apply(t, turn, labelled)))
			}
		}
		require.Equal(t, 1, undone, "%+v", turn)
	}
	require.Len(t, results, 8)
}
