package main

import (
	"context"
	"fmt"
	"path/filepath"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/job"
	"dropsheet/tile/proof"
)

// writeFilm renders the passage of a scene's drops into its folder.
func writeFilm(ctx context.Context, c console, p *ask.Proof, j job.Job, scene proof.Scene) error {
	film, err := p.Passage(scene)
	if err != nil {
		return err
	}
	told := report.Of(scene.Plan)
	c.tell(told.Warnings())
	c.warn(unseen(told, scene.Plan, nil)...)
	show := progress{console: c}
	defer show.clear()
	if err := j.WriteFilm(ctx, film, show.watch()); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.out, "film         %s\nwobble       %s\nwritten      %s of %d frames, %d x %d pixels, "+
		"and each as a picture beside it\n", job.Brightness(scene.Plan), wobbles(film.Passage),
		filepath.Join(film.Folder, job.FilmFile), film.Passage.Frames(), scene.Camera.WidthPx, scene.Camera.HeightPx)
	return err
}

// wobbles says how the drop swings in a film.
func wobbles(p shot.Passage) string {
	if p.SwingHz == 0 {
		if p.PlannedRatio == 1 {
			return "none: the drop stays round"
		}
		return fmt.Sprintf("none: the drop keeps its shape, %s times as high as wide", report.Number(p.PlannedRatio, 2))
	}
	inPlace := "round"
	if p.PlannedRatio != 1 {
		inPlace = report.Number(p.PlannedRatio, 2).String()
	}
	return fmt.Sprintf("from %s to %s times as high as wide, %s times a second; taken to be %s in the frame's middle",
		report.Number(p.FlattestRatio, 2), report.Number(1/p.FlattestRatio, 2), report.Number(p.SwingHz, 0), inPlace)
}
