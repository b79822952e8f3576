package pdf

import "io"

// CountPages counts the pages of a file that Document.Stream wrote, of so many bytes, without its pictures. A
// file that was cut short, or that another program wrote, is an error.
func CountPages(file io.ReaderAt, sizeBytes int64) (int, error) {
	f, err := readEnds(file, sizeBytes)
	if err != nil {
		return 0, err
	}
	pages, err := f.base.pages()
	return len(pages), err
}
