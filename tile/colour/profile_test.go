package colour

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour/icctest"
)

// A good profile broken in one way at a time, by the layout of ICC.1:2010, 7.2 and 7.3.
func TestCheckProfileRefuses(t *testing.T) {
	good := icctest.Grey(icctest.Gamma(563))
	require.NoError(t, CheckProfile(good, true))
	size, tags := len(good), int(binary.BigEndian.Uint32(good[128:]))
	require.Equal(t, 4, tags, "description, copyright, white and curve")
	put := func(at int, v int) func([]byte) []byte {
		return func(p []byte) []byte {
			binary.BigEndian.PutUint32(p[at:], uint32(v))
			return p
		}
	}
	write := func(at int, text string) func([]byte) []byte {
		return func(p []byte) []byte {
			copy(p[at:], text)
			return p
		}
	}
	for _, c := range []struct {
		name  string
		spoil func([]byte) []byte
		want  string
	}{
		{"nothing", func([]byte) []byte { return nil }, "it has only 0 bytes"},
		{"cut in the header", func(p []byte) []byte { return p[:100] }, "it has only 100 bytes"},
		{"only a header", func(p []byte) []byte { return p[:128] }, "it has only 128 bytes"},
		{"cut off", func(p []byte) []byte { return p[:size-1] }, "it says that it has 332 bytes and has 331"},
		{"padded", func(p []byte) []byte { return append(p, 0) }, "it says that it has 332 bytes and has 333"},
		{"says it is longer", put(0, size+1), "it says that it has 333 bytes and has 332"},
		{"says it is shorter", put(0, size-1), "it says that it has 331 bytes and has 332"},
		{"says it is giant", put(0, 1<<32-1), "it says that it has 4294967295 bytes"},
		{"no signature", put(36, 0), "no profile signature"},
		{"version 0", write(8, "\x00"), "version 0, and only 2 and 4 can go into a PDF"},
		{"version 5", write(8, "\x05"), "version 5, and only 2 and 4 can go into a PDF"},
		{"device link", write(12, "link"), `its class "link"`},
		{"for Lab", write(16, "Lab "), `it is for "Lab " and the picture is "GRAY"`},
		{"for inks", write(16, "CMYK"), `it is for "CMYK" and the picture is "GRAY"`},
		{"for red, green and blue", write(16, "RGB "), `it is for "RGB " and the picture is "GRAY"`},
		{"connects to RGB", write(20, "RGB "), `it connects to "RGB ", neither XYZ nor Lab`},
		{"no tags", put(128, 0), "it has no tags"},
		{"four billion tags", put(128, 1<<32-1), "4294967295 tags, more than fit in it"},
		{"a tag more than fits", put(128, (size-132)/12+1), "17 tags, more than fit in it"},
		{"tag begins past the end", put(136, size+1), `its tag "desc" lies outside it`},
		{"tag ends past the end", put(140, size), `its tag "desc" lies outside it`},
		{"tag wraps round", put(140, 1<<32-1), `its tag "desc" lies outside it`},
		{"tag begins nowhere", put(136, 1<<32-1), `its tag "desc" lies outside it`},
		{"tag in the header", put(136, 4), `its tag "desc" lies over its header or its table of tags`},
		{"tag on the table's last byte", put(136, 132+12*tags-1), `its tag "desc" lies over`},
		{"the last tag's too", put(132+12*(tags-1)+4, 0), `its tag "kTRC" lies over`},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.ErrorContains(t, CheckProfile(c.spoil(slices.Clone(good)), true), c.want)
		})
	}
}

// What a profile of versions 2 and 4 may be, every class and either space that it connects to.
func TestCheckProfileTakes(t *testing.T) {
	for _, version := range []byte{2, 4} {
		for _, class := range []string{"scnr", "mntr", "prtr", "spac"} {
			for _, connects := range []string{"XYZ ", "Lab "} {
				profile := icctest.Profile("RGB ", version)
				copy(profile[12:], class)
				copy(profile[20:], connects)
				require.NoError(t, CheckProfile(profile, false), "version %d, class %s, to %s", version, class, connects)
				require.ErrorContains(t, CheckProfile(profile, true), `it is for "RGB " and the picture is "GRAY"`)
			}
		}
	}
}

// FuzzCheckProfile: whatever the bytes, a profile that passes has all its tags in it.
func FuzzCheckProfile(f *testing.F) {
	f.Add(SRGBProfile(false), false)
	f.Add(SRGBProfile(true), true)
	f.Add(SRGBProfile(false)[:140], false)
	f.Fuzz(func(t *testing.T, profile []byte, grey bool) {
		if CheckProfile(profile, grey) != nil {
			return
		}
		require.Equal(t, uint32(len(profile)), binary.BigEndian.Uint32(profile))
		for i := range binary.BigEndian.Uint32(profile[128:]) {
			at, n := binary.BigEndian.Uint32(profile[136+12*i:]), binary.BigEndian.Uint32(profile[140+12*i:])
			require.LessOrEqual(t, uint64(at)+uint64(n), uint64(len(profile)))
		}
	})
}
