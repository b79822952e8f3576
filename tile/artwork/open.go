package artwork

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	"io"
	"io/fs"
	"os"

	"dropsheet/flip"
	"dropsheet/tile/readfile"
)

// Picture is a decoded picture file.
type Picture struct {
	// Image is one of *image.Gray, *image.YCbCr or an opaque *image.RGBA. Its bounds start at the origin
	// unless it was cropped.
	Image image.Image
	// Upright lays the stored pixels so that the picture stands upright.
	Upright flip.Turn
	// ICC is the file's own colour profile when it suits Image (GRAY for *image.Gray, RGB for the others), else nil.
	ICC []byte
	// SHA256 is the hash of the whole file, of the very bytes that Image was decoded from.
	SHA256 [32]byte
	// Format is one of jpeg, png, gif, tiff, webp, bmp and pdf.
	Format string
	// Warnings say what was changed or left out, each in a line of its own.
	Warnings []string
	// Transparent tells that parts of it were, which Image shows on what the Reading says.
	Transparent bool
	// InksByProfile tells that it was of inks, which its own profile turned into sRGB.
	InksByProfile bool
	// Dithered tells that its samples were of 16 bits, and were dithered to 8.
	Dithered bool
}

// Reading is how a picture's file is made pixels of.
type Reading struct {
	Limits
	// Under is what transparent parts are laid on, opaque, in the picture's own colours. The zero value is white.
	Under color.RGBA
	// PlainInks leaves the profile of a picture of inks out.
	PlainInks bool
	// Rounded has samples of 16 bits rounded to 8, not dithered.
	Rounded bool
}

// Size returns the upright picture's size in pixels.
func (p *Picture) Size() (widthPx, heightPx int) {
	b := p.Image.Bounds()
	return p.Upright.Size(b.Dx(), b.Dy())
}

// Open reads and decodes a picture within limits: JPEG, PNG, TIFF (first picture), BMP, GIF
// (first frame) or WebP. The file is read once, so that the hash and the pixels belong together. Errors quote
// the path as it was given.
func Open(path string, limits Limits) (*Picture, error) {
	return OpenCopy(path, path, Reading{Limits: limits})
}

// OpenCopy is Open of a file that was copied from another, whose path errors quote, and read in a way of one's own.
func OpenCopy(path, original string, r Reading) (*Picture, error) {
	p, err := guarded(func() (*Picture, error) {
		f, src, err := openFile(path)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		// A look at the header on disk refuses a giant or a stranger before its bytes are taken into memory.
		if _, err := readHeader(src, r.Limits); err != nil {
			return nil, err
		}
		data, err := readAll(f, src.size, r.Limits)
		if err != nil {
			return nil, err
		}
		return decode(data, r)
	})
	if err != nil {
		return nil, fmt.Errorf("picture %q: %w", original, err)
	}
	return p, nil
}

// ReadSize returns the upright size of the picture that Open would return, from the file's header alone.
// It takes no memory to speak of and refuses what Open refuses, but for damage past the header.
func ReadSize(path string, limits Limits) (widthPx, heightPx int, err error) {
	h, err := guarded(func() (*header, error) {
		f, src, err := openFile(path)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		return readHeader(src, limits)
	})
	if err != nil {
		return 0, 0, fmt.Errorf("picture %q: %w", path, err)
	}
	widthPx, heightPx = h.turn.Size(h.width, h.height)
	return widthPx, heightPx, nil
}

// OpenFile opens a picture's file to be read as it is. Errors are those of Open.
func OpenFile(path string) (io.ReadCloser, error) {
	f, _, err := openFile(path)
	if err != nil {
		return nil, fmt.Errorf("picture %q: %w", path, err)
	}
	return f, nil
}

// openFile opens a regular file.
func openFile(path string) (*os.File, source, error) {
	f, info, err := readfile.Open(path)
	var not *readfile.NotRegularError
	switch {
	case errors.As(err, &not) && not.Mode.IsDir():
		return nil, source{}, errors.New("this is a folder\nhint: name the picture file in it")
	case errors.As(err, &not):
		return nil, source{}, errors.New("this is a device or a pipe\nhint: save the picture as a file first")
	case path == "-" && errors.Is(err, fs.ErrNotExist):
		return nil, source{}, errors.New("what is piped in is not read here\nhint: save it as a file first")
	case err != nil:
		return nil, source{}, pathError(err)
	}
	return f, source{f, info.Size()}, nil
}

// pathError drops the system's own mention of the path, since every error of this package opens with it.
func pathError(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	return fmt.Errorf("%w\nhint: check the name, and that the file may be read", err)
}

// readAll reads a file that is size bytes long, once and whole.
func readAll(r io.Reader, size int64, limits Limits) ([]byte, error) {
	if err := refuseLong(size, limits); err != nil {
		return nil, err
	}
	data := make([]byte, size)
	if _, err := io.ReadFull(r, data); err != nil {
		if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
			return nil, errors.New("the file grew shorter while it was read\nhint: try again when nothing writes to it")
		}
		return nil, pathError(err)
	}
	if n, _ := r.Read(make([]byte, 1)); n > 0 {
		return nil, errors.New("the file grew longer while it was read\nhint: try again when nothing writes to it")
	}
	return data, nil
}
