package job

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/job/place"
	"dropsheet/tile/proof"
	"dropsheet/tile/readfile"
)

// filmWords is what a film's folder says of the words that its frames were made by.
type filmWords struct {
	Version int    `json:"dropsheet_film"`
	Job     string `json:"job"` // its name, for people
	Frames  int    `json:"frames"`
	// MadeOf is the SHA-256 of all that the frames come of.
	MadeOf string `json:"made_of"`
}

const (
	filmVersion   = 1
	mostFilmWords = 1 << 16 // bytes
)

// filmWords are those of a film of the job.
func (j Job) filmWords(f Film) (filmWords, error) {
	s := f.Scene
	s.Plan.Shooting.PlaybackFPS = 0 // no matter to the frames
	text, err := json.Marshal(struct {
		Version     int
		Artwork     string
		Page        int
		Print       Print
		Plan        layout.Plan
		Camera      layout.Camera
		SeamWidthMM float64
		Drops       []layout.Point
		Sharp       bool
		Samples     int
		White       float64
		Motion      proof.Motion
		Passage     shot.Passage
	}{filmVersion, j.Artwork.SHA256, j.Artwork.Page, j.Print, s.Plan, s.Camera, s.SeamWidthMM, s.Drops, s.Sharp,
		s.Samples, s.White, s.Motion, f.Passage})
	if err != nil {
		return filmWords{}, err
	}
	sum := sha256.Sum256(text)
	return filmWords{filmVersion, j.Name, f.Passage.Frames(), hex.EncodeToString(sum[:])}, nil
}

// makeFolder makes the film's folder, or finds that the film may go on in it, or take the place of another one there.
func (f Film) makeFolder(words filmWords) error {
	there, err := readFilmWords(f.Folder)
	if err != nil {
		return err
	}
	if there != words && there != (filmWords{}) && !f.Force {
		return fmt.Errorf("folder %q holds a film that was made by other words\n"+
			"hint: name another with --film, or give --force "+
			"to replace it", f.Folder)
	}
	if err := os.Mkdir(f.Folder, 0o777); err != nil && !errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("folder %q can't be made: %w\nhint: name another with --film", f.Folder, place.Plainly(err))
	}
	return nil
}

// openFolder takes the film of other words away, if there is one, and says by which words this one is made.
func (f Film) openFolder(words filmWords) error {
	there, err := readFilmWords(f.Folder)
	if err != nil || there == words {
		return err
	}
	if err := f.takeAway(); err != nil {
		return fmt.Errorf("the old film in folder %q can't be taken away: %w", f.Folder, place.Plainly(err))
	}
	return place.WriteFile(filepath.Join(f.Folder, wordsFile), true, func(w io.Writer) error {
		encoder := json.NewEncoder(w)
		encoder.SetIndent("", "  ")
		return encoder.Encode(words)
	})
}

// readFilmWords reads what a folder says of the film in it; nothing of a folder that is not there, or empty. A folder
// with other things in it is refused.
func readFilmWords(folder string) (words filmWords, err error) {
	entries, err := os.ReadDir(folder)
	// a run that was killed early may have left these
	entries = slices.DeleteFunc(entries, func(e fs.DirEntry) bool { return place.IsUnfinished(e.Name()) })
	switch {
	case errors.Is(err, fs.ErrNotExist) || err == nil && len(entries) == 0:
		return filmWords{}, nil
	case err != nil:
		return filmWords{}, fmt.Errorf("folder %q can't be used: %w\n"+
			"hint: name another with --film", folder, place.Plainly(err))
	}
	path := filepath.Join(folder, wordsFile)
	text, err := readfile.All(path, mostFilmWords)
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	if err == nil && decoder.Decode(&words) == nil && words.Version != 0 {
		return words, nil
	}
	return filmWords{}, fmt.Errorf("folder %q is not empty and holds no film of dropsheet's\n"+
		"hint: name a new one with --film",
		folder)
}

// takeAway removes the film in the folder and its frames, and nothing else.
func (f Film) takeAway() error {
	entries, err := os.ReadDir(f.Folder)
	if err != nil {
		return err
	}
	for _, e := range entries {
		frame, _ := filepath.Match(frameNames, e.Name()) // the pattern is well formed
		if e.Type().IsRegular() && (frame || e.Name() == FilmFile) {
			if err := os.Remove(filepath.Join(f.Folder, e.Name())); err != nil {
				return err
			}
		}
	}
	return nil
}
