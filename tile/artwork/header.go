package artwork

import (
	"bufio"
	"errors"
	"fmt"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"

	"golang.org/x/image/bmp"
	"golang.org/x/image/webp"

	"dropsheet/flip"
)

// format is a kind of picture file.
type format struct {
	name   string
	magic  string             // the first bytes of every such file; ? stands for any byte
	refuse func(source) error // says of a kind of such files that it is not read, or nil for those without such kinds
	// config reads the size that decode will use, so that no second reading of the header can disagree with it.
	config func(io.Reader) (image.Config, error)
	// inspect adds to the header what config leaves out, and refuses what decode can't be trusted with.
	inspect func(source, *header) error
	// under is what transparent parts will be laid on.
	decode func(data []byte, under ground) (image.Image, error)
}

var formats = []format{
	{"jpeg", "\xff\xd8\xff", refuseJPEG, start(jpeg.DecodeConfig), inspectJPEG, apart(decodeJPEG)},
	{"png", "\x89PNG\r\n\x1a\n", nil, start(png.DecodeConfig), inspectPNG, decodePNG},
	{"tiff", "II\x2a\x00", refuseTIFF, tiffConfig, inspectTIFF, decodeTIFF},
	{"tiff", "MM\x00\x2a", refuseTIFF, tiffConfig, inspectTIFF, decodeTIFF},
	{"gif", "GIF87a", nil, start(gif.DecodeConfig), inspectGIF, apart(whole(gif.Decode))},
	{"gif", "GIF89a", nil, start(gif.DecodeConfig), inspectGIF, apart(whole(gif.Decode))},
	{"webp", "RIFF????WEBP", nil, start(webp.DecodeConfig), inspectWebP, apart(decodeWebP)},
	{"bmp", "BM????\x00\x00\x00\x00", nil, start(bmp.DecodeConfig), inspectBMP, apart(whole(bmp.Decode))},
}

// Bounds on the walk to a picture's size and to what goes with it, so that a file of empty blocks is no work
// without end.
const (
	startBytes = 64 << 20 // the size comes before; profiles, thumbnails and depth maps take less
	mostBlocks = 1 << 20  // PNG writers make chunks of 8 kB, which is 8 GB
)

var errEndlessBlocks = fmt.Errorf("it has more than %d blocks\nhint: open it in a picture editor and save it anew",
	mostBlocks)

// start keeps a reader of the size within a file's start, and from asking the disk for a few bytes at a time.
func start(config func(io.Reader) (image.Config, error)) func(io.Reader) (image.Config, error) {
	return func(r io.Reader) (image.Config, error) { return config(bufio.NewReader(io.LimitReader(r, startBytes))) }
}

func whole(decode func(io.Reader) (image.Image, error)) func([]byte) (image.Image, error) {
	return func(data []byte) (image.Image, error) { return decode(inMemory(data).reader()) }
}

// apart is for decoders that leave it to others to lay transparent parts on something.
func apart(decode func([]byte) (image.Image, error)) func([]byte, ground) (image.Image, error) {
	return func(data []byte, _ ground) (image.Image, error) { return decode(data) }
}

// header is what a file says of its picture before any pixel is decoded.
type header struct {
	format        format
	width, height int // stored pixels
	turn          flip.Turn
	icc           []byte // as found, not yet checked
	grey          bool   // stored as grey, whatever the decoder makes of it
	leastBytes    int64  // no whole file of such a picture is shorter
	decoding      int64  // bytes that decoding takes, beside the file, at its peak
	warnings      []string
}

// takeProfile copies the file's colour profile.
func (h *header) takeProfile(profile source) {
	if profile.size > maxICCBytes {
		h.dropProfile(errICCTooLong)
		return
	}
	var err error
	if h.icc, err = profile.bytes(0, profile.size); err != nil {
		h.dropProfile(err)
	}
}

// dropProfile notes that the file's colour profile is not used, and why.
func (h *header) dropProfile(err error) {
	h.icc = nil
	h.warnings = append(h.warnings, fmt.Sprintf("colour profile dropped: %v; the colours are taken as srgb", err))
}

// readHeader reads a file's header and refuses a picture that is too large, impossible or of no known format.
func readHeader(src source, limits Limits) (*header, error) {
	if src.size == 0 {
		return nil, errors.New("the file is empty\nhint: copy it again from where it came")
	}
	if err := refuseLong(src.size, limits); err != nil {
		return nil, err
	}
	h := &header{}
	start, err := src.bytes(0, min(src.size, 16))
	if err != nil {
		return nil, pathError(err)
	}
	for _, f := range formats {
		if matches(start, f.magic) {
			h.format = f
		}
	}
	if h.format.name == "" {
		return nil, strange(src)
	}
	if h.format.refuse != nil {
		if err := h.format.refuse(src); err != nil {
			return nil, err
		}
	}
	c, err := h.format.config(src.reader())
	if err != nil {
		return nil, undecodable(err)
	}
	h.width, h.height = c.Width, c.Height
	// Compared by division: the product may not fit.
	if h.height > 0 && h.width > limits.Pixels/h.height {
		return nil, &TooManyPixelsError{h.width, h.height, limits.Pixels}
	}
	if err := h.format.inspect(src, h); err != nil {
		return nil, err
	}
	if h.width < 1 || h.height < 1 {
		return nil, fmt.Errorf("the picture is %d x %d pixels: there is nothing to print\n"+
			"hint: name another", h.width, h.height)
	}
	if src.size < h.leastBytes {
		return nil, fmt.Errorf("the file is cut short, or its header is false: %d x %d pixels need %d bytes or more and "+
			"it has %d\nhint: copy it again from where it came",
			h.width, h.height, h.leastBytes, src.size)
	}
	if px := int64(h.width) * int64(h.height); px > evenPx && src.size < px/evenRatio {
		return nil, fmt.Errorf("%d x %d pixels in %d bytes are one even colour, or its header is false\n"+
			"hint: scale it down, "+
			"or copy it again from where it came",
			h.width, h.height, src.size)
	}
	if needs := h.needs(src.size); needs > limits.Bytes {
		return nil, &TooMuchMemoryError{h.width, h.height, needs, limits.Bytes}
	}
	return h, nil
}

// An even colour of any size can be stored in a few bytes (WebP, fax), which its true length therefore
// doesn't bound. Beyond evenPx pixels a byte is asked for every evenRatio of them, so that a few bytes can't
// ask for a gigabyte.
const (
	evenPx    = 32 << 20
	evenRatio = 4096
)

// refuseLong refuses a file that is longer than a picture of that many pixels can need.
func refuseLong(size int64, limits Limits) error {
	// Sixteen bytes a pixel is twice what the plainest file takes (16-bit RGBA); the rest is for profiles and thumbnails.
	const pixelBytes, otherBytes = 16, 64 << 20
	if (size-otherBytes)/pixelBytes > int64(limits.Pixels) { // by division: the product may not fit
		return fmt.Errorf("the file has %d bytes, more than %d pixels can need\nhint: save the picture alone, without layers",
			size, limits.Pixels)
	}
	return nil
}

func matches(start []byte, magic string) bool {
	if len(start) < len(magic) {
		return false
	}
	for i := range len(magic) {
		if magic[i] != '?' && magic[i] != start[i] {
			return false
		}
	}
	return true
}

// undecodable says why a decoder refused a file.
func undecodable(err error) error {
	if errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) {
		return fmt.Errorf("the file is cut short (%w)\nhint: copy it again from where it came", err)
	}
	return fmt.Errorf("it can't be decoded (%w)\n"+
		"hint: open it in a picture editor and save it anew as an RGB JPEG or PNG", err)
}
