package pdftest

import (
	"math"

	"github.com/klippa-app/go-pdfium/requests"
	"github.com/stretchr/testify/require"
)

// Letter is a glyph of a page: what it stands for, and the box of its ink.
type Letter struct {
	Text string
	Box
}

// Letters returns the glyphs of a page in the order in which they were drawn, those that a clip hides too.
func (d *Doc) Letters(page int) []Letter {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	text, err := pdf.GetPageTextStructured(&requests.GetPageTextStructured{Page: d.page(page),
		Mode: requests.GetPageTextStructuredModeChars})
	require.NoError(d.t, err)
	letters := make([]Letter, len(text.Chars))
	for i, c := range text.Chars {
		p := c.PointPosition // its top and bottom go by where they lie on the page, either way up
		letters[i] = Letter{c.Text, Box{p.Left, math.Min(p.Top, p.Bottom), p.Right, math.Max(p.Top, p.Bottom)}}
	}
	return letters
}
