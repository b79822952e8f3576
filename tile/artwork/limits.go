package artwork

import "fmt"

// Limits are how large a picture may be, so that a small file that claims to be a giant does not take all memory.
type Limits struct {
	Pixels int   // its width times its height
	Bytes  int64 // of memory, by estimate, for its file, decoding it and the smaller copies that are made of it
}

// What is read unless the caller asks for more.
const (
	DefaultMaxPixels = 500e6
	DefaultMaxBytes  = 1000e6
)

// Default is what is read unless the caller asks for more.
var Default = Limits{DefaultMaxPixels, DefaultMaxBytes}

// TooManyPixelsError is in the error of Open and ReadSize for a picture that has more pixels than the caller allowed.
type TooManyPixelsError struct {
	WidthPx, HeightPx int // as its file says
	MaxPixels         int // what was allowed
}

func (e *TooManyPixelsError) Error() string {
	return fmt.Sprintf("%d x %d pixels are more than the %d allowed\nhint: scale the picture down",
		e.WidthPx, e.HeightPx, e.MaxPixels)
}

// TooMuchMemoryError is in the error of Open and ReadSize for a picture that would take more memory than the caller
// allowed.
type TooMuchMemoryError struct {
	WidthPx, HeightPx int
	Bytes, MaxBytes   int64 // by estimate, and what was allowed
}

func (e *TooMuchMemoryError) Error() string {
	return fmt.Sprintf("%d x %d pixels, stored as they are here, take some %s of memory, more than the %s "+
		"allowed\nhint: scale the picture down, or save it anew as a baseline JPEG", e.WidthPx, e.HeightPx,
		InMB(e.Bytes), InMB(e.MaxBytes))
}

// InMB says so many bytes in megabytes, rounded up.
func InMB(bytes int64) string { return fmt.Sprintf("%d MB", (bytes+999_999)/1_000_000) }

// needs estimates the memory that a picture takes whose file has so many bytes: those, what decoding takes, and the
// smaller copies of three bytes a pixel that pictures on screen are made from (tile/texture), with a twelfth of its
// pixels; one of a quarter of them comes to that of a picture which is not large.
func (h *header) needs(fileBytes int64) int64 { return fileBytes + h.decoding + h.pixels()/4 }

// pixels is the picture's width times its height.
func (h *header) pixels() int64 { return int64(h.width) * int64(h.height) }
