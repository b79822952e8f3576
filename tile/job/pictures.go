package job

import (
	"cmp"
	"context"
	"fmt"
	"image"
	"io"
	"runtime/debug"
	"sync"

	"dropsheet/layout"
	"dropsheet/tile/guide"
	"dropsheet/tile/job/place"
	"dropsheet/tile/proof"
	"dropsheet/tile/raster"
	"dropsheet/tile/seammap"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"
)

// ProofSidePx is the most pixels of the longer side of a proof that nobody asked more of.
const ProofSidePx = 1920

// The guide's view of the drop: its side, as long as the camera's within what looks well on paper and what costs
// little, and how many drops wide it is, the drop with a little of what is beside it.
const (
	dropViewLeastPx = 320
	dropViewMostPx  = 640
	dropViewDrops   = 1.15
)

// The close-up beside the proof: its side at most, no longer than the camera's own, and in how many times fewer pixels
// each way it is traced. A lens blurs a
// drop that fills the frame over several of these, at any stop: more would cost much of make's time and show nothing.
const (
	closeUpSidePx = 1200
	closeUpCoarse = 2
)

// writePictures writes what shows the job: guide, seam map, proof and close-up.
func (m *making) writePictures(ctx context.Context) error {
	plan := m.job.Plan
	m.seams = seamsight.New(plan, m.picture, SeamWidthMM).Seams()
	seams := seammap.Draw(plan, m.picture, m.seams)
	// The map is packed while views of the drop are made. Its pixels, which are many, are not kept for the guide.
	var mapping sync.WaitGroup
	var unmapped error
	mapping.Go(func() { unmapped = m.write("seams.png", writePNG(func() image.Image { return seams })) })
	shown, unpacked := guide.PackSeamMap(plan, seams)
	view := dropView(plan, m.picture)
	looks, err := bothLooks(plan, m.picture, view)
	if err != nil {
		m.watch.warn(fmt.Sprintf("the guide does not show both looks side by side: %v", err))
	}
	mapping.Wait()
	if err := cmp.Or(ctx.Err(), unpacked, unmapped); err != nil {
		return err
	}
	debug.FreeOSMemory() // no picture that comes is as large as the map, and its memory would lie idle at the peak
	told := guide.Job{
		Name: m.job.Name, CheckCode: m.job.CheckCode, Plan: plan, Paper: m.GuidePaper,
		PPI:     m.job.Print.Grid.Resolution(plan.PictureOnBoard()).PixelsPerInch(),
		Picture: m.picture, SeamMap: shown, Told: m.told,
		DropView: view, Looks: looks,
	}
	if err := m.write("guide.pdf", func(w io.Writer) error { return guide.Write(w, told) }); err != nil {
		return err
	}
	if guide.HasRays(plan) {
		if err := m.write(place.RaysFile, func(w io.Writer) error { return guide.WriteRays(w, told) }); err != nil {
			return err
		}
	}
	scene := proof.Scene{Plan: plan, Camera: proof.Reduced(plan.Camera, ProofSidePx), Picture: m.picture,
		SeamWidthMM: SeamWidthMM}.AsRecorded()
	if err := m.write("proof.png", func(w io.Writer) error {
		frame, err := Render(ctx, scene, m.watch)
		if err != nil {
			return err
		}
		return writePNG(func() image.Image { return frame })(w)
	}); err != nil {
		return err
	}
	return m.write(place.CloseUpFile, func(w io.Writer) error {
		// of the proof's shot, which has told what clips
		sidePx := min(closeUpSidePx, max(plan.Camera.WidthPx, plan.Camera.HeightPx))
		scene.Camera = proof.CloseUp(plan, max(1, sidePx/closeUpCoarse), dropViewDrops)
		frame, err := render(ctx, scene, m.watch)
		if err != nil {
			return err
		}
		large := raster.Resized(frame, sidePx, sidePx)
		return writePNG(func() image.Image { return large })(w)
	})
}

// dropView is the guide's close-up of what the drop shows.
func dropView(p layout.Plan, picture *texture.Texture) image.Image {
	sidePx := max(dropViewLeastPx, min(max(p.Camera.WidthPx, p.Camera.HeightPx), dropViewMostPx))
	return proof.Pinhole(p, proof.CloseUp(p, sidePx, dropViewDrops), picture)
}

// bothLooks are such close-ups with the picture bulged and straight, for a job that bends it; printed is the
// job's own. For any other job there are none.
func bothLooks(p layout.Plan, picture *texture.Texture, printed image.Image) (looks [2]image.Image, err error) {
	if p.Picture.Look == layout.Bulged {
		return looks, nil
	}
	for i, look := range [2]layout.Look{layout.Bulged, layout.Straight} {
		if look == p.Picture.Look {
			looks[i] = printed
			continue
		}
		other, err := p.WithLook(look)
		if err != nil {
			return [2]image.Image{}, fmt.Errorf("%s, %w", look, err)
		}
		looks[i] = dropView(other, picture)
	}
	return looks, nil
}
