package artwork

import (
	"bytes"
	"context"
	"encoding/binary"
	"hash/crc32"
	"image"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// mutator spoils files in the ways that find most: flipped bits, false lengths, missing ends, parts of one
// file in another.
type mutator struct {
	r     *rand.Rand
	files [][]byte // to splice from
}

func (m mutator) spoil(data []byte) []byte {
	data = slices.Clone(data)
	for range 1 + m.r.IntN(3) {
		if len(data) < 8 {
			break
		}
		switch m.r.IntN(8) {
		case 0: // bits
			for range 1 + m.r.IntN(4) {
				data[m.r.IntN(len(data))] ^= 1 << m.r.IntN(8)
			}
		case 1: // bytes
			for range 1 + m.r.IntN(4) {
				data[m.r.IntN(len(data))] = byte(m.r.Uint32())
			}
		case 2: // the end
			data = data[:m.r.IntN(len(data))]
		case 3, 4: // what may be a length, a count or an offset
			m.number(data)
		case 5: // a part left out
			from, to := m.part(data)
			data = slices.Delete(data, from, to)
		case 6: // a part twice
			from, to := m.part(data)
			data = slices.Insert(data, m.r.IntN(len(data)), slices.Clone(data[from:to])...)
		case 7: // a part of another file
			other := m.files[m.r.IntN(len(m.files))]
			from, to := m.part(other)
			at := m.r.IntN(len(data))
			data = slices.Replace(data, at, min(at+m.r.IntN(to-from+1), len(data)), other[from:to]...)
		}
	}
	if m.r.IntN(2) == 0 {
		mendSums(data) // else the check sums would keep most of it from the decoder
	}
	return data
}

func (m mutator) part(data []byte) (from, to int) {
	from = m.r.IntN(len(data))
	return from, from + m.r.IntN(min(len(data)-from, 200)+1)
}

// number writes a number of two or four bytes, of either order, that a careless reader trips over. Half of
// them go near the start, where headers are.
func (m mutator) number(data []byte) {
	at := m.r.IntN(len(data) - 4)
	if m.r.IntN(2) == 0 {
		at = m.r.IntN(min(64, len(data)-4))
	}
	order := []binary.ByteOrder{binary.LittleEndian, binary.BigEndian}[m.r.IntN(2)]
	v := []uint32{0, 1, 0x7f, 0xff, 0x3fff, 0x7fff, 0xffff, 0x10000, 1 << 24, 1<<31 - 1, 1 << 31, 1<<32 - 1,
		uint32(len(data)), m.r.Uint32()}[m.r.IntN(14)]
	if m.r.IntN(2) == 0 {
		order.PutUint16(data[at:], uint16(v))
		return
	}
	order.PutUint32(data[at:], v)
}

// mendSums puts the check sums of a PNG's chunks right, as far as its lengths lead.
func mendSums(data []byte) {
	if !bytes.HasPrefix(data, []byte("\x89PNG")) {
		return
	}
	for at := 8; at+12 <= len(data); {
		n := int(binary.BigEndian.Uint32(data[at:]))
		if n > len(data)-at-12 {
			return
		}
		binary.BigEndian.PutUint32(data[at+8+n:], crc32.ChecksumIEEE(data[at+4:at+8+n]))
		at += 12 + n
	}
}

// sortedSeeds are the seeds by name, so that every run spoils them alike.
func sortedSeeds(t testing.TB) (names []string, files [][]byte) {
	all := seeds(t)
	all["jpeg inks"] = goCMYK(t)
	names = slices.Sorted(maps.Keys(all))
	for _, name := range names {
		files = append(files, all[name])
	}
	require.NotEmpty(t, files)
	return names, files
}

// hangGuard is far longer than any small file takes on a busy machine; only what would never end runs into it.
const hangGuard = 2 * time.Minute

// opened opens a file and tells how many bytes it took from the heap. It fails the test when that doesn't end.
func opened(t *testing.T, path, what string) (p *Picture, took int, err error) {
	ctx, cancel := context.WithTimeout(t.Context(), hangGuard)
	defer cancel()
	done := make(chan struct{})
	go func() {
		defer close(done)
		took = allocated(func() { p, err = Open(path, Default) })
	}()
	select {
	case <-done:
		return p, took, err
	case <-ctx.Done():
		require.FailNow(t, "it hangs", what)
		return nil, 0, nil
	}
}

// TestMutated spoils 10,000 small files of all formats: each gives an error or a sound picture. What is
// bounded is all that is ever taken from the heap for one file, freed or not, so its peak is no higher. Files
// of a few kilobytes must do with far less than the gigabyte that no file may pass.
func TestMutated(t *testing.T) {
	const seed, tries, mostBytes = 7, 10_000, 100_000_000
	t.Logf("seed %d", seed)
	names, files := sortedSeeds(t)
	m := mutator{rand.New(rand.NewPCG(seed, seed)), files}
	path := filepath.Join(t.TempDir(), "picture")
	most, hungriest, pictures := 0, "", 0
	formats := map[string]int{}
	for i := range tries {
		name := names[i%len(names)]
		data := m.spoil(files[i%len(files)])
		require.NoError(t, os.WriteFile(path, data, 0o600))
		p, took, err := opened(t, path, name)
		require.False(t, isPanic(err), "try %d, %s: %v", i, name, err)
		if took > most {
			most, hungriest = took, name
		}
		require.Less(t, took, mostBytes, "try %d, %s: %v", i, name, err)
		if err != nil {
			continue
		}
		pictures++
		formats[p.Format]++
		requireSound(t, p, DefaultMaxPixels)
		w, h := p.Size()
		rw, rh, err := ReadSize(path, Default)
		require.NoError(t, err, "try %d, %s", i, name)
		require.Equal(t, image.Pt(w, h), image.Pt(rw, rh))
	}
	t.Logf("%d files, %d pictures %v; most memory: %.1f MB for a %s", tries, pictures, formats, float64(most)/1e6,
		hungriest)
	require.Len(t, formats, 6, "each format still gives pictures")
	require.Greater(t, tries-pictures, tries/4, "and a good share is refused")
}
