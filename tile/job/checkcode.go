package job

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"dropsheet/layout"
)

// code is the job's check code, from what decides how its sheets come out, rounded as processors agree on it.
func (j Job) code() (string, error) { return j.codeOf(layout.Rounded(printed(layout.Rounded(j.Plan)))) }

// exactCode is the check code as jobs once got it, to the last digit.
func (j Job) exactCode() (string, error) { return j.codeOf(printed(j.Plan)) }

// codeOf is the check code of the job with that plan.
func (j Job) codeOf(p layout.Plan) (string, error) {
	// The file's place is left out: the same job made elsewhere has the same code.
	text, err := json.Marshal(struct {
		SHA256 string
		Print  Print
		Plan   layout.Plan
		Page   int `json:",omitempty"` // of a PDF, of which another page may be as large
	}{j.Artwork.SHA256, j.Print, p, j.Artwork.Page})
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(text)
	return strings.ToUpper(hex.EncodeToString(sum[:3])), nil
}

// printed is a plan without what came to plans later and has no part in how its sheets come out: how the camera is
// exposed, how the drop comes by, whether inches are told, and what is known of lamps that the print does not make up
// for. The near-axis reach, which is for comparison only, counts as for a camera far off, which is how it once was
// told. The same sheets keep the code that they had before.
func printed(p layout.Plan) layout.Plan {
	f, sight := p.Drop.FocalLengthMM, p.Sight()
	p.Picture.NearAxisReachMM = math.Abs(sight.DistanceMM-f) / f * p.Picture.Fill * sight.ApparentRadiusMM()
	p.Shooting, p.Camera.SensorAssumed, p.Camera.Eye, p.Inches = layout.Shooting{}, false, false, false
	if len(p.Seams) == 0 {
		p.Seams = nil // which is how no seam once was told
	}
	p.Lamps = slices.Clone(p.Lamps)
	for i, l := range p.Lamps {
		p.Lamps[i] = layout.Lamp{XMM: l.XMM, YMM: l.YMM, ZMM: l.ZMM}
	}
	p.LevelledFor = slices.Clone(p.LevelledFor)
	for i := range p.LevelledFor {
		p.LevelledFor[i].SizeMM = 0
	}
	if !slices.ContainsFunc(p.LevelledFor, func(l layout.Lamp) bool { return l.LuxAt1M != p.LevelledFor[0].LuxAt1M }) {
		for i := range p.LevelledFor { // all alike, they light the board as lamps of which nothing is known
			p.LevelledFor[i].LuxAt1M = 0
		}
	}
	return p
}

// Changed tells why a job that was read is not as it was made: its figures give another check code.
func (j Job) Changed() error {
	got, err := j.code()
	if err == nil && got == j.CheckCode {
		return nil
	}
	if exact, errExact := j.exactCode(); errExact == nil && exact == j.CheckCode {
		return nil
	}
	return errors.Join(err, fmt.Errorf("the job's figures give %s and it says %s: job.json was changed since it was "+
		"made, and what it prints won't fit the sheets that say %s\n"+
		"hint: take the file as make wrote it, or make the job again", got, j.CheckCode, j.CheckCode))
}

// ChangedWarning says that a job is not as it was made, to those who only look at it.
func (j Job) ChangedWarning() []string {
	if j.Changed() == nil {
		return nil
	}
	return []string{fmt.Sprintf("job.json was changed since it was made: this goes by what it says now, and the "+
		"printed sheets that say %s do not", j.CheckCode)}
}
