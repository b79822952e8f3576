package ask

import (
	"fmt"
	"math"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
	"dropsheet/tile/proof"
	"dropsheet/tile/texture"
)

// maxSamples bounds the rays for a pixel: far past what can be seen.
const maxSamples = 4096

// Proof is what proof is asked for.
type Proof struct {
	whatIf
	Sharp       bool // a pinhole
	SeamWidthMM float64
	Drops       []layout.Point
	Samples     int
	jobArtwork
	Out   string
	Force bool
}

// Register adds the words to a set of flags.
func (p *Proof) Register(flags *pflag.FlagSet) {
	p.whatIf.register(flags)
	flags.BoolVar(&p.Sharp, "sharp", false, "a pinhole: everything in focus, no diffraction")
	add(flags, &p.SeamWidthMM, "seam-width", "length", usualSeamWidth, zeroOrMore,
		"width of the bare paper edge that shows at seams, 0mm for none")
	addList(flags, &p.Drops, "drop-at", "X,Y", dropPlace, "where a drop is, measured from the axis: right, down, such as "+
		"0.5mm,-1mm; repeat it for more (default: one on the axis)")
	add(flags, &p.Samples, "samples", "N", fmt.Sprint(proof.DefaultSamples), samples,
		fmt.Sprintf("rays for each pixel inside the drop, 1 to %d; more are smoother and slower", maxSamples))
	p.jobArtwork.register(flags)
	add(flags, &p.Out, "out", "file", "", named, "file to write (default: proof-trial.png in the job's folder)")
	flags.BoolVar(&p.Force, "force", false, "replace the file if it exists")
}

// Apply is the plan as the words would have it. Drops that overlap are refused, which would be one.
func (p *Proof) Apply(plan layout.Plan) (layout.Plan, error) {
	plan, err := p.whatIf.Apply(plan)
	if err != nil {
		return layout.Plan{}, err
	}
	halfWidthMM, halfHeightMM := plan.Sight().OutlineMM()
	for i, a := range p.Drops {
		for _, b := range p.Drops[:i] {
			if math.Hypot((a.XMM-b.XMM)/halfWidthMM, (a.YMM-b.YMM)/halfHeightMM) < 2 {
				return layout.Plan{}, job.WrongWords(fmt.Errorf("drops at %g, %g mm and at %g, %g mm overlap, and would run "+
					"into one: put them further apart than they are wide", b.XMM, b.YMM, a.XMM, a.YMM))
			}
		}
	}
	return plan, nil
}

// Scene is what to render of a plan that Apply gave: with fewer pixels than its camera has, unless those were asked
// for.
func (p *Proof) Scene(plan layout.Plan, picture *texture.Texture) proof.Scene {
	camera := plan.Camera
	if !p.flags.Changed("pixels") {
		camera = proof.Reduced(camera, job.ProofSidePx)
	}
	return proof.Scene{
		Plan: plan, Camera: camera, Picture: picture,
		SeamWidthMM: p.SeamWidthMM, Drops: p.Drops, Sharp: p.Sharp, Samples: p.Samples,
	}
}

// samples reads a number of rays.
func samples(s string) (int, error) {
	n, err := wholeFromOne(s)
	if err != nil || n > maxSamples {
		return 0, fmt.Errorf("%q is out of range: take a whole number from 1 to %d", s, maxSamples)
	}
	return n, nil
}
