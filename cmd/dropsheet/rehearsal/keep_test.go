package rehearsal

import (
	"bytes"
	"encoding/json"
	"image/png"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
)

// quick are words by which a job is made soon: it has one sheet, and its proof few pixels.
var quick = []Word{{"max-sheets", "1"}, {"pixels", "24x16"}}

func patternFile(t *testing.T) string {
	t.Helper()
	path, _ := jobtest.WritePattern(t, 60, 40)
	return path
}

// A job is made into the folder beside the artwork, with progress; where it is there already the page is asked first,
// and another beside it, or the same again, is made only when it says so.
func TestMakes(t *testing.T) {
	address, folder := served(t)
	words := []Word{{"max-sheets", "2"}, {"drop-at", "1mm,0mm"}, quick[1]}
	all := asked(t, address, "make", order{Words: words})
	made := all[len(all)-1]
	require.Equal(t, "made", made.Kind, made.Text)
	require.Equal(t, filepath.Join(folder, "pattern-backdrop"), made.Folder)
	require.Equal(t, "progress", all[len(all)-2].Kind)
	j, err := job.Read(made.Folder)
	require.NoError(t, err)
	require.Equal(t, []string{"2"}, j.Asked["max-sheets"])
	require.Empty(t, j.Asked["drop-at"], "that is proof's")
	require.EqualValues(t, len(j.Sheets), made.Sheets)
	for name, begins := range map[string]string{"sheets.pdf": "%PDF", "guide.pdf": "%PDF", "proof.png": "\x89PNG"} {
		r, err := http.Get(address + "made/" + name)
		require.NoError(t, err)
		var text bytes.Buffer
		_, err = text.ReadFrom(r.Body)
		require.NoError(t, err)
		r.Body.Close()
		require.True(t, strings.HasPrefix(text.String(), begins), name)
	}
	for _, name := range []string{"job.json", "artwork.png", "x.pdf", "%2e%2e"} {
		r, err := http.Get(address + "made/" + name)
		require.NoError(t, err)
		r.Body.Close()
		require.Equal(t, http.StatusNotFound, r.StatusCode, name)
	}

	status := func(path string) int {
		r, err := http.Get(address + "made/" + path)
		require.NoError(t, err)
		r.Body.Close()
		return r.StatusCode
	}
	for path, want := range map[string]int{"sheets.pdf/1": 200, "sheets.pdf/2": 200, "sheets.pdf/3": 404,
		"sheets.pdf/0": 404, "sheets.pdf/-1": 404, "sheets.pdf/x": 404, "sheets.pdf/2/large": 200, "guide.pdf/1": 200,
		"sheets.pdf/pages": 200, "proof.png/1": 404, "proof.png/pages": 404, "job.json/1": 404, "page/1": 404} {
		require.Equal(t, want, status(path), path)
	}
	r, err := http.Get(address + "made/sheets.pdf/2/large")
	require.NoError(t, err)
	large, err := png.Decode(r.Body)
	require.NoError(t, err)
	r.Body.Close()
	require.Equal(t, largeSidePx, max(large.Bounds().Dx(), large.Bounds().Dy()))

	// What is a link by now is not shown, nor anything in a folder that is.
	proof, kept := filepath.Join(made.Folder, "proof.png"), filepath.Join(folder, "kept.png")
	require.NoError(t, os.Rename(proof, kept))
	require.NoError(t, os.Symlink(kept, proof))
	require.Equal(t, 404, status("proof.png"))
	require.NoError(t, os.Remove(proof))
	require.NoError(t, os.Symlink("closeup.png", proof), "beside it too")
	require.Equal(t, 404, status("proof.png"))
	require.NoError(t, os.Remove(proof))
	require.NoError(t, os.Rename(kept, proof))
	require.Equal(t, 200, status("proof.png"))
	require.NoError(t, os.Rename(made.Folder, made.Folder+"-kept"))
	require.NoError(t, os.Symlink(made.Folder+"-kept", made.Folder))
	require.Equal(t, 404, status("proof.png"))
	require.NoError(t, os.Remove(made.Folder))
	require.NoError(t, os.Rename(made.Folder+"-kept", made.Folder))

	before, err := os.ReadFile(filepath.Join(made.Folder, "job.json"))
	require.NoError(t, err)
	all = asked(t, address, "make", order{Words: quick})
	require.Len(t, all, 1)
	require.Equal(t, "there", all[0].Kind)
	require.Equal(t, "pattern-backdrop-2", all[0].Fresh)
	after, err := os.ReadFile(filepath.Join(made.Folder, "job.json"))
	require.NoError(t, err)
	require.Equal(t, before, after)
	all = asked(t, address, "make", order{Words: quick, Fresh: true})
	require.Equal(t, filepath.Join(folder, "pattern-backdrop-2"), all[len(all)-1].Folder)
	all = asked(t, address, "make", order{Words: quick, Replace: true})
	require.Equal(t, "made", all[len(all)-1].Kind)
	after, err = os.ReadFile(filepath.Join(made.Folder, "job.json"))
	require.NoError(t, err)
	require.NotEqual(t, before, after)
}

