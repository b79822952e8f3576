package film

import (
	"errors"
	"image"
	"image/color"
	"image/draw"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFilmIsWebM(t *testing.T) {
	film := filmOf(t, 25, falling(0, 64, 48), falling(1, 64, 48), falling(2, 64, 48))
	header := elements(t, film)[0]
	require.Equal(t, "webm", string(header.one(t, "DocType").content))
	require.Equal(t, uint64(4), header.one(t, "DocTypeVersion").number(t))
	require.Equal(t, uint64(2), header.one(t, "DocTypeReadVersion").number(t))

	s := segment(t, film)
	var order []string
	for _, c := range s.contained {
		order = append(order, c.name)
	}
	require.Equal(t, []string{"SeekHead", "Info", "Tracks", "Cluster", "Cluster", "Cluster", "Cues"}, order)
	for _, seek := range s.all("SeekHead/Seek") {
		id, _ := variable(t, seek.one(t, "SeekID").content)
		require.Equal(t, s.one(t, names[id]).at, int(seek.one(t, "SeekPosition").number(t)), names[id])
	}
	require.Len(t, s.all("SeekHead/Seek"), 3)

	entry := s.one(t, "Tracks/TrackEntry")
	require.Equal(t, "V_VP8", string(entry.one(t, "CodecID").content))
	for path, want := range map[string]uint64{
		"TrackNumber": 1, "TrackUID": 1, "TrackType": 1, "FlagLacing": 0, "Video/PixelWidth": 64, "Video/PixelHeight": 48,
		// ITU-T H.273: SMPTE 170M's matrix, which is BT.601's; IEC 61966-2-1 (sRGB); BT.709's primaries, which are
		// sRGB's. Range 1 is luma from 16 to 235.
		"Video/Colour/MatrixCoefficients": 6, "Video/Colour/Range": 1,
		"Video/Colour/TransferCharacteristics": 13, "Video/Colour/Primaries": 1,
	} {
		require.Equal(t, want, entry.one(t, path).number(t), path)
	}
}

func TestFilmTakesItsTime(t *testing.T) {
	for _, c := range []struct {
		name        string
		playbackFPS float64
		frameNS     uint64
		timesMS     []uint64
		durationMS  float64
	}{
		{"25 a second", 25, 40_000_000, []uint64{0, 40, 80, 120}, 160},
		{"24 a second", 24, 41_666_667, []uint64{0, 42, 83, 125}, 500. / 3},
		{"30000 in 1001 seconds", 30000. / 1001, 33_366_667, []uint64{0, 33, 67, 100}, 4 * 1001. / 30},
		{"slowest", 0.1, 10_000_000_000, []uint64{0, 10_000, 20_000, 30_000}, 40_000},
		{"fastest", 500, 2_000_000, []uint64{0, 2, 4, 6}, 8},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := falling(0, 16, 16)
			s := segment(t, filmOf(t, c.playbackFPS, m, m, m, m))
			require.Equal(t, uint64(1_000_000), s.one(t, "Info/TimestampScale").number(t), "a millisecond")
			require.InDelta(t, c.durationMS, s.one(t, "Info/Duration").float(t), 1e-9)
			require.Equal(t, c.frameNS, s.one(t, "Tracks/TrackEntry/DefaultDuration").number(t))
			for i, cluster := range s.all("Cluster") {
				require.Equal(t, c.timesMS[i], cluster.one(t, "Timestamp").number(t), "frame %d", i)
			}
		})
	}
}

// The same pictures give the same bytes: again, from whatever kind of picture they come, and wherever in a file the
// film begins.
func TestSamePicturesGiveTheSameBytes(t *testing.T) {
	a, b := falling(0, 33, 17), falling(1, 33, 17)
	want := filmOf(t, 25, a, b)
	require.Equal(t, want, filmOf(t, 25, a, b), "again")
	require.NotEqual(t, want, filmOf(t, 25, b, a), "in another order")

	as := func(m draw.Image) image.Image {
		draw.Draw(m, m.Bounds(), b, image.Point{}, draw.Src)
		return m
	}
	wide := image.NewRGBA(image.Rect(-10, -10, 60, 60))
	draw.Draw(wide, image.Rect(5, 7, 38, 24), b, image.Point{}, draw.Src)
	for name, m := range map[string]image.Image{
		"NRGBA": as(image.NewNRGBA(b.Rect)), "64 bits": as(image.NewRGBA64(b.Rect)),
		"part of a larger one": wide.SubImage(image.Rect(5, 7, 38, 24)),
	} {
		require.Equal(t, want, filmOf(t, 25, a, m), name)
	}

	f := file{data: []byte("before"), at: 6}
	w, err := New(&f, 33, 17, 25)
	require.NoError(t, err)
	require.NoError(t, w.Add(a))
	require.NoError(t, w.Add(b))
	require.NoError(t, w.Close())
	require.Equal(t, "before"+string(want), string(f.data))
}

