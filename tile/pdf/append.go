package pdf

import (
	"bufio"
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
	"slices"
)

// Stream writes the whole file to w. It calls next once for each placed picture, in the order of the calls to
// Place, and writes each before it asks for the one after it; it keeps none. The first error of next, of a
// picture or of w ends the file unfinished and is returned, wrapped. A document can be streamed once.
func (d *Document) Stream(w io.Writer, next func(PictureID) (Picture, error)) error {
	drawn, err := d.finish()
	if err != nil {
		return err
	}
	base, err := readBase(drawn)
	if err != nil {
		return fmt.Errorf("reading back the drawn pages: %w", err)
	}
	stubs, err := base.stubs(d.pictures)
	if err != nil {
		return err
	}
	u := newUpdate(w, base)
	for id := 1; id <= d.pictures && u.out.err == nil; id++ {
		picture, err := next(PictureID(id))
		if err == nil {
			err = u.picture(stubs[id], picture)
		}
		if err != nil {
			return fmt.Errorf("picture %d of %d: %w", id, d.pictures, err)
		}
	}
	if err := u.fonts(); err != nil {
		return err
	}
	if err := u.pages(d.boxes); err != nil {
		return err
	}
	if err := u.catalog(); err != nil {
		return err
	}
	return u.finish()
}

// update appends changed objects to a base file and accounts for them at the end.
type update struct {
	base     *baseFile
	buffered *bufio.Writer
	out      *meter
	offsets  map[int]int64 // of the objects written, by number
	size     int           // one above the highest object number
	profiles []writtenProfile
}

type writtenProfile struct {
	icc    []byte
	number int
}

func newUpdate(w io.Writer, base *baseFile) *update {
	buffered := bufio.NewWriter(w)
	u := &update{
		base:     base,
		buffered: buffered,
		out:      &meter{w: buffered, sum: sha256.New()},
		offsets:  map[int]int64{},
		size:     len(base.offsets),
	}
	u.out.write(base.data)
	return u
}

// begin starts an object and notes where it lies.
func (u *update) begin(number int) {
	u.offsets[number] = u.out.offset
	u.out.printf("%d 0 obj\n", number)
}

// stream ends an object that is a stream, given all but the length and the end of its dictionary.
func (u *update) stream(dictStart string, data []byte) {
	u.out.printf("%s /Length %d>>\nstream\n", dictStart, len(data))
	u.out.write(data)
	u.out.printf("\nendstream\nendobj\n")
}

// extend writes an object of the base again with more entries in its dictionary.
func (u *update) extend(number int, old dict, entries string) {
	u.begin(number)
	u.out.printf("<<%s%s>>\nendobj\n", old.text, entries)
}

// pages writes the pages that have boxes again. gofpdf's own boxes come out in random order, and don't turn y up.
func (u *update) pages(boxes map[int]pageBoxes) error {
	numbers, err := u.base.pages()
	if err != nil {
		return err
	}
	for i, number := range numbers {
		b, ok := boxes[i+1]
		if !ok {
			continue
		}
		page, err := u.base.dict(number)
		if err != nil {
			return err
		}
		u.extend(number, page, fmt.Sprintf("\n/TrimBox %s\n/BleedBox %s", boxPt(b.trim, b.pageHeightMM),
			boxPt(b.bleed, b.pageHeightMM)))
	}
	return nil
}

// catalog writes the catalog again, with a request not to scale the print (ISO 32000-1, table 150).
// That entry is of PDF 1.6 and gofpdf's header says less, so the catalog states the version (7.7.2, table 28).
func (u *update) catalog() error {
	number, old, err := u.base.catalog()
	if err != nil {
		return err
	}
	u.extend(number, old, "\n/Version /1.6\n/ViewerPreferences <</PrintScaling /None>>")
	return nil
}

// maxOffset is what the ten digits of a cross-reference entry hold (ISO 32000-1, 7.5.4).
const maxOffset = 9_999_999_999

// finish writes the cross-reference section and the trailer (ISO 32000-1, 7.5.5 and 7.5.6) and flushes.
func (u *update) finish() error {
	sum := u.out.sum.Sum(nil)[:16]
	start := u.out.offset
	if start > maxOffset {
		return errors.New("the PDF would be larger than 10 GB, which its format can't hold\n" +
			"hint: print fewer sheets at a time " +
			"or at a lower resolution")
	}
	u.out.printf("xref\n")
	u.sections()
	u.out.printf("trailer\n<</Size %d /Root %s /Info %s /Prev %d /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		u.size, u.base.trailer.entries["Root"], u.base.trailer.entries["Info"], u.base.startxref, sum, sum, start)
	if u.out.err == nil {
		u.out.err = u.buffered.Flush()
	}
	if u.out.err != nil {
		return fmt.Errorf("writing the PDF: %w", u.out.err)
	}
	return nil
}

// sections writes one subsection for each run of consecutive object numbers.
func (u *update) sections() {
	numbers := make([]int, 0, len(u.offsets))
	for number := range u.offsets {
		numbers = append(numbers, number)
	}
	slices.Sort(numbers)
	for len(numbers) > 0 {
		run := 1
		for run < len(numbers) && numbers[run] == numbers[0]+run {
			run++
		}
		u.out.printf("%d %d\n", numbers[0], run)
		for _, number := range numbers[:run] {
			u.out.printf("%010d 00000 n \n", u.offsets[number])
		}
		numbers = numbers[run:]
	}
}

// meter passes bytes on, counts and hashes them. Its first error sticks.
type meter struct {
	w      io.Writer
	sum    hash.Hash
	offset int64
	err    error
}

func (m *meter) write(data []byte) {
	if m.err != nil {
		return
	}
	var n int
	n, m.err = m.w.Write(data)
	m.sum.Write(data)
	m.offset += int64(n)
}

func (m *meter) printf(format string, args ...any) { m.write(fmt.Appendf(nil, format, args...)) }