// A page that leaves while a job is made stops it, and nothing is left.
func TestMakeStops(t *testing.T) {
	path := patternFile(t)
	address, stop := serve(t, path, begunWith)
	r, err := http.Post(address+"make", "application/json", strings.NewReader(
		`{"words":[["distance","20cm"],["pixels","1900x1900"],["frame-width","9mm"]]}`))
	require.NoError(t, err)
	_, err = r.Body.Read(make([]byte, 10)) // the first progress
	require.NoError(t, err)
	other, err := http.Post(address+"make", "application/json", strings.NewReader(`{"words":[]}`))
	require.NoError(t, err)
	other.Body.Close()
	require.Equal(t, http.StatusConflict, other.StatusCode, "one at a time")
	r.Body.Close()
	stop() // waits for what is being made
	left, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, left, 1, "the artwork alone")
}

// Takes are kept beside the artwork and come back; what is no file of takes is not replaced.
func TestTakes(t *testing.T) {
	address, folder := served(t)
	kept := []take{{"two lamps", []Word{{"lamp", "-60cm,0cm,80cm"}, {"lamp", "60cm,0cm,80cm"}}}, {"ü", []Word{}}}
	save := func(takes []take) record { return askedOne(t, address, "takes", map[string]any{"takes": takes}) }
	saved := save(kept)
	require.Equal(t, "saved", saved.Kind, saved.Text)
	require.Equal(t, filepath.Join(folder, "pattern-takes.json"), saved.File)
	b := begun(t, address)
	require.Equal(t, kept, b.Takes)
	require.Equal(t, "saved", save(kept[:1]).Kind, "again in place of the first")

	require.Contains(t, save([]take{{"x", []Word{{"distance", "4"}}}}).Text, "has no unit")
	require.Contains(t, save([]take{{"x\x1b[2J", nil}}).Text, "can't be named")
	require.Contains(t, save(make([]take, mostTakes+1)).Text, "too many")
	require.NoError(t, os.WriteFile(saved.File, []byte(`{"my":"notes"}`), 0o600))
	require.Contains(t, save(kept).Text, "no file of takes")
	require.Contains(t, begun(t, address).Error.Text, "no file of takes")
	text, err := os.ReadFile(saved.File)
	require.NoError(t, err)
	require.Equal(t, `{"my":"notes"}`, string(text))
}

func askedOne(t *testing.T, address, route string, body any) record {
	t.Helper()
	all := asked(t, address, route, body)
	require.Len(t, all, 1)
	return all[0]
}

func begun(t *testing.T, address string) (b beginning) {
	t.Helper()
	r, err := http.Get(address + "start")
	require.NoError(t, err)
	defer r.Body.Close()
	require.NoError(t, json.NewDecoder(r.Body).Decode(&b))
	return b
}

// A picture that is dropped on the page takes the artwork's place, under the last part of its name alone, and nothing
// of it is left when the server ends but in the jobs made of it.
func TestDroppedPicture(t *testing.T) {
	temporary := t.TempDir()
	t.Setenv("TMPDIR", temporary)
	path := patternFile(t)
	address, stop := serve(t, path, begunWith)
	other, _ := jobtest.WritePattern(t, 50, 50)
	text, err := os.ReadFile(other)
	require.NoError(t, err)
	drop := func(name string, text []byte) (beginning, errorRecord) { return dropped(t, address, name, text) }
	for name, says := range map[string]string{"x.exe": "no picture", "..": "no picture", "": "no picture",
		"%zz.png": "can't be read"} {
		_, e := drop(name, text)
		require.Contains(t, e.Text, says, name)
	}
	_, e := drop("x.png", []byte("no picture at all"))
	require.Equal(t, "error", e.Kind)
	require.Equal(t, 60, begun(t, address).WidthPx, "the picture before stays")
	b, _ := drop("..%2F..%2Fetc%2Fthe%20quay.png", text)
	require.Equal(t, "the quay.png", b.Name)
	require.Equal(t, 50, b.WidthPx)
	chart, err := os.ReadFile("../../../examples/chart/chart.pdf")
	require.NoError(t, err)
	b, _ = drop("chart.pdf", chart)
	require.Equal(t, "chart.pdf", b.Name, "a page of a PDF is a picture too")
	require.Equal(t, b.HeightPx, b.WidthPx)
	b, _ = drop("quay.png", text)
	require.Equal(t, filepath.Join(filepath.Dir(path), "quay-backdrop"), b.Folder)
	left, err := os.ReadDir(temporary)
	require.NoError(t, err)
	require.Len(t, left, 1, "the one before is taken away")
	all := asked(t, address, "make", order{Words: quick})
	require.Equal(t, "made", all[len(all)-1].Kind, all[len(all)-1].Text)
	stop()
	left, err = os.ReadDir(temporary)
	require.NoError(t, err)
	require.Empty(t, left)
	require.FileExists(t, filepath.Join(b.Folder, "artwork.png"))
}

// dropped drops a picture on the page.
func dropped(t *testing.T, address, name string, text []byte) (b beginning, e errorRecord) {
	t.Helper()
	r, err := http.NewRequest("POST", address+"picture", bytes.NewReader(text))
	require.NoError(t, err)
	r.Header.Set("Content-Type", "application/octet-stream")
	r.Header.Set("Picture-Name", name)
	got, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer got.Body.Close()
	var all bytes.Buffer
	_, err = all.ReadFrom(got.Body)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(all.Bytes(), &b))
	require.NoError(t, json.Unmarshal(all.Bytes(), &e))
	return b, e
}
