package main

import (
	"context"
	"fmt"
	"image"
	"math"
	"path/filepath"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/job"
)

var proofCommand = command{
	name: "proof", args: "JOB",
	summary: "what the camera will record, as a picture",
	about: `Renders what the camera will record of JOB (a job.json or its folder) by tracing rays from the lens
through the drop: blur, diffraction, light lost in the drop, lamps, seams. The flags under drop,
camera and light try another set-up on the same print; what is not given stays as in the job. The
proof has the job's pixels, at most 1920 a side, unless --pixels says otherwise.`,
	example: "dropsheet proof harbour-backdrop --frame-width 9mm --aperture f/22",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Proof
		asked.Register(flags)
		return func(ctx context.Context, c console, args []string) error { return writeProof(ctx, c, &asked, args) }
	},
}

// writeProof renders a proof into its file.
func writeProof(ctx context.Context, c console, p *ask.Proof, args []string) error {
	path, err := only("proof", aJob, args)
	if err != nil {
		return err
	}
	j, err := job.Read(path)
	if err != nil {
		return err
	}
	c.warn(j.ChangedWarning()...)
	plan, err := p.Apply(j.Plan)
	if err != nil {
		return err
	}
	art, err := j.OpenArtwork(p.Artwork, p.MaxPixels)
	if err != nil {
		return err
	}
	if p.Out == "" {
		p.Out = filepath.Join(j.Folder(), "proof-trial.png")
	}
	if err := j.MayWrite(p.Out, p.Force, p.Artwork); err != nil {
		return err
	}
	if err := namedAs(p.Out, "a proof", ".png"); err != nil {
		return err
	}
	picture, warnings := job.OnScreen(art, plan.Backdrop.Surround)
	c.warn(warnings...)
	scene := p.Scene(plan, picture)
	show := progress{console: c}
	defer show.clear()
	frame, err := job.Render(ctx, scene, show.watch())
	if err != nil {
		return err
	}
	if err := j.WritePNG(p.Out, p.Force, func() image.Image { return frame }); err != nil {
		return err
	}
	c.tell(report.Of(plan).Warnings())
	c.warn(unseen(plan, p.Drops)...)
	camera := scene.Camera
	focus := fmt.Sprintf("f/%g, focus %s", camera.FNumber, camera.Focus)
	if p.Sharp {
		focus = "everything in focus"
	}
	_, err = fmt.Fprintf(c.out, "written      %s, %d x %d pixels, the drop %.0f of them across; %s\n",
		p.Out, camera.WidthPx, camera.HeightPx, 2*plan.Sight().ApparentRadiusMM()/camera.PixelMM(), focus)
	return err
}

// unseen says what the picture does not show and the shot would.
func unseen(plan layout.Plan, drops []layout.Point) (warnings []string) {
	if f := shot.Of(plan).LightFigures(); f != nil {
		for _, g := range f.Glares {
			if g.Seen {
				warnings = append(warnings, fmt.Sprintf("shiny paper would mirror lamp %d to frame pixel %.0f, %.0f of %d x "+
					"%d; the proof does not draw glare", g.Lamp, g.Frame.XPx, g.Frame.YPx, plan.Camera.WidthPx, plan.Camera.HeightPx))
			}
		}
	}
	halfWidthMM, halfHeightMM := plan.Sight().OutlineMM()
	for _, at := range drops {
		if math.Abs(at.XMM)-halfWidthMM > plan.Camera.FrameWidthMM/2 ||
			math.Abs(at.YMM)-halfHeightMM > plan.Camera.FrameHeightMM/2 {
			warnings = append(warnings, fmt.Sprintf("at %g, %g mm the %s is out of the frame, which is %.1f x %.1f mm there",
				at.XMM, at.YMM, report.Body(plan.Drop), plan.Camera.FrameWidthMM, plan.Camera.FrameHeightMM))
		}
	}
	return warnings
}
