package job

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"dropsheet/layout"
)

// code is the job's check code, from what decides how its sheets come out.
func (j Job) code() (string, error) {
	// The file's place is left out: the same job made elsewhere has the same code.
	text, err := json.Marshal(struct {
		SHA256 string
		Print  Print
		Plan   layout.Plan
	}{j.Artwork.SHA256, j.Print, j.Plan})
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(text)
	return strings.ToUpper(hex.EncodeToString(sum[:3])), nil
}

// Changed tells why a job that was read is not as it was made: its figures give another check code.
func (j Job) Changed() error {
	got, err := j.code()
	if err == nil && got == j.CheckCode {
		return nil
	}
	return errors.Join(err, fmt.Errorf("the job's figures give %s and it says %s: job.json was changed since it "+
		"was made, and what it prints won't fit the sheets that say %s; take the file as make wrote it, or make the "+
		"job again", got, j.CheckCode, j.CheckCode))
}

// ChangedWarning says that a job is not as it was made, to those who only look at it.
func (j Job) ChangedWarning() []string {
	if j.Changed() == nil {
		return nil
	}
	return []string{fmt.Sprintf("job.json was changed since it was made: this goes by what it says now, and the "+
		"printed sheets that say %s do not", j.CheckCode)}
}
