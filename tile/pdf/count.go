package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// What CountPages reads of a file at most: its tail, and the drawn pages before the pictures, which take a few kB each.
const (
	tailBytes     = 1024
	mostBaseBytes = 256 << 20
)

// CountPages counts the pages of a file that Document.Stream wrote, of so many bytes, without its pictures. A
// file that was cut short, or that another program wrote, is an error.
func CountPages(file io.ReaderAt, sizeBytes int64) (int, error) {
	tail := make([]byte, min(tailBytes, sizeBytes))
	if _, err := file.ReadAt(tail, sizeBytes-int64(len(tail))); err != nil && !errors.Is(err, io.EOF) {
		return 0, err
	}
	if !bytes.HasSuffix(tail, []byte("%%EOF\n")) {
		return 0, errors.New("the file ends early")
	}
	_, trailer, found := cutLast(tail, "trailer\n")
	if !found {
		return 0, errors.New("the file has no trailer where dropsheet writes it")
	}
	update, err := parseDict(trailer)
	if err != nil {
		return 0, fmt.Errorf("trailer: %w", err)
	}
	objects, err := update.number("Size")
	if err != nil {
		return 0, err
	}
	// The base file goes on from its cross-reference table by that and a trailer.
	table, err := strconv.ParseInt(strings.TrimSpace(update.entries["Prev"]), 10, 64)
	if err != nil || table <= 0 || table > mostBaseBytes || objects < 1 || objects > mostBaseBytes/entryBytes {
		return 0, errors.New("the file was not written by dropsheet")
	}
	data := make([]byte, min(table+int64(objects)*entryBytes+tailBytes, sizeBytes))
	if _, err := file.ReadAt(data, 0); err != nil && !errors.Is(err, io.EOF) {
		return 0, err
	}
	if table >= int64(len(data)) {
		return 0, errors.New("the file ends early")
	}
	const mark = "%%EOF"
	end := bytes.Index(data[table:], []byte(mark))
	if end < 0 {
		return 0, errors.New("the drawn pages don't end")
	}
	base, err := readBase(data[:int(table)+end+len(mark)])
	if err != nil {
		return 0, err
	}
	pages, err := base.pages()
	return len(pages), err
}
