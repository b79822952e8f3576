package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"strings"
)

// fonts writes again what gofpdf wrote of each font. gofpdf does not name a font as the subset that it is
// (ISO 32000-1, 9.6.4: six capital letters and a plus sign before its PostScript name; by those words, readers
// and printers know that letters are missing), and maps its codes back to Unicode by one range over all of them,
// where a range may change the last byte alone (9.10.3). What a font is: 9.7.6 (Type 0), 9.7.4 (CIDFont), 9.8
// (descriptor), 9.9 (file).
func (u *update) fonts() error {
	for number := 1; number < len(u.base.offsets); number++ {
		if u.base.offsets[number] == 0 {
			continue
		}
		object, err := u.base.dict(number)
		if errors.Is(err, errNotDict) {
			continue
		}
		if err == nil && object.entries["Type"] == "/Font" && object.entries["Subtype"] == "/Type0" {
			err = u.font(number, object)
		}
		if err != nil {
			return fmt.Errorf("font in object %d: %w", number, err)
		}
	}
	return nil
}

// font writes again the objects of one font: itself, its only descendant, that one's descriptor, and the map to
// Unicode.
func (u *update) font(number int, font dict) error {
	descendant, cid, err := u.base.follow(font, "DescendantFonts")
	if err != nil {
		return err
	}
	descriptor, described, err := u.base.follow(cid, "FontDescriptor")
	if err != nil {
		return err
	}
	file, err := described.references("FontFile2")
	if err != nil {
		return err
	}
	program, err := u.base.stream(file[0])
	if err != nil {
		return err
	}
	toUnicode, err := font.references("ToUnicode")
	if err != nil {
		return err
	}
	was := font.entries["BaseFont"]
	name, err := subsetName(was, program)
	if err != nil {
		return err
	}
	for _, o := range []struct {
		number int
		dict   dict
	}{{number, font}, {descendant, cid}, {descriptor, described}} {
		u.begin(o.number)
		u.out.printf("<<%s>>\nendobj\n", strings.Replace(o.dict.text, was, name, 1))
	}
	u.begin(toUnicode[0])
	u.stream("<<", []byte(unicodeMap()))
	return nil
}

// subsetName is the name of a font, as an object of the file, that gofpdf called was and cut down to the program
// given. Its tag, which the standard leaves free but for being another for another subset, comes from the program.
func subsetName(was string, program []byte) (string, error) {
	for f, file := range fontFiles {
		if was != "/utf8"+f.family+f.weight { // gofpdf's name for it
			continue
		}
		var tag []byte
		for _, b := range sha256.Sum256(program) {
			if len(tag) < 6 {
				tag = append(tag, 'A'+b%26)
			}
		}
		return fmt.Sprintf("/%s+%s", tag, file.postScript), nil
	}
	return "", fmt.Errorf("its name %.40q is none that was drawn with", was)
}

// unicodeMap maps the codes of a font, which are UTF-16 as they stand, to UTF-16: a range for each high byte that the
// fonts' letters have (ISO 32000-1, 9.10.3).
func unicodeMap() string {
	var ranges []string
	for high := range endOfPlane >> 8 {
		for low := range 1 << 8 {
			if letters()[rune(high<<8|low)] {
				ranges = append(ranges, fmt.Sprintf("<%02X00> <%02XFF> <%02X00>\n", high, high, high))
				break
			}
		}
	}
	return fmt.Sprintf("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"+
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n"+
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"+
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n%d beginbfrange\n%sendbfrange\n"+
		"endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend", len(ranges), strings.Join(ranges, ""))
}

// follow returns the object number and dictionary of the first object that an entry refers to.
func (b *baseFile) follow(from dict, key string) (int, dict, error) {
	to, err := from.references(key)
	if err != nil {
		return 0, dict{}, err
	}
	found, err := b.dict(to[0])
	return to[0], found, err
}

// stream returns the data of an object that is a stream, as it is stored.
func (b *baseFile) stream(number int) ([]byte, error) {
	object, err := b.dict(number)
	if err != nil {
		return nil, err
	}
	body, err := b.object(number)
	if err != nil {
		return nil, err
	}
	length, err := object.number("Length")
	_, data, found := bytes.Cut(body, []byte("stream\n"))
	if err != nil || !found || length < 0 || length > len(data) {
		return nil, fmt.Errorf("object %d is not a whole stream", number)
	}
	return data[:length], nil
}
