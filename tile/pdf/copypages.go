package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"
)

// CopyPages writes pages, by their numbers from 1 and in that order, of a file of so many bytes that Document.Stream
// wrote, as a file of their own: each as it was, object by object. A page may be wanted more than once. A file that was
// cut short, or that another program wrote, is an error.
func CopyPages(w io.Writer, file io.ReaderAt, sizeBytes int64, pages []int) error {
	f, err := openStreamed(file, sizeBytes)
	if err != nil {
		return err
	}
	c, err := f.choose(pages)
	if err != nil {
		return err
	}
	return c.write(w)
}

// chosen is what becomes a file of some pages: objects as they were, under their numbers, and those that are others.
type chosen struct {
	from    *streamedFile
	numbers []int          // of all of them, in order
	anew    map[int]string // those that are not as they were
	size    int            // one above the highest number
}

// choose leaves out what only other pages need: themselves, what draws them, and their pictures.
func (f *streamedFile) choose(pages []int) (*chosen, error) {
	catalog, err := f.dictOf(f.trailer, "Root")
	if err != nil {
		return nil, err
	}
	tree, node, err := f.follow(catalog, "Pages")
	if err != nil {
		return nil, err
	}
	kids, err := node.references("Kids")
	if err != nil {
		return nil, err
	}
	c := &chosen{from: f, anew: map[int]string{}}
	for number := range f.offsets {
		c.size = max(c.size, number+1)
	}
	leave := map[int]bool{}
	pictures := map[string]bool{}
	var resources int
	var order []string
	for _, page := range pages {
		if page < 1 || page > len(kids) {
			return nil, fmt.Errorf("the file has %d pages, and no page %d", len(kids), page)
		}
	}
	for i, number := range kids {
		page, err := f.dict(number)
		if err != nil {
			return nil, err
		}
		content, _, err := f.follow(page, "Contents")
		if err != nil {
			return nil, err
		}
		if !slices.Contains(pages, i+1) {
			leave[number], leave[content] = true, true
			continue
		}
		if resources, _, err = f.follow(page, "Resources"); err != nil {
			return nil, err
		}
		if err := f.drawn(content, pictures); err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	for i, page := range pages {
		number := kids[page-1]
		if slices.Contains(pages[:i], page) { // wanted again, it is another object (ISO 32000-1, 7.7.3.2)
			again, err := f.dict(number)
			if err != nil {
				return nil, err
			}
			number = c.size
			c.anew[number] = again.text
			c.size++
		}
		order = append(order, fmt.Sprintf("%d 0 R", number))
	}
	c.anew[tree] = strings.Replace(strings.Replace(node.text, node.entries["Kids"], "["+strings.Join(order, " ")+"]", 1),
		"/Count "+node.entries["Count"], fmt.Sprintf("/Count %d", len(pages)), 1)
	if err := c.keepPictures(resources, pictures, leave); err != nil {
		return nil, err
	}
	for number := range f.offsets {
		if !leave[number] {
			c.numbers = append(c.numbers, number)
		}
	}
	for number := range c.anew {
		if _, was := f.offsets[number]; !was {
			c.numbers = append(c.numbers, number)
		}
	}
	slices.Sort(c.numbers)
	return c, nil
}

// placedPicture is a picture that is drawn by its name (ISO 32000-1, 8.8).
var placedPicture = regexp.MustCompile(`/([A-Za-z0-9]+) Do\b`)

// drawn adds the names of the pictures that a page's content draws.
func (f *streamedFile) drawn(content int, names map[string]bool) error {
	raw, err := f.raw(content)
	if err != nil {
		return err
	}
	_, data, found := bytes.Cut(raw, []byte("stream\n"))
	if !found {
		return fmt.Errorf("object %d is no stream", content)
	}
	inflated, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		return err
	}
	defer inflated.Close()
	text, err := io.ReadAll(io.LimitReader(inflated, mostBaseBytes))
	if err != nil {
		return err
	}
	for _, m := range placedPicture.FindAllSubmatch(text, -1) {
		names[string(m[1])] = true
	}
	return nil
}

// keepPictures leaves out the pictures that are not drawn, and their names from the pages' resources.
func (c *chosen) keepPictures(resources int, drawn map[string]bool, leave map[int]bool) error {
	old, err := c.from.dict(resources)
	if err != nil {
		return err
	}
	named, err := parseDict([]byte(old.entries["XObject"]))
	if err != nil {
		return fmt.Errorf("the pictures' names: %w", err)
	}
	var kept strings.Builder
	for _, name := range slices.Sorted(maps.Keys(named.entries)) {
		if drawn[name] {
			fmt.Fprintf(&kept, "\n/%s %s", name, named.entries[name])
			continue
		}
		numbers, err := named.references(name)
		if err != nil {
			return err
		}
		leave[numbers[0]] = true
	}
	c.anew[resources] = strings.Replace(old.text, old.entries["XObject"], "<<"+kept.String()+"\n>>", 1)
	return nil
}

// write writes the file: header, objects, one cross-reference table and the trailer (ISO 32000-1, 7.5).
func (c *chosen) write(w io.Writer) error {
	out := &meter{w: w, sum: sha256.New()}
	header, _, _ := bytes.Cut(c.from.base.data, []byte("\n"))
	out.printf("%s\n", header)
	offsets := map[int]int64{}
	for _, number := range c.numbers {
		offsets[number] = out.offset
		if text, ok := c.anew[number]; ok {
			out.printf("%d 0 obj\n<<%s>>\nendobj\n", number, text)
			continue
		}
		raw, err := c.from.raw(number)
		if err != nil {
			return err
		}
		out.write(raw)
	}
	start := out.offset
	out.printf("xref\n0 %d\n", c.size)
	for number := range c.size {
		if at, ok := offsets[number]; ok {
			out.printf("%010d 00000 n \n", at)
		} else {
			out.printf("%010d 65535 f \n", 0)
		}
	}
	sum := out.sum.Sum(nil)[:16]
	out.printf("trailer\n<</Size %d /Root %s /Info %s /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n", c.size,
		c.from.trailer.entries["Root"], c.from.trailer.entries["Info"], sum, sum, start)
	return out.err
}
