package main

import (
	"context"
	"fmt"
	"image"
	"math"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/job"
	"dropsheet/tile/proof"
)

// usualSeamWidth is what --seam-width stands at.
var usualSeamWidth = fmt.Sprintf("%gmm", job.SeamWidthMM)

// maxSamples bounds the rays for a pixel: far past what can be seen.
const maxSamples = 4096

var proofCommand = command{
	name: "proof", args: "JOB",
	summary: "what the camera will record, as a picture",
	about: `Renders what the camera will record of JOB (a job.json or its folder) by tracing rays from the lens
through the drop: blur, diffraction, light lost in the drop, lamps, seams. The flags under drop,
camera and light try another set-up on the same print; what is not given stays as in the job. The
proof has the job's pixels, at most 1920 a side, unless --pixels says otherwise.`,
	example: "dropsheet proof harbour-backdrop --frame-width 9mm --aperture f/22",
	prepare: func(flags *pflag.FlagSet) action {
		var p proofing
		p.whatIf.register(flags)
		flags.BoolVar(&p.sharp, "sharp", false, "a pinhole: everything in focus, no diffraction")
		add(flags, &p.seamWidthMM, "seam-width", "length", usualSeamWidth, zeroOrMore,
			"width of the bare paper edge that shows at seams, 0mm for none")
		flags.Var(&placesValue{&p.drops}, "drop-at", "where a drop is, measured from the axis: right, down, such as "+
			"0.5mm,-1mm; repeat it for more (default: one on the axis)")
		add(flags, &p.samples, "samples", "N", fmt.Sprint(proof.DefaultSamples), samples,
			fmt.Sprintf("rays for each pixel inside the drop, 1 to %d; more are smoother and slower", maxSamples))
		add(flags, &p.artwork, "artwork", "file", "", named, "file that the artwork has moved to (default: where the "+
			"job says)")
		addMaxPixels(flags, &p.maxPixels)
		add(flags, &p.out, "out", "file", "", named, "file to write (default: proof-trial.png in the job's folder)")
		flags.BoolVar(&p.force, "force", false, "replace the file if it exists")
		return p.run
	},
}

// proofing is what the flags of proof ask for.
type proofing struct {
	whatIf       whatIf
	sharp        bool
	seamWidthMM  float64
	drops        []layout.Point
	samples      int
	artwork, out string
	maxPixels    int
	force        bool
}

func (p *proofing) run(ctx context.Context, c console, args []string) error {
	path, err := only("proof", aJob, args)
	if err != nil {
		return err
	}
	j, err := job.Read(path)
	if err != nil {
		return err
	}
	c.warn(j.ChangedWarning()...)
	plan, err := p.whatIf.apply(j.Plan)
	if err != nil {
		return err
	}
	if err := p.apart(plan); err != nil {
		return err
	}
	art, err := j.OpenArtwork(p.artwork, p.maxPixels)
	if err != nil {
		return err
	}
	if p.out == "" {
		p.out = filepath.Join(j.Folder(), "proof-trial.png")
	}
	if err := j.MayWrite(p.out, p.force, p.artwork); err != nil {
		return err
	}
	if err := namedAs(p.out, "a proof", ".png"); err != nil {
		return err
	}
	camera := plan.Camera
	if !p.whatIf.flags.Changed("pixels") {
		camera = proof.Reduced(camera, job.ProofSidePx)
	}
	picture, warnings := job.OnScreen(art, plan.Backdrop.Surround)
	c.warn(warnings...)
	scene := proof.Scene{
		Plan: plan, Camera: camera, Picture: picture,
		SeamWidthMM: p.seamWidthMM, Drops: p.drops, Sharp: p.sharp, Samples: p.samples,
	}
	show := progress{console: c}
	defer show.clear()
	frame, err := job.Render(ctx, scene, show.watch())
	if err != nil {
		return err
	}
	if err := j.WritePNG(p.out, p.force, func() image.Image { return frame }); err != nil {
		return err
	}
	c.tell(report.Of(plan).Warnings())
	c.warn(p.unseen(plan)...)
	focus := fmt.Sprintf("f/%g, focus %s", camera.FNumber, camera.Focus)
	if p.sharp {
		focus = "everything in focus"
	}
	_, err = fmt.Fprintf(c.out, "written      %s, %d x %d pixels, the drop %.0f of them across; %s\n",
		p.out, camera.WidthPx, camera.HeightPx, 2*plan.Sight().ApparentRadiusMM()/camera.PixelMM(), focus)
	return err
}

// unseen says what the picture does not show and the shot would.
func (p *proofing) unseen(plan layout.Plan) (warnings []string) {
	if f := shot.Of(plan).LightFigures(); f != nil {
		for _, g := range f.Glares {
			if g.Seen {
				warnings = append(warnings, fmt.Sprintf("shiny paper would mirror lamp %d to frame pixel %.0f, %.0f of %d x "+
					"%d; the proof does not draw glare", g.Lamp, g.Frame.XPx, g.Frame.YPx, plan.Camera.WidthPx, plan.Camera.HeightPx))
			}
		}
	}
	halfWidthMM, halfHeightMM := plan.Sight().OutlineMM()
	for _, at := range p.drops {
		if math.Abs(at.XMM)-halfWidthMM > plan.Camera.FrameWidthMM/2 ||
			math.Abs(at.YMM)-halfHeightMM > plan.Camera.FrameHeightMM/2 {
			warnings = append(warnings, fmt.Sprintf("at %g, %g mm the %s is out of the frame, which is %.1f x %.1f mm there",
				at.XMM, at.YMM, report.Body(plan.Drop), plan.Camera.FrameWidthMM, plan.Camera.FrameHeightMM))
		}
	}
	return warnings
}

// apart refuses drops that overlap, which would be one.
func (p *proofing) apart(plan layout.Plan) error {
	halfWidthMM, halfHeightMM := plan.Sight().OutlineMM()
	for i, a := range p.drops {
		for _, b := range p.drops[:i] {
			if math.Hypot((a.XMM-b.XMM)/halfWidthMM, (a.YMM-b.YMM)/halfHeightMM) < 2 {
				return job.WrongWords(fmt.Errorf("drops at %g, %g mm and at %g, %g mm overlap, and would run into one: put them "+
					"further apart than they are wide", b.XMM, b.YMM, a.XMM, a.YMM))
			}
		}
	}
	return nil
}

// dropPlace reads two lengths joined by a comma.
func dropPlace(s string) (layout.Point, error) {
	left, right, ok := strings.Cut(s, ",")
	x, errX := units.ParseLength(left)
	y, errY := units.ParseLength(right)
	if !ok || errX != nil || errY != nil {
		return layout.Point{}, fmt.Errorf("%q is not a place: write two lengths, such as 0.5mm,-1mm", s)
	}
	return layout.Point{XMM: x, YMM: y}, nil
}

// samples reads a number of rays.
func samples(s string) (int, error) {
	n, err := wholeFromOne(s)
	if err != nil || n > maxSamples {
		return 0, fmt.Errorf("%q is out of range: take a whole number from 1 to %d", s, maxSamples)
	}
	return n, nil
}
