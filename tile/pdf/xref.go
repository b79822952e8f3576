package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// baseFile is a finished file with one classical cross-reference table (ISO 32000-1, 7.5.4, recalled from
// memory), as gofpdf writes it. Objects are found through that table alone, so that no drawing or text can
// pass for one.
type baseFile struct {
	data      []byte
	startxref int   // where the table begins
	offsets   []int // by object number; 0 where the number is free
	trailer   dict
}

// entryBytes is the length of one line of a cross-reference table.
const entryBytes = 20

// readBase reads the cross-reference table and the trailer at the end of a file.
func readBase(data []byte) (*baseFile, error) {
	if !bytes.HasPrefix(data, []byte("%PDF-1.")) {
		return nil, errors.New("the file doesn't begin with its header: something was drawn before the first page")
	}
	_, tail, found := cutLast(data, "startxref")
	if !found {
		return nil, errors.New("the file has no startxref")
	}
	start, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(string(tail)), "%%EOF")))
	if err != nil || start < 0 || start >= len(data) {
		return nil, fmt.Errorf("startxref is %.20q, not an offset in the file", tail)
	}
	b := &baseFile{data: data, startxref: start}
	table, found := bytes.CutPrefix(data[start:], []byte("xref\n0 "))
	if !found {
		return nil, errors.New("startxref doesn't point at a cross-reference table that begins with object 0")
	}
	countText, table, _ := bytes.Cut(table, []byte("\n"))
	count, err := strconv.Atoi(string(countText))
	if err != nil || count < 1 || count > len(table)/entryBytes {
		return nil, fmt.Errorf("the cross-reference table has %.20q entries", countText)
	}
	b.offsets = make([]int, count)
	for number := range b.offsets {
		if b.offsets[number], err = entryOffset(table[number*entryBytes:][:entryBytes]); err != nil {
			return nil, fmt.Errorf("cross-reference entry %d: %w", number, err)
		}
	}
	trailer, found := bytes.CutPrefix(table[count*entryBytes:], []byte("trailer"))
	if !found {
		return nil, errors.New("the cross-reference table isn't followed by a trailer")
	}
	if b.trailer, err = parseDict(trailer); err != nil {
		return nil, fmt.Errorf("trailer: %w", err)
	}
	if _, encrypted := b.trailer.entries["Encrypt"]; encrypted {
		return nil, errors.New("the document is encrypted, so that pictures can't be added\nhint: leave protection off")
	}
	return b, nil
}

// entryOffset reads one line of the table; it returns 0 for a free entry.
func entryOffset(line []byte) (int, error) {
	offset, err := strconv.Atoi(string(line[:10]))
	switch rest := string(line[10:18]); {
	case err == nil && rest == " 00000 n" && offset > 0:
		return offset, nil
	case err == nil && rest == " 65535 f":
		return 0, nil
	}
	return 0, fmt.Errorf("%q is not an entry", line)
}

// object returns what follows "number 0 obj" in the file.
func (b *baseFile) object(number int) ([]byte, error) {
	if number <= 0 || number >= len(b.offsets) || b.offsets[number] == 0 || b.offsets[number] >= len(b.data) {
		return nil, fmt.Errorf("object %d is not in the file", number)
	}
	body, found := bytes.CutPrefix(b.data[b.offsets[number]:], fmt.Appendf(nil, "%d 0 obj\n", number))
	if !found {
		return nil, fmt.Errorf("object %d is not at its offset", number)
	}
	return body, nil
}

// dict returns an object that is a dictionary, or the dictionary of one that is a stream.
func (b *baseFile) dict(number int) (dict, error) {
	body, err := b.object(number)
	if err != nil {
		return dict{}, err
	}
	found, err := parseDict(body)
	if err != nil {
		return dict{}, fmt.Errorf("object %d: %w", number, err)
	}
	return found, nil
}

// catalog returns the object number and dictionary of the catalog.
func (b *baseFile) catalog() (int, dict, error) {
	root, err := b.trailer.references("Root")
	if err != nil {
		return 0, dict{}, fmt.Errorf("trailer: %w", err)
	}
	found, err := b.dict(root[0])
	return root[0], found, err
}

// pages returns the object numbers of the pages in order. gofpdf keeps them all in one node of the page tree.
func (b *baseFile) pages() ([]int, error) {
	_, catalog, err := b.catalog()
	if err != nil {
		return nil, err
	}
	tree, err := catalog.references("Pages")
	if err != nil {
		return nil, fmt.Errorf("catalog: %w", err)
	}
	node, err := b.dict(tree[0])
	if err != nil {
		return nil, err
	}
	return node.references("Kids")
}

// stubs returns the object number of each stub by its width in pixels; number 0 is unused.
// Any other picture in the file is an error, since it could be taken for a stub.
func (b *baseFile) stubs(count int) ([]int, error) {
	byWidth := make([]int, count+1)
	found := 0
	for number := 1; number < len(b.offsets); number++ {
		if b.offsets[number] == 0 {
			continue
		}
		object, err := b.dict(number)
		if errors.Is(err, errNotDict) {
			continue // an array, such as the widths of a font
		}
		if err != nil {
			return nil, err
		}
		if object.entries["Subtype"] != "/Image" {
			continue
		}
		width, err := object.number("Width")
		if err != nil {
			return nil, fmt.Errorf("object %d: %w", number, err)
		}
		if width < 1 || width > count || byWidth[width] != 0 {
			return nil, fmt.Errorf("a picture of %d x %s pixels was drawn on the canvas\n"+
				"hint: place pictures through the document",
				width, object.entries["Height"])
		}
		byWidth[width] = number
		found++
	}
	if found != count {
		return nil, fmt.Errorf("%d pictures were placed but %d are in the file", count, found)
	}
	return byWidth, nil
}

func cutLast(data []byte, sep string) (before, after []byte, found bool) {
	i := bytes.LastIndex(data, []byte(sep))
	if i < 0 {
		return data, nil, false
	}
	return data[:i], data[i+len(sep):], true
}