func TestTransparentLiesOnBlack(t *testing.T) {
	half, black := image.NewNRGBA(image.Rect(0, 0, 32, 32)), image.NewRGBA(image.Rect(0, 0, 32, 32))
	for i := range 32 * 32 {
		half.SetNRGBA(i%32, i/32, color.NRGBA{200, 100, 50, 51}) // 51 of 255 is a fifth
		black.SetRGBA(i%32, i/32, color.RGBA{40, 20, 10, 255})
	}
	solid := falling(0, 32, 32) // and nothing of the frame before shines through
	require.Equal(t, filmOf(t, 25, solid, black), filmOf(t, 25, solid, half))
}

func TestNewTellsWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		name          string
		width, height int
		playbackFPS   float64
		want          string
	}{
		{"no width", 0, 480, 25, "a film can't have frames of 0 x 480 pixels\nhint: take 1 to 16383 both ways"},
		{"below zero", 640, -1, 25, "a film can't have frames of 640 x -1 pixels\nhint: take 1 to 16383 both ways"},
		{"wider than VP8 holds", 16384, 2, 25, "a film can't have frames of 16384 x 2 pixels\n" +
			"hint: take 1 to 16383 both ways"},
		{"stands still", 640, 480, 0, "a film can't be played at 0 frames a second\nhint: take 0.1 to 500, such as 25"},
		{"not a number", 640, 480, math.NaN(), "a film can't be played at NaN frames a second\n" +
			"hint: take 0.1 to 500, such as 25"},
		{"too fast", 640, 480, 501, "a film can't be played at 501 frames a second\nhint: take 0.1 to 500, such as 25"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var f file
			_, err := New(&f, c.width, c.height, c.playbackFPS)
			require.EqualError(t, err, c.want)
			require.Empty(t, f.data)
		})
	}
}

func TestNewNeedsAFile(t *testing.T) {
	r, pipe, err := os.Pipe()
	require.NoError(t, err)
	defer r.Close()
	defer pipe.Close()
	_, err = New(pipe, 16, 16, 25)
	require.ErrorContains(t, err, "a film needs a file to go back in: ")
}

func TestAddTellsWhatIsWrong(t *testing.T) {
	var f file
	w, err := New(&f, 32, 16, 25)
	require.NoError(t, err)
	require.NoError(t, w.Add(falling(0, 32, 16)))
	require.EqualError(t, w.Add(falling(0, 16, 32)),
		"frame 2 of the film has 16 x 32 pixels, the film 32 x 16\nhint: give all frames one size")
	require.NoError(t, w.Add(falling(1, 32, 16)), "the film goes on")
	require.NoError(t, w.Close())
	require.NoError(t, w.Close(), "again")
	require.EqualError(t, w.Add(falling(2, 32, 16)), "the film is closed\nhint: begin another one for more frames")
	require.Len(t, frames(t, f.data), 2)
}

func TestFilmWithoutFrames(t *testing.T) {
	w, err := New(&file{}, 32, 16, 25)
	require.NoError(t, err)
	require.EqualError(t, w.Close(), "a film without frames can't be played\nhint: add one at least")
}

// A full disk is told once and for all, wherever it is met.
func TestFilmTellsOfAFullDisk(t *testing.T) {
	full := errors.New("no space left on device")
	whole := filmOf(t, 25, falling(0, 64, 48), falling(1, 64, 48))
	s := segment(t, whole)
	inSegment := len(whole) - len(s.content)
	second, cues := inSegment+s.all("Cluster")[1].at, inSegment+s.one(t, "Cues").at
	for _, c := range []struct {
		name      string
		failAfter int
		want      string
	}{
		{"first frame", second - 1, "frame 1 of the film: writing it: no space left on device"},
		{"second frame", cues - 1, "frame 2 of the film: writing it: no space left on device"},
		{"end", len(whole) - 1, "finishing the film: no space left on device"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := file{failAfter: c.failAfter, err: full}
			w, err := New(&f, 64, 48, 25)
			require.NoError(t, err)
			for i := range 2 {
				if err = w.Add(falling(i, 64, 48)); err != nil {
					require.EqualError(t, err, c.want)
					f.err = nil // there is room again, but a frame is missing
					written := len(f.data)
					require.EqualError(t, w.Add(falling(i, 64, 48)), c.want)
					require.Len(t, f.data, written)
					break
				}
			}
			err = w.Close()
			require.EqualError(t, err, c.want)
			require.ErrorIs(t, err, full)
		})
	}
	_, err := New(&file{err: full}, 64, 48, 25)
	require.EqualError(t, err, "writing the film: no space left on device")
}

// However long the film, memory stays what a frame takes: the encoder gives back what it took.
func TestMemoryStaysThatOfAFrame(t *testing.T) {
	w, err := New(&file{}, 200, 150, 25)
	require.NoError(t, err)
	var early uint32
	for i := range 60 {
		require.NoError(t, w.Add(falling(i%6, 200, 150)))
		if i == 5 {
			early = w.encoder.module.Memory().Size()
		}
	}
	require.Equal(t, early, w.encoder.module.Memory().Size())
	require.Less(t, early, uint32(2<<20))
	require.NoError(t, w.Close())
}
