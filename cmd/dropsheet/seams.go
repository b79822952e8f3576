package main

import (
	"context"
	"fmt"
	"image"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
	"dropsheet/tile/seammap"
	"dropsheet/tile/seamsight"
)

var seamsCommand = command{
	name: "seams", args: "JOB",
	summary: "where each seam falls, and whether it shows",
	about: `Tells of every seam of JOB (a job.json or its folder) where it shows most,
beside the drop and in it, how plainly, and what would hide it; the plainest
first. The flags under drop, camera and light try another set-up on the same
print; what is not given stays as in the job. --out draws the seam map of that
set-up.`,
	example: "dropsheet seams harbour-backdrop --aperture f/22",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Seams
		asked.Register(flags)
		return func(_ context.Context, c console, args []string) error { return tellSeams(c, &asked, args) }
	},
}

// tellSeams tells of a job's seams, and draws their map when it has a file to go to.
func tellSeams(c console, s *ask.Seams, args []string) error {
	path, err := only("seams", aJob, args)
	if err != nil {
		return err
	}
	j, err := job.Read(path)
	if err != nil {
		return err
	}
	c.warn(j.ChangedWarning()...)
	plan, err := s.Apply(j.Plan)
	if err != nil {
		return err
	}
	if s.Out != "" {
		if err := j.MayWrite(s.Out, s.Force, s.Artwork); err != nil {
			return err
		}
		if err := namedAs(s.Out, "a seam map", ".png"); err != nil {
			return err
		}
	}
	art, err := j.OpenArtwork(s.Artwork, s.Limits)
	if err != nil {
		return err
	}
	c.warn(art.Warning()...)
	picture, warnings := job.OnScreen(art.Picture, plan.Backdrop.Surround)
	c.warn(warnings...)
	model := seamsight.New(plan, picture, s.SeamWidthMM)
	seams := model.Seams()
	if s.Out != "" {
		draw := func() image.Image { return seammap.Draw(plan, picture, seams) }
		if err := j.WritePNG(s.Out, s.Force, draw); err != nil {
			return err
		}
	}
	told := newSeamReport(plan, model, seams, s.SeamWidthMM)
	if s.JSON {
		return writeJSON(c.out, told)
	}
	return told.write(c.out, report.Of(plan).SeamSmear(), s.Out)
}

// seamReport is what seams tells.
type seamReport struct {
	SeamWidthMM float64          `json:"seam_width_mm"`
	Camera      layout.Camera    `json:"camera"`
	Lamps       []layout.Lamp    `json:"lamps_mm,omitempty"`
	Seams       report.SeamCount `json:"seams"`
	Sights      []seamSight      `json:"sights"`       // the plainest first
	OutOfSight  []layout.Seam    `json:"out_of_sight"` // seams that neither path shows
}

// seamSight is one path's view of one seam, where it shows most.
type seamSight struct {
	layout.Seam
	Path          seamsight.Path `json:"path"`
	OnBoard       layout.Point   `json:"on_board_mm"`
	OverThreshold float64        `json:"over_threshold"`
	seamsight.Sighting
	LengthMM lengths           `json:"length_mm"`
	Remedy   *seamsight.Remedy `json:"remedy,omitempty"` // for a seam that is not hidden
}

// lengths are how much of a seam has which verdict on a path.
type lengths struct {
	ShowsMM  float64 `json:"shows"`
	FaintMM  float64 `json:"faint"`
	HiddenMM float64 `json:"hidden"`
}

