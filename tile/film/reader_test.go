package film

import (
	"encoding/binary"
	"math"
	"math/bits"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// names are the elements that WebM has and that a film of ours may hold, and masters those that hold others: RFC
// 8794, 11.2 (recalled from memory) and RFC 9559, 5 (read in the working group's ebml_matroska.xml).
var names = map[uint64]string{
	0x1A45DFA3: "EBML", 0x4286: "EBMLVersion", 0x42F7: "EBMLReadVersion", 0x42F2: "EBMLMaxIDLength",
	0x42F3: "EBMLMaxSizeLength", 0x4282: "DocType", 0x4287: "DocTypeVersion", 0x4285: "DocTypeReadVersion",
	0x18538067: "Segment", 0x114D9B74: "SeekHead", 0x4DBB: "Seek", 0x53AB: "SeekID", 0x53AC: "SeekPosition",
	0x1549A966: "Info", 0x2AD7B1: "TimestampScale", 0x4489: "Duration", 0x4D80: "MuxingApp", 0x5741: "WritingApp",
	0x1654AE6B: "Tracks", 0xAE: "TrackEntry", 0xD7: "TrackNumber", 0x73C5: "TrackUID", 0x83: "TrackType",
	0x9C: "FlagLacing", 0x23E383: "DefaultDuration", 0x86: "CodecID", 0xE0: "Video", 0xB0: "PixelWidth",
	0xBA: "PixelHeight", 0x55B0: "Colour", 0x55B1: "MatrixCoefficients", 0x55B9: "Range",
	0x55BA: "TransferCharacteristics", 0x55BB: "Primaries", 0x1F43B675: "Cluster", 0xE7: "Timestamp",
	0xA3: "SimpleBlock", 0x1C53BB6B: "Cues", 0xBB: "CuePoint", 0xB3: "CueTime", 0xB7: "CueTrackPositions",
	0xF7: "CueTrack", 0xF1: "CueClusterPosition",
}

var masters = map[string]bool{
	"EBML": true, "Segment": true, "SeekHead": true, "Seek": true, "Info": true, "Tracks": true, "TrackEntry": true,
	"Video": true, "Colour": true, "Cluster": true, "Cues": true, "CuePoint": true, "CueTrackPositions": true,
}

// A node is an element as it lies in the file.
type node struct {
	name      string
	at        int // where its identifier begins in the content of the element around it
	content   []byte
	contained []node
}

// variable reads a variable-size integer (RFC 8794, 4) and tells how long it is.
func variable(t *testing.T, data []byte) (value uint64, length int) {
	t.Helper()
	require.NotEmpty(t, data)
	length = bits.LeadingZeros8(data[0]) + 1
	require.LessOrEqual(t, length, min(8, len(data)))
	for _, b := range data[:length] {
		value = value<<8 | uint64(b)
	}
	return value, length
}

// elements reads elements until the data ends, which it must do with one's end.
func elements(t *testing.T, data []byte) []node {
	t.Helper()
	var all []node
	for at := 0; at < len(data); {
		id, idLength := variable(t, data[at:])
		require.Contains(t, names, id, "identifier %#x", id)
		size, sizeLength := variable(t, data[at+idLength:])
		size ^= 1 << (7 * sizeLength) // the marker
		begin := at + idLength + sizeLength
		require.LessOrEqual(t, size, uint64(len(data)-begin), "%s is larger than what it lies in", names[id])
		n := node{name: names[id], at: at, content: data[begin:][:size]}
		if masters[n.name] {
			n.contained = elements(t, n.content)
		}
		all = append(all, n)
		at = begin + int(size)
	}
	return all
}

// all returns the elements at a path such as "Info/Duration".
func (n node) all(path string) []node {
	first, rest, deeper := strings.Cut(path, "/")
	var found []node
	for _, c := range n.contained {
		switch {
		case c.name == first && deeper:
			found = append(found, c.all(rest)...)
		case c.name == first:
			found = append(found, c)
		}
	}
	return found
}

func (n node) one(t *testing.T, path string) node {
	t.Helper()
	found := n.all(path)
	require.Len(t, found, 1, "%s in %s", path, n.name)
	return found[0]
}

// number reads an unsigned integer (RFC 8794, 7.2).
func (n node) number(t *testing.T) uint64 {
	t.Helper()
	require.True(t, len(n.content) >= 1 && len(n.content) <= 8, "%s has %d bytes", n.name, len(n.content))
	return binary.BigEndian.Uint64(append(make([]byte, 8-len(n.content)), n.content...))
}

func (n node) float(t *testing.T) float64 {
	t.Helper()
	require.Len(t, n.content, 8, n.name)
	return math.Float64frombits(binary.BigEndian.Uint64(n.content))
}

// segment reads a film and returns its one segment.
func segment(t *testing.T, film []byte) node {
	t.Helper()
	roots := elements(t, film)
	require.Len(t, roots, 2)
	require.Equal(t, "EBML", roots[0].name)
	require.Equal(t, "Segment", roots[1].name)
	return roots[1]
}

// frames returns the key frames of a film, each from the block that a cue leads to.
func frames(t *testing.T, film []byte) [][]byte {
	t.Helper()
	s := segment(t, film)
	clusters := map[uint64]node{}
	for _, c := range s.all("Cluster") {
		clusters[uint64(c.at)] = c
	}
	var all [][]byte
	for _, cue := range s.all("Cues/CuePoint") {
		c, ok := clusters[cue.one(t, "CueTrackPositions/CueClusterPosition").number(t)]
		require.True(t, ok, "a cue leads to no cluster")
		require.Equal(t, cue.one(t, "CueTime").number(t), c.one(t, "Timestamp").number(t))
		// track 1, 0 ms after the cluster, key frame without lacing (RFC 9559, 10.2; recalled from memory)
		block := c.one(t, "SimpleBlock").content
		require.Equal(t, []byte{0x81, 0, 0, 0x80}, block[:4])
		all = append(all, block[4:])
	}
	require.Len(t, all, len(clusters))
	return all
}
