package artwork

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// carrier is a kind of RGB picture file that can hold a profile.
type carrier struct {
	name string
	with func(profile []byte) []byte
}

func carriers(t testing.TB) []carrier {
	m := patchPicture()
	jpegFile, pngFile, webpFile := encodeJPEG(t, m, 80), encodePNG(t, m), fixture(t, "patches-lossless.webp")
	return []carrier{
		{"jpeg", func(p []byte) []byte { return withSegments(jpegFile, iccSegment(1, 1, p)) }},
		{"png", func(p []byte) []byte { return withChunk(pngFile, "iCCP", iccpBody(p)) }},
		{"tiff II", func(p []byte) []byte { return rgbTIFF(binary.LittleEndian, m, field{tagICC, 7, len(p), p}) }},
		{"tiff MM", func(p []byte) []byte { return rgbTIFF(binary.BigEndian, m, field{tagICC, 7, len(p), p}) }},
		{"webp", func(p []byte) []byte { return withRIFF(webpFile, riffChunk("ICCP", p)) }},
	}
}

// profileHarms spoil a good profile so that it lies about its size.
var profileHarms = []struct {
	name string
	do   func(profile []byte) []byte
	want string
}{
	{"says a byte more", func(p []byte) []byte { return says(p, 0, len(p)+1) }, "says that it has 153 bytes and has 152"},
	{"says a byte less", func(p []byte) []byte { return says(p, 0, len(p)-1) }, "says that it has 151 bytes and has 152"},
	{"says nothing", func(p []byte) []byte { return says(p, 0, 0) }, "says that it has 0 bytes"},
	{"says four gigabytes", func(p []byte) []byte { return says(p, 0, 1<<32-1) }, "says that it has 4294967295 bytes"},
	{"is cut short", func(p []byte) []byte { return p[:len(p)-5] }, "says that it has 152 bytes and has 147"},
	{"is only a header", func(p []byte) []byte { return p[:128] }, "only 128 bytes"},
	{"is empty", func([]byte) []byte { return nil }, "only 0 bytes"},
	{"has more after it", func(p []byte) []byte { return append(p, 1, 2, 3) }, "says that it has 152 bytes and has 155"},
	{"claims endless tags", func(p []byte) []byte { return says(p, 128, 1<<32-1) }, "4294967295 tags"},
	{"has a tag past its end", func(p []byte) []byte { return says(p, 136, 1<<31) }, `tag "desc" lies outside`},
	{"has a tag longer than itself", func(p []byte) []byte { return says(p, 140, 1<<32-8) }, `tag "desc" lies outside`},
}

// says returns the profile with a number at a place.
func says(profile []byte, at, number int) []byte {
	profile = slices.Clone(profile)
	binary.BigEndian.PutUint32(profile[at:], uint32(number))
	return profile
}

// TestLyingProfiles: a profile that lies about its size is dropped with one warning, whatever it came in, and
// the picture is read.
func TestLyingProfiles(t *testing.T) {
	good := testProfile("RGB ", "mntr")
	for _, c := range carriers(t) {
		p, err := decode(c.with(good), Reading{Limits: Default})
		require.NoError(t, err)
		require.Equal(t, good, p.ICC, "%s carries a good one", c.name)
		for _, harm := range profileHarms {
			t.Run(c.name+", profile "+harm.name, func(t *testing.T) {
				requireDropped(t, c.with(harm.do(slices.Clone(good))), harm.want)
			})
		}
	}
}

// requireDropped reads a picture whose profile must be dropped for a reason.
func requireDropped(t *testing.T, data []byte, want string) {
	t.Helper()
	p, err := Open(saved(t, data), Default)
	require.NoError(t, err)
	require.Nil(t, p.ICC)
	require.Len(t, p.Warnings, 1)
	require.Contains(t, p.Warnings[0], "colour profile dropped: ")
	require.Contains(t, p.Warnings[0], want)
	require.Contains(t, p.Warnings[0], "the colours are taken as srgb")
}

// TestLyingContainers: what holds the profile lies about it.
func TestLyingContainers(t *testing.T) {
	good := testProfile("RGB ", "mntr")
	half := len(good) / 2
	m := patchPicture()
	jpegFile := encodeJPEG(t, m, 80)
	le := binary.LittleEndian
	webp := func(profile []byte, length int) []byte {
		chunk := riffChunk("ICCP", profile)
		le.PutUint32(chunk[4:], uint32(length))
		return withRIFF(fixture(t, "patches-lossless.webp"), chunk)
	}
	tiffICC := func(count int) []byte { return rgbTIFF(le, m, field{tagICC, 7, count, good}) }
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"jpeg, chunk 0 of 0", withSegments(jpegFile, iccSegment(0, 0, good)), "number 0 of 0"},
		{"jpeg, chunk 1 of 0", withSegments(jpegFile, iccSegment(1, 0, good)), "number 1 of 0"},
		{"jpeg, the first of two chunks alone", withSegments(jpegFile, iccSegment(1, 2, good)), "chunk 2 of 2 is missing"},
		{"jpeg, the last of 255 chunks alone", withSegments(jpegFile, iccSegment(255, 255, good)),
			"chunk 1 of 255 is missing"},
		{"jpeg, two halves of two profiles", withSegments(jpegFile, iccSegment(1, 2, good[:half]), iccSegment(2, 2, good)),
			"says that it has 152 bytes and has 228"},
		{"jpeg, chunks of nothing", withSegments(jpegFile, iccSegment(1, 2, nil), iccSegment(2, 2, nil)), "only 0 bytes"},
		{"png, cut in the packed data", withChunk(encodePNG(t, m), "iCCP", iccpBody(good)[:30]), "can't be unpacked"},
		{"png, nothing after the name", withChunk(encodePNG(t, m), "iCCP", []byte("name\x00")), "doesn't say how"},
		{"png, an unknown way to pack", withChunk(encodePNG(t, m), "iCCP", append([]byte("name\x00\x07"), good...)),
			"doesn't say how"},
		{"tiff, a byte short", tiffICC(len(good) - 1), "says that it has 152 bytes and has 151"},
		{"tiff, into what follows", tiffICC(len(good) + 8), "says that it has 152 bytes and has 160"},
		{"tiff, past the file's end", tiffICC(1 << 20), "outside the file"},
		{"tiff, four gigabytes", tiffICC(1<<32 - 1), "outside the file"},
		{"tiff, of an unknown kind", rgbTIFF(le, m, field{tagICC, 99, len(good), good}), "unknown kind 99"},
		{"webp, past the file's end", webp(good[:140], 1<<31), "says that it has 152 bytes and has 140"},
		{"webp, four gigabytes", webp(good[:100], 1<<32-1), "only 100 bytes"},
		{"webp, only the first counts", withRIFF(fixture(t, "patches-lossless.webp"), riffChunk("ICCP", good[:60]),
			riffChunk("ICCP", good)), "only 60 bytes"},
	} {
		t.Run(c.name, func(t *testing.T) { requireDropped(t, c.data, c.want) })
	}
}