func newSeamReport(p layout.Plan, m *seamsight.Model, seams []seamsight.Seam, seamMM float64) seamReport {
	ranked := seamsight.WorstFirst(seams)
	r := seamReport{
		SeamWidthMM: seamMM, Camera: p.Camera, Lamps: p.Lamps, Seams: seamsight.Count(seams),
		Sights: make([]seamSight, len(ranked)), OutOfSight: []layout.Seam{},
	}
	var shown []seamsight.Ranked // being ranked, they come first
	for i, view := range ranked {
		length := func(v seamsight.Verdict) float64 { return view.Seam.LengthMM(view.Path, v) }
		r.Sights[i] = seamSight{
			Seam: view.Seam.Seam, Path: view.Path, OnBoard: view.Seam.Place(view.Sample.MiddleMM()),
			Sighting: view.Sighting(), OverThreshold: view.Sighting().OverThreshold(),
			LengthMM: lengths{length(seamsight.Shows), length(seamsight.Faint), length(seamsight.Hidden)},
		}
		if view.Sighting().Verdict > seamsight.Hidden {
			shown = append(shown, view)
		}
	}
	for i, remedy := range m.Remedies(shown) {
		r.Sights[i].Remedy = &remedy
	}
	for _, s := range seams {
		if s.Verdict() == seamsight.OutOfSight {
			r.OutOfSight = append(r.OutOfSight, s.Seam)
		}
	}
	return r
}

// whereSeen says in a word where a path shows a seam.
var whereSeen = map[seamsight.Path]string{seamsight.Through: "drop", seamsight.Direct: "beside"}

// write tells the report to people, on a screen of 80 columns. smear is what it leaves out, or nil; out is the map that
// was drawn, empty for none.
func (r seamReport) write(w io.Writer, smear report.Text, out string) error {
	var b strings.Builder
	line := func(hang int, format string, values ...any) {
		b.WriteString(fold(fmt.Sprintf(format, values...), hang, helpColumns) + "\n")
	}
	fact := func(key string, value any) { line(factColumns, "%-*s%v", factColumns, key, value) }
	fact("seams", fmt.Sprintf("bare paper edge of %s, %s, focus %s, seen pixel for pixel", report.Fine(r.SeamWidthMM),
		report.Stop(r.Camera.FNumber), r.Camera.Focus))
	fact("verdict", r.Seams.Summary())
	if smear != nil {
		fact("smear", smear)
	}
	if len(r.Sights) > 0 {
		line(0, "\n%-7s %5s %8s  %-6s %-11s %11s %11s %5s %5s", "verdict", "times", "contrast", "where", "seam",
			"board", "frame", "wide", "blur")
	}
	for _, s := range r.Sights {
		line(0, "%-7s %5.1f %8.3f  %-6s %-11s %5.0f,%5.0f %5.0f,%5.0f %5.2f %5.1f", s.Verdict, s.OverThreshold,
			s.Contrast, whereSeen[s.Path], strings.Join(s.Between[:], "|"), s.OnBoard.XMM, s.OnBoard.YMM, s.Frame.XPx,
			s.Frame.YPx, s.WidthPx, s.BlurPx)
		if s.Remedy != nil {
			line(8, "%8s%s", "", report.SeamRemedy(*s.Remedy).Text())
		}
	}
	if len(r.Sights) > 0 {
		line(7, "\ntimes: contrast as a multiple of what is just seen in the picture there; from 1 it is faint, from 3 it "+
			"shows")
		line(7, "where: in the drop, or beside it; board in mm from its top left corner, frame, wide (the edge) and blur in "+
			"pixels of the frame")
	}
	if r.Seams.Shows+r.Seams.Faint > 0 {
		for _, note := range report.RemedyNotes() {
			line(0, "%s", note)
		}
	}
	if out != "" {
		fmt.Fprintf(&b, "%-*s%s\n", factColumns, "written", out)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// writeSeen says in a line how many of the seams of the job in a folder show.
func writeSeen(w io.Writer, seams []seamsight.Seam, folder string) error {
	if len(seams) == 0 {
		return nil
	}
	return writeFact(w, "", fmt.Sprintf("%s: dropsheet seams %s tells where, and what hides them",
		seamsight.Count(seams).Seen(), report.Typed(folder)))
}
