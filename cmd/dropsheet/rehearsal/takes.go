package rehearsal

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"path/filepath"
	"strings"

	"dropsheet/tile/job"
	"dropsheet/tile/job/place"
	"dropsheet/tile/readfile"
)

// take is a set-up that was kept, by its words.
type take struct {
	Name  string `json:"name"`
	Words []Word `json:"words"`
}

// takesFile is what a file of takes holds.
type takesFile struct {
	Version int    `json:"dropsheet_takes"`
	Artwork string `json:"artwork"` // its name, for people
	Takes   []take `json:"takes"`
}

// Bounds of what is kept: more than hang on any line.
const (
	takesVersion   = 1
	mostTakes      = 100
	mostTakesBytes = 4 << 20
	longestName    = 80
)

// takesPath is where the takes of a subject are kept: beside the folder that its job goes into.
func takesPath(s Subject) string {
	return strings.TrimSuffix(s.Folder, "-backdrop") + "-takes.json"
}

// readTakes reads those that were kept; none where there is no file.
func readTakes(s Subject) ([]take, error) {
	path := takesPath(s)
	text, err := readfile.All(path, mostTakesBytes)
	if errors.Is(err, fs.ErrNotExist) {
		return []take{}, nil
	}
	if err != nil {
		return []take{}, fmt.Errorf("takes %q can't be read: %w", path, place.Plainly(err))
	}
	var file takesFile
	if json.Unmarshal(text, &file) != nil || file.Version != takesVersion {
		return []take{}, fmt.Errorf("takes %q: that is no file of takes\nhint: move it away, or save none", path)
	}
	if err := checkTakes(file.Takes); err != nil {
		return []take{}, fmt.Errorf("takes %q: %w", path, err)
	}
	if file.Takes == nil {
		file.Takes = []take{}
	}
	return file.Takes, nil
}

// checkTakes refuses takes that no page keeps.
func checkTakes(takes []take) error {
	if len(takes) > mostTakes {
		return fmt.Errorf("%d takes are too many\nhint: keep at most %d", len(takes), mostTakes)
	}
	for _, t := range takes {
		if len([]rune(t.Name)) > longestName || t.Name != job.Printable(t.Name) {
			return fmt.Errorf("a take can't be named %.*q\n"+
				"hint: take at most %d plain letters", longestName, t.Name, longestName)
		}
		if _, err := read(t.Words); err != nil {
			return fmt.Errorf("take %q: %w", t.Name, err)
		}
	}
	return nil
}

// saveTakes keeps takes in their file, in place of those that it had.
func (s *server) saveTakes(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		Takes []take `json:"takes"`
	}
	if !receive(w, r, &asked) {
		return
	}
	subject, _ := s.bench.now()
	err := checkTakes(asked.Takes)
	if err == nil {
		_, err = readTakes(subject) // what stands there is replaced only if it is takes
	}
	path := takesPath(subject)
	if err == nil {
		err = place.WriteFile(path, true, func(to io.Writer) error {
			encoder := json.NewEncoder(to)
			encoder.SetIndent("", "  ")
			return encoder.Encode(takesFile{takesVersion, filepath.Base(subject.Artwork), asked.Takes})
		})
	}
	if err != nil {
		answerJSON(w, newErrorRecord(err, nil))
		return
	}
	answerJSON(w, struct {
		head
		File string `json:"file"`
	}{head{Kind: "saved"}, path})
}
