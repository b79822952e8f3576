package golden

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/pdf/pdftest"
)

// Every text of every PDF that the program writes is set in a font that lies in the file, named as the subset
// that it is (ISO 32000-1, 9.6.4, recalled from memory), by an outside reader.
func TestFontsLieInEveryPDF(t *testing.T) {
	gauge := filepath.Join(t.TempDir(), "gauge.pdf")
	job := programtest.Make(t, artwork, "--distance", "8cm", "--paper", "A6")
	programtest.Do(t, "gauge", "--out", gauge)
	sheet := filepath.Join(t.TempDir(), "sheet.pdf")
	programtest.Do(t, "reprint", job, "R1C1", "--out", sheet)
	for _, path := range []string{filepath.Join(job, "sheets.pdf"), filepath.Join(job, "guide.pdf"), gauge, sheet} {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		doc := pdftest.Open(t, data)
		for page := 1; page <= doc.PageCount(); page++ {
			fonts := doc.Fonts(page)
			require.NotEmpty(t, fonts, "%s, page %d", path, page)
			for _, f := range fonts {
				require.True(t, f.Embedded, "%s, page %d: %s", path, page, f.Name)
				require.Regexp(t, `^[A-Z]{6}\+Go`, f.Name, "%s, page %d", path, page)
			}
		}
	}
}
