package artwork

import (
	"bytes"
	"io"
)

// source is a file's bytes, on disk or in memory, and how many there are.
type source struct {
	io.ReaderAt
	size int64
}

func inMemory(data []byte) source { return source{bytes.NewReader(data), int64(len(data))} }

// part returns the n bytes from off as a source of their own, fewer where the file ends first.
func (s source) part(off, n int64) source {
	off = min(max(off, 0), s.size)
	n = min(max(n, 0), s.size-off)
	return source{io.NewSectionReader(s, off, n), n}
}

// bytes returns a copy of the n bytes from off. Nothing is allocated for bytes that the file doesn't have.
func (s source) bytes(off, n int64) ([]byte, error) {
	if off < 0 || n < 0 || off > s.size || n > s.size-off {
		return nil, io.ErrUnexpectedEOF
	}
	b := make([]byte, n)
	if got, err := s.ReadAt(b, off); int64(got) < n {
		return nil, err
	}
	return b, nil
}

// reader reads the whole source from its start.
func (s source) reader() io.Reader { return io.NewSectionReader(s, 0, s.size) }
