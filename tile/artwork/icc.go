package artwork

import (
	"errors"
	"fmt"
	"image"

	"dropsheet/tile/colour"
)

// maxICCBytes is the longest profile that is carried: what JPEG can hold (255 chunks). Real ones are far shorter.
const maxICCBytes = 16 << 20

var errICCTooLong = fmt.Errorf("it has more than %d bytes", maxICCBytes)

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

// isGrey says whether a compacted picture's samples are grey; others are RGB for a profile.
func isGrey(m image.Image) bool {
	_, grey := m.(*image.Gray)
	return grey
}

// OwnSpace is what the picture's profile makes of its levels; nil when they are sRGB's, for want of a profile or by one
// that says so. The error says why the profile can't be followed.
func (p *Picture) OwnSpace() (*colour.Space, error) {
	if p.ICC == nil {
		return nil, nil
	}
	return colour.OwnSpace(p.ICC, isGrey(p.Image))
}
