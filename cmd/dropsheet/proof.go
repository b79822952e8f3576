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
	"dropsheet/tile/job"
	"dropsheet/tile/proof"
)

var proofCommand = command{
	name: "proof", args: "JOB",
	summary: "what the camera will record, as a picture",
	about: `Renders what the camera will record of JOB (a job.json or its folder) by tracing
rays from the lens through the drop: blur, diffraction, smear, light lost in the
drop, lamps, seams. The flags under drop, camera, exposure and light try another
set-up on the same print; what is not given stays as in the job. The proof has
the job's pixels, at most 1920 a side, unless --pixels says otherwise. Its
brightness is chosen so that white paper is white, unless ISO, exposure and the
lamps' lux are known: then it is as bright as it will be recorded, and dropsheet
says how much of it is clipped or black. --film renders every frame of the
drop's passage; it needs --frame-rate, and --fall or --speed.`,
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
	if p.Film == "" {
		if p.Out == "" {
			p.Out = filepath.Join(j.Folder(), "proof-trial.png")
		}
		if err := j.MayWrite(p.Out, p.Force, p.Artwork); err != nil {
			return err
		}
		if err := namedAs(p.Out, "a proof", ".png"); err != nil {
			return err
		}
	}
	art, err := j.OpenArtwork(p.Artwork, p.Limits)
	if err != nil {
		return err
	}
	c.warn(art.Warning()...)
	picture, warnings := job.OnScreen(art.Picture, plan.Backdrop.Surround)
	c.warn(warnings...)
	scene := p.Scene(plan, picture)
	if p.Film != "" {
		return writeFilm(ctx, c, p, j, scene)
	}
	show := progress{console: c}
	defer show.clear()
	frame, err := job.Render(ctx, scene, show.watch())
	if err != nil {
		return err
	}
	if err := j.WritePNG(p.Out, p.Force, func() image.Image { return frame }); err != nil {
		return err
	}
	return tellProof(c, p, scene)
}

// tellProof says what the frame that was written shows, and what not.
func tellProof(c console, p *ask.Proof, scene proof.Scene) error {
	plan := scene.Plan
	told := report.Of(plan)
	c.tell(told.Warnings())
	c.warn(unseen(told, plan, p.Drops)...)
	camera := scene.Camera
	focus := fmt.Sprintf("%s, focus %s", report.Stop(camera.FNumber), camera.Focus)
	if p.Sharp {
		focus = "everything in focus"
	}
	if err := writeGlance(c.out, shortened(told.Glance(), "SEE", "LIGHT", "TIME", "CHECK")); err != nil {
		return err
	}
	text := fmt.Sprintf("proof        %s\nwritten      %s, %d x %d pixels, the %s %s of them across; %s",
		job.Brightness(plan), p.Out, camera.WidthPx, camera.HeightPx, report.Body(plan.Drop),
		report.Number(2*plan.Sight().ApparentRadiusMM()/camera.PixelMM(), 0), focus)
	_, err := fmt.Fprintln(c.out, folded(c.out, factColumns, text))
	return err
}

// unseen says what the picture does not show and the shot would.
func unseen(r *report.Report, plan layout.Plan, drops []layout.Point) (warnings []string) {
	for _, f := range r.All("glare.seen") {
		warnings = append(warnings, f.Text.String()+"; the proof does not draw glare")
	}
	halfWidthMM, halfHeightMM := plan.Sight().OutlineMM()
	for _, at := range drops {
		if math.Abs(at.XMM)-halfWidthMM > plan.Camera.FrameWidthMM/2 ||
			math.Abs(at.YMM)-halfHeightMM > plan.Camera.FrameHeightMM/2 {
			warnings = append(warnings, fmt.Sprintf("at %s, %s the %s is out of the frame, which is %s there",
				report.Number(at.XMM, 2), report.Fine(at.YMM), report.Body(plan.Drop),
				report.Size(plan.Camera.FrameWidthMM, plan.Camera.FrameHeightMM)))
		}
	}
	return warnings
}
