package pdf

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseDict(t *testing.T) {
	tests := []struct {
		name, text string
		want       map[string]string
	}{
		{"empty", "<<>>", map[string]string{}},
		{"after it, a stream", "<</Length 3>>\nstream\n>>>", map[string]string{"Length": "3"}},
		{"reference and name", "<</Type /Page\n/Parent 1 0 R/Contents 4 0 R>>",
			map[string]string{"Type": "/Page", "Parent": "1 0 R", "Contents": "4 0 R"}},
		{"array", "<</Kids [3 0 R 5 0 R ]\n/Count 2>>", map[string]string{"Kids": "[3 0 R 5 0 R ]", "Count": "2"}},
		{"nested", "<</A <</B <</C 1>> /D [<<>>]>> /B 2>>", map[string]string{"A": "<</B <</C 1>> /D [<<>>]>>", "B": "2"}},
		{"strings that hold brackets", `<</T (a >> \( \\) /U <3e3e> /V ((/X 1)\))>>`,
			map[string]string{"T": `(a >> \( \\)`, "U": "<3e3e>", "V": `((/X 1)\))`}},
		{"boolean and negative", "<</A true/B -1.5 >>", map[string]string{"A": "true", "B": "-1.5"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, err := parseDict([]byte(test.text))
			require.NoError(t, err)
			require.Equal(t, test.want, got.entries)
			require.True(t, strings.HasPrefix(test.text, "<<"+got.text+">>"))
		})
	}
}

func TestParseDictRefuses(t *testing.T) {
	for _, text := range []string{
		"", "[1 2]", "<<", "<</A", "<</A 1", "<</A>>", "<<1 2>>", "<</A (x>>", "<</A <3e", "<</A [1 2>>", "<</A )>>",
		"<</A }>>",
		"<</A " + strings.Repeat("[", 1000), "<</A " + strings.Repeat("<</A ", 1000),
	} {
		_, err := parseDict([]byte(text))
		require.ErrorIs(t, err, errNotDict, "%.40q", text)
	}
}

func drawnPages(pictures int) []byte {
	d := New("base")
	d.AddPage(50, 50)
	for range pictures {
		d.Place(rect(0, 0, 10, 10))
	}
	data, err := d.finish()
	if err != nil {
		panic(err)
	}
	return data
}

func TestReadBaseRefuses(t *testing.T) {
	replace := func(from, to string) func([]byte) []byte {
		return func(data []byte) []byte { return bytes.Replace(data, []byte(from), []byte(to), 1) }
	}
	tests := []struct {
		name  string
		spoil func([]byte) []byte
		want  string
	}{
		{"nothing", func([]byte) []byte { return nil }, "header"},
		{"no startxref", replace("startxref", "startxxxx"), "no startxref"},
		{"startxref past the end", replace("startxref\n", "startxref\n99"), "not an offset"},
		{"startxref astray", replace("xref\n0 ", "xxef\n0 "), "object 0"},
		{"entries missing", replace("xref\n0 ", "xref\n0 99"), "entries"},
		{"fewer entries than there are", replace("xref\n0 9", "xref\n0 7"), "trailer"},
		{"entry spoilt", replace(" 00000 n", " 00000 x"), "not an entry"},
		{"trailer spoilt", replace("trailer\n<<", "trailer\n<["), "not a dictionary"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := readBase(test.spoil(drawnPages(2)))
			require.ErrorContains(t, err, test.want)
		})
	}
}

func FuzzReadBase(f *testing.F) {
	f.Add(drawnPages(0))
	f.Add(drawnPages(3))
	f.Add([]byte("%PDF-1.3\nxref\n0 1\n0000000000 65535 f \ntrailer\n<</Root 1 0 R>>\nstartxref\n9\n%%EOF"))
	f.Fuzz(func(t *testing.T, data []byte) {
		base, err := readBase(data)
		if err != nil {
			return
		}
		if pages, err := base.pages(); err == nil {
			require.NotEmpty(t, pages)
		}
		if stubs, err := base.stubs(3); err == nil {
			require.Len(t, stubs, 4)
		}
	})
}
