package report

import (
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// Figures is a plan with what follows from it, as programs get it: every figure in full, under the names that
// the facts' figures carry as their paths.
type Figures struct {
	Version int `json:"dropsheet"` // of the format, as in a job file
	layout.Plan
	DarkRim     shot.DarkRim     `json:"dark_rim"`
	MirroredRim shot.MirroredRim `json:"mirrored_rim"`
	Sensitivity shot.Sensitivity `json:"sensitivity"`
	Coverage    coverage         `json:"coverage"`
	Travel      shot.Travel      `json:"travel"`
	Resolution  shot.Resolution  `json:"resolution"`
	Swing       *shot.Swing      `json:"swing,omitempty"` // none for rods and solid balls
	Sharpness   shot.Sharpness   `json:"sharpness"`
	Stack       *shot.Stack      `json:"stack,omitempty"`     // none for what falls, and where none will do
	Stackable   *shot.Stackable  `json:"stackable,omitempty"` // what one would do to, where none will do
	FringePx    float64          `json:"fringe_px,omitempty"` // 0 where the material's dispersion is not known

	Choices []layout.Choice `json:"choices,omitempty"` // prints that numbers of sheets near the plan's hold

	Light    *shot.LightFigures `json:"light,omitempty"`    // none without lamps
	Shot     Shot               `json:"shot"`               // the figures that decide it, in short
	Exposure *shot.Exposure     `json:"exposure,omitempty"` // none where ISO or exposure are not known
	Motion   *shot.Motion       `json:"motion,omitempty"`   // none where the drop's speed is not known
}

// coverage is what the frame sees of the board, with what mends it.
type coverage struct {
	shot.Coverage
	Remedies shot.Remedies `json:"remedies"`
}

// Figures are the plan's, in a format of that version.
func (r *Report) Figures(version int) Figures {
	return Figures{
		Version: version, Plan: r.shot.Plan, DarkRim: r.rim(), MirroredRim: r.mirror(), Sensitivity: r.sensitivity(),
		Coverage: coverage{r.coverage(), r.remedies()}, Travel: r.travel(), Resolution: r.resolution(), Swing: r.swing(),
		Sharpness: r.sharp(), Stack: r.stack(), Stackable: r.stackable(), FringePx: r.fringePx(), Light: r.light(),
		Shot: r.Shot(), Exposure: r.exposure(), Motion: r.motion(), Choices: r.choices(),
	}
}
