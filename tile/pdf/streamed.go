package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// What is read of a file that Document.Stream wrote, at most: its tail, and the drawn pages before the pictures, which
// take a few kB each.
const (
	tailBytes     = 1024
	mostBaseBytes = 256 << 20
)

// streamedFile is a file that Stream wrote: the drawn pages, and the update that follows them.
type streamedFile struct {
	file    io.ReaderAt
	base    *baseFile
	trailer dict          // the update's
	table   int64         // where the update's table begins
	offsets map[int]int64 // of the newest text of each object, by number
	bounds  []int64       // where objects and tables begin, in order: each ends where the next begins
}

// readEnds reads the drawn pages and the trailer of a file of so many bytes.
func readEnds(file io.ReaderAt, sizeBytes int64) (*streamedFile, error) {
	tail := make([]byte, min(tailBytes, sizeBytes))
	if _, err := file.ReadAt(tail, sizeBytes-int64(len(tail))); err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	if !bytes.HasSuffix(tail, []byte("%%EOF\n")) {
		return nil, errors.New("the file ends early")
	}
	_, trailer, found := cutLast(tail, "trailer\n")
	if !found {
		return nil, errors.New("the file has no trailer where dropsheet writes it")
	}
	f := &streamedFile{file: file}
	var err error
	if f.trailer, err = parseDict(trailer); err != nil {
		return nil, fmt.Errorf("trailer: %w", err)
	}
	objects, err := f.trailer.number("Size")
	if err != nil {
		return nil, err
	}
	_, start, _ := cutLast(tail, "startxref\n")
	text, _, _ := strings.Cut(string(start), "\n")
	if f.table, err = strconv.ParseInt(text, 10, 64); err != nil || f.table <= 0 || f.table >= sizeBytes {
		return nil, fmt.Errorf("startxref is %.20q, not an offset in the file", text)
	}
	// The base file goes on from its cross-reference table by that and a trailer.
	table, err := strconv.ParseInt(strings.TrimSpace(f.trailer.entries["Prev"]), 10, 64)
	if err != nil || table <= 0 || table > mostBaseBytes || objects < 1 || objects > mostBaseBytes/entryBytes {
		return nil, errors.New("the file was not written by dropsheet")
	}
	data := make([]byte, min(table+int64(objects)*entryBytes+tailBytes, sizeBytes))
	if _, err := file.ReadAt(data, 0); err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	if table >= int64(len(data)) {
		return nil, errors.New("the file ends early")
	}
	const mark = "%%EOF"
	end := bytes.Index(data[table:], []byte(mark))
	if end < 0 {
		return nil, errors.New("the drawn pages don't end")
	}
	f.base, err = readBase(data[:int(table)+end+len(mark)])
	return f, err
}

// openStreamed reads the cross-reference tables of the pages and of the update (ISO 32000-1, 7.5.4 and 7.5.6).
func openStreamed(file io.ReaderAt, sizeBytes int64) (*streamedFile, error) {
	f, err := readEnds(file, sizeBytes)
	if err != nil {
		return nil, err
	}
	if sizeBytes-f.table > mostBaseBytes {
		return nil, errors.New("the file was not written by dropsheet")
	}
	f.offsets, f.bounds = map[int]int64{}, []int64{int64(f.base.startxref), f.table}
	note := func(number int, offset int64) {
		if offset > 0 {
			f.offsets[number] = offset
			f.bounds = append(f.bounds, offset)
		}
	}
	for number, offset := range f.base.offsets {
		note(number, int64(offset))
	}
	table := make([]byte, sizeBytes-f.table)
	if _, err := file.ReadAt(table, f.table); err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	rest, found := bytes.CutPrefix(table, []byte("xref\n"))
	for found && !bytes.HasPrefix(rest, []byte("trailer\n")) {
		var line []byte
		line, rest, found = bytes.Cut(rest, []byte("\n"))
		var first, count int
		if _, err := fmt.Sscanf(string(line), "%d %d", &first, &count); err != nil || first < 0 || count < 1 ||
			count > len(rest)/entryBytes || first > mostBaseBytes {
			return nil, fmt.Errorf("the update's table has %.30q where it counts objects", line)
		}
		for i := range count {
			offset, err := entryOffset(rest[i*entryBytes:][:entryBytes])
			if err != nil {
				return nil, err
			}
			note(first+i, int64(offset))
		}
		rest = rest[count*entryBytes:]
	}
	if !found {
		return nil, errors.New("the update has no table")
	}
	slices.Sort(f.bounds)
	return f, nil
}

// raw is an object as it stands in the file, from its number to its end.
func (f *streamedFile) raw(number int) ([]byte, error) {
	offset, ok := f.offsets[number]
	if !ok {
		return nil, fmt.Errorf("object %d is not in the file", number)
	}
	next, _ := slices.BinarySearch(f.bounds, offset+1)
	if next == len(f.bounds) {
		return nil, fmt.Errorf("object %d lies past the end of the objects", number)
	}
	raw := make([]byte, f.bounds[next]-offset)
	if _, err := f.file.ReadAt(raw, offset); err != nil {
		return nil, err
	}
	if !bytes.HasPrefix(raw, fmt.Appendf(nil, "%d 0 obj\n", number)) || !bytes.HasSuffix(raw, []byte("endobj\n")) {
		return nil, fmt.Errorf("object %d is not at its offset", number)
	}
	return raw, nil
}

// dict is an object that is a dictionary, or the dictionary of one that is a stream.
func (f *streamedFile) dict(number int) (dict, error) {
	raw, err := f.raw(number)
	if err != nil {
		return dict{}, err
	}
	_, text, _ := bytes.Cut(raw, []byte("\n"))
	found, err := parseDict(text)
	if err != nil {
		return dict{}, fmt.Errorf("object %d: %w", number, err)
	}
	return found, nil
}

// follow is the number and the dictionary of the first object that an entry refers to.
func (f *streamedFile) follow(from dict, key string) (int, dict, error) {
	to, err := from.references(key)
	if err != nil {
		return 0, dict{}, err
	}
	found, err := f.dict(to[0])
	return to[0], found, err
}

// dictOf is the dictionary alone.
func (f *streamedFile) dictOf(from dict, key string) (dict, error) {
	_, found, err := f.follow(from, key)
	return found, err
}
