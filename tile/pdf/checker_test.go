package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// file is a PDF file as a strict reader sees it: it follows the chain of cross-reference sections (ISO
// 32000-1, 7.5.4 to 7.5.8, recalled from memory) by itself, sharing nothing with the code under test, and
// ends the test at the first thing out of order.
type file struct {
	t        *testing.T
	data     []byte
	objects  map[int]string // the newest text of each object, "<<" to "endobj"
	trailers []string       // newest first
}

var (
	startxrefAtEnd = regexp.MustCompile(`\nstartxref\n(\d+)\n%%EOF\n$`)
	subsectionLine = regexp.MustCompile(`^(\d+) (\d+)\n`)
	entryLine      = regexp.MustCompile(`^(\d{10}) (\d{5}) ([nf])(?: \n| \r|\r\n)`)
	trailerText    = regexp.MustCompile(`(?s)^trailer\n(<<.*?>>)\nstartxref\n`)
	objectStart    = regexp.MustCompile(`^(\d+) 0 obj\n`)
	streamLength   = regexp.MustCompile(`/Length (\d+)\b`)
)

func check(t *testing.T, data []byte) *file {
	t.Helper()
	f := &file{t: t, data: data, objects: map[int]string{}}
	end := startxrefAtEnd.FindSubmatch(data)
	require.NotNil(t, end, "the file must end with startxref, an offset and %%EOF")
	for at := toInt(string(end[1])); at != 0; {
		at = f.section(at)
	}
	return f
}

// section reads one cross-reference section and returns the offset of the one before it, or 0.
func (f *file) section(at int) (prev int) {
	t := f.t
	rest := f.data[at:]
	require.True(t, bytes.HasPrefix(rest, []byte("xref\n")), "no cross-reference section at %d", at)
	rest = rest[len("xref\n"):]
	seen, last := map[int]bool{}, -1
	for {
		head := subsectionLine.FindSubmatch(rest)
		if head == nil {
			break
		}
		rest = rest[len(head[0]):]
		first, count := toInt(string(head[1])), toInt(string(head[2]))
		require.Greater(t, first, last, "subsections must rise")
		for number := first; number < first+count; number++ {
			entry := entryLine.FindSubmatch(rest[:20])
			require.NotNil(t, entry, "entry of object %d: %q", number, rest[:20])
			rest = rest[20:]
			require.False(t, seen[number])
			seen[number], last = true, number
			if string(entry[3]) == "n" {
				f.object(number, toInt(string(entry[1])))
			}
		}
	}
	trailer := trailerText.FindSubmatch(rest)
	require.NotNil(t, trailer, "no trailer after the section at %d", at)
	f.trailers = append(f.trailers, string(trailer[1]))
	size := toInt(entry(t, string(trailer[1]), `/Size (\d+)`))
	require.Less(t, last, size, "/Size must be above every object number")
	if m := regexp.MustCompile(`/Prev (\d+)`).FindSubmatch(trailer[1]); m != nil {
		prev = toInt(string(m[1]))
		require.Less(t, prev, at)
	}
	return prev
}

// object checks that an object begins at its offset and ends properly, and keeps it unless a newer one is known.
func (f *file) object(number, offset int) {
	t := f.t
	start := objectStart.FindSubmatch(f.data[offset:min(offset+20, len(f.data))])
	require.NotNil(t, start, "object %d is not at %d", number, offset)
	require.Equal(t, strconv.Itoa(number), string(start[1]))
	body := f.data[offset+len(start[0]):]
	// Streams may hold anything, "endobj" too: go by their length.
	if i := bytes.Index(body, []byte(">>\nstream\n")); i >= 0 && i < bytes.Index(body, []byte("endobj")) {
		head := body[:i+len(">>\nstream\n")]
		length := streamLength.FindSubmatch(head)
		require.NotNil(t, length, "the stream of object %d has no length", number)
		end := len(head) + toInt(string(length[1]))
		require.True(t, bytes.HasPrefix(body[end:], []byte("\nendstream\nendobj\n")),
			"the stream of object %d has another length", number)
		body = body[:end+len("\nendstream\nendobj")]
	} else {
		body = body[:bytes.Index(body, []byte("endobj"))+len("endobj")]
	}
	if _, newer := f.objects[number]; !newer {
		f.objects[number] = string(body)
	}
}

// catalog returns the catalog's newest text.
func (f *file) catalog() string {
	return f.objects[toInt(entry(f.t, f.trailers[0], `/Root (\d+) 0 R`))]
}

// with returns the numbers of the objects that match a pattern.
func (f *file) with(pattern string) map[int]string {
	found := map[int]string{}
	for number, text := range f.objects {
		if regexp.MustCompile(pattern).MatchString(text) {
			found[number] = text
		}
	}
	return found
}

// unpacked returns the Flate stream of an object, unpacked.
func (f *file) unpacked(number int) []byte {
	_, packed, found := bytes.Cut([]byte(f.objects[number]), []byte(">>\nstream\n"))
	require.True(f.t, found)
	r, err := zlib.NewReader(bytes.NewReader(packed))
	require.NoError(f.t, err)
	data, err := io.ReadAll(r)
	require.NoError(f.t, err)
	return data
}

func entry(t *testing.T, text, pattern string) string {
	t.Helper()
	found := regexp.MustCompile(pattern).FindAllStringSubmatch(text, -1)
	require.Len(t, found, 1, "%s in %.200s", pattern, text)
	return found[0][1]
}

func toInt(digits string) int {
	n, err := strconv.Atoi(digits)
	if err != nil {
		panic(fmt.Sprintf("a pattern let %q through as a number", digits))
	}
	return n
}
