package artwork

import (
	"encoding/binary"
	"errors"
	"fmt"
	"image"
)

// maxICCBytes is the longest profile that is carried: what JPEG can hold (255 chunks). Real ones are far shorter.
const maxICCBytes = 16 << 20

var errICCTooLong = fmt.Errorf("it has more than %d bytes", maxICCBytes)

const iccHeaderBytes, iccEntryBytes = 128, 12 // ICC.1:2010, 7.2 and 7.3: of the header, of each entry of the tag table

const iccSignature = "ICC_PROFILE\x00" // ICC.1:2010, Annex B; clauses in this file are recalled from memory

// iccChunks gathers the chunks of a profile that a JPEG file holds, in whatever order they come.
type iccChunks struct {
	chunks map[byte][]byte // by number, from 1
	count  byte
	err    error
}

// add takes the body of an APP2 marker after its signature: the chunk's number, how many there are, its bytes
// (ICC.1:2010, Annex B).
func (c *iccChunks) add(body []byte) {
	if c.chunks == nil {
		c.chunks = map[byte][]byte{}
	}
	switch {
	case c.err != nil:
	case len(body) < 2:
		c.err = errors.New("a chunk of it is cut short")
	case len(c.chunks) > 0 && body[1] != c.count:
		c.err = fmt.Errorf("its chunks disagree how many they are (%d or %d)", c.count, body[1])
	case body[0] < 1 || body[0] > body[1]:
		c.err = fmt.Errorf("a chunk of it is number %d of %d", body[0], body[1])
	case c.chunks[body[0]] != nil:
		c.err = fmt.Errorf("chunk %d of it is there twice", body[0])
	default:
		c.count = body[1]
		c.chunks[body[0]] = append([]byte{}, body[2:]...)
	}
}

// profile returns the chunks joined; nil when there are none.
func (c *iccChunks) profile() ([]byte, error) {
	if len(c.chunks) == 0 {
		return nil, c.err
	}
	joined := []byte{} // a profile of no bytes is one all the same, and told of
	for i := 1; i <= int(c.count) && c.err == nil; i++ {
		chunk, ok := c.chunks[byte(i)]
		if !ok {
			return nil, fmt.Errorf("chunk %d of %d is missing", i, c.count)
		}
		joined = append(joined, chunk...)
	}
	return joined, c.err
}

// iccSpace is what a profile calls the colour space of a compacted picture's samples (7.2.6).
func iccSpace(m image.Image) string {
	if _, grey := m.(*image.Gray); grey {
		return "GRAY"
	}
	return "RGB "
}

// checkICC says why a profile doesn't suit a picture whose samples are in the colour space "RGB " or "GRAY",
// nil if it does. A viewer trusts the profile in a PDF, so what can't be trusted is not passed on. Clauses
// are those of ICC.1:2010.
func checkICC(profile []byte, space string) error {
	if len(profile) < iccHeaderBytes+4 {
		return fmt.Errorf("it has only %d bytes", len(profile))
	}
	if says := binary.BigEndian.Uint32(profile); int64(says) != int64(len(profile)) { // 7.2.2
		return fmt.Errorf("it says that it has %d bytes and has %d", says, len(profile))
	}
	if string(profile[36:40]) != "acsp" { // 7.2.9
		return errors.New("it has no profile signature")
	}
	// 7.2.5; these four describe colours for a picture (ISO 32000-1, 8.6.5.5)
	switch class := string(profile[12:16]); class {
	case "scnr", "mntr", "prtr", "spac":
	default:
		return fmt.Errorf("its class %q is not one that describes a picture", class)
	}
	if got := string(profile[16:20]); got != space { // 7.2.6
		return fmt.Errorf("it is for %q and the picture is %q", got, space)
	}
	tags, size := int64(binary.BigEndian.Uint32(profile[iccHeaderBytes:])), int64(len(profile)) // 7.3
	if tags > (size-iccHeaderBytes-4)/iccEntryBytes {
		return fmt.Errorf("it says that it has %d tags, more than fit in it", tags)
	}
	for i := range tags {
		if name, at, n := iccEntry(profile, i); at > size || n > size-at {
			return fmt.Errorf("its tag %q lies outside it", name)
		}
	}
	return nil
}

// iccEntry reads entry i of a profile's tag table: the tag's name, where its data begin and how long they are (7.3).
func iccEntry(profile []byte, i int64) (name string, at, n int64) {
	entry := profile[iccHeaderBytes+4+i*iccEntryBytes:]
	return string(entry[:4]), int64(binary.BigEndian.Uint32(entry[4:])), int64(binary.BigEndian.Uint32(entry[8:]))
}
