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

// shown is what a proof shows of a plan besides the plan's own: where drops fall, how it is rendered.
type shown struct {
	Sharp       bool // a pinhole
	SeamWidthMM float64
	Drops       []layout.Point
	Samples     int
}

func (s *shown) register(flags *pflag.FlagSet) {
	flags.BoolVar(&s.Sharp, "sharp", false, "a pinhole: everything in focus, no diffraction")
	add(flags, &s.SeamWidthMM, "seam-width", "length", usualSeamWidth, zeroOrMore,
		"width of the bare paper edge that shows at seams, 0mm for none")
	addList(flags, &s.Drops, "drop-at", "X,Y", dropPlace, "where a drop is, measured from the axis: right, down, such as "+
		"0.5mm,-1mm; repeat it for more (default: one on the axis)")
	add(flags, &s.Samples, "samples", "N", fmt.Sprint(proof.DefaultSamples), samples,
		fmt.Sprintf("rays for each pixel inside the drop, 1 to %d; more are smoother and slower", maxSamples))
}

// check refuses drops of a plan that overlap, which would be one.
func (s *shown) check(plan layout.Plan) error {
	halfWidthMM, halfHeightMM := plan.Sight().OutlineMM()
	for i, a := range s.Drops {
		for _, b := range s.Drops[:i] {
			if math.Hypot((a.XMM-b.XMM)/halfWidthMM, (a.YMM-b.YMM)/halfHeightMM) < 2 {
				return job.WrongWords(fmt.Errorf("drops at %g, %g mm and at %g, %g mm overlap, and would run "+
					"into one\nhint: put them further apart than they are wide", b.XMM, b.YMM, a.XMM, a.YMM))
			}
		}
	}
	return nil
}

// scene is what to render of a plan, as it is recorded.
func (s *shown) scene(plan layout.Plan, camera layout.Camera, picture *texture.Texture) proof.Scene {
	return proof.Scene{
		Plan: plan, Camera: camera, Picture: picture,
		SeamWidthMM: s.SeamWidthMM, Drops: s.Drops, Sharp: s.Sharp, Samples: s.Samples,
	}.AsRecorded()
}

// samples reads a number of rays.
func samples(s string) (int, error) {
	n, err := wholeFromOne(s)
	if err != nil || n > maxSamples {
		return 0, fmt.Errorf("%q is out of range\nhint: take a whole number from 1 to %d", s, maxSamples)
	}
	return n, nil
}
