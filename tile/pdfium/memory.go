package pdfium

import "github.com/tetratelabs/wazero/experimental"

// allocate sets all of the memory aside at once, of which the system gives what is used. Memory that grows piece by
// piece is copied each time, and for a while there twice or thrice.
func (b Bounds) allocate(_, _ uint64) experimental.LinearMemory {
	return &memory{make([]byte, 0, b.MemoryMB<<20)}
}

// memory is that of a module.
type memory struct{ bytes []byte }

// Reallocate grows it in place; nil where there is no more, which the module learns.
func (m *memory) Reallocate(size uint64) []byte {
	if size > uint64(cap(m.bytes)) {
		return nil
	}
	m.bytes = m.bytes[:size]
	return m.bytes
}

// Free gives it back.
func (m *memory) Free() { m.bytes = nil }
