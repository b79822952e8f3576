package pdftest

import (
	"slices"

	"github.com/klippa-app/go-pdfium/requests"
	"github.com/stretchr/testify/require"
)

// Font is a font that a page's text is set in.
type Font struct {
	Name     string // as the page names it, the tag of a subset included
	Embedded bool   // its file is in the PDF file
}

// Fonts returns the fonts of a page's text, each once, in the order in which they come.
func (d *Doc) Fonts(page int) []Font {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	count, err := pdf.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: d.page(page)})
	require.NoError(d.t, err)
	var fonts []Font
	for i := range count.Count {
		object, err := pdf.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: d.page(page), Index: i})
		require.NoError(d.t, err)
		font, err := pdf.FPDFTextObj_GetFont(&requests.FPDFTextObj_GetFont{PageObject: object.PageObject})
		if err != nil {
			continue // a line or a picture
		}
		name, err := pdf.FPDFFont_GetBaseFontName(&requests.FPDFFont_GetBaseFontName{Font: font.Font})
		require.NoError(d.t, err)
		embedded, err := pdf.FPDFFont_GetIsEmbedded(&requests.FPDFFont_GetIsEmbedded{Font: font.Font})
		require.NoError(d.t, err)
		if f := (Font{name.BaseFontName, embedded.IsEmbedded}); !slices.Contains(fonts, f) {
			fonts = append(fonts, f)
		}
	}
	return fonts
}
