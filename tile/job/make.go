package job

import (
	"cmp"
	"context"
	"encoding/hex"
	"fmt"
	"image"
	"io"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job/place"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"
)

// Made is a job that was made, with what was worked out on the way.
type Made struct {
	Job
	Seen []seamsight.Seam // how the camera sees the seams
	Told *report.Report   // what there is to say of its plan
}

// Make makes the whole job, and puts its folder in place when all of it is there. When it fails or ctx ends it leaves
// nothing behind, and what was there before stays.
func Make(ctx context.Context, o Order, w Watch) (Made, error) {
	if err := o.Asked.check(); err != nil {
		return Made{}, WrongWords(err)
	}
	// A setup that can't be, or a folder that can't be used, is told before the picture is decoded.
	m := making{Order: o, watch: w}
	var remove func()
	var err error
	if m.at, remove, err = o.takeIn(ctx); err != nil {
		return Made{}, err
	}
	defer remove()
	plans, err := m.prepare()
	if err != nil {
		return Made{}, err
	}
	folder, err := place.NewFolder(o.Folder, o.Force, o.outside())
	if err != nil {
		return Made{}, err
	}
	m.folder = folder
	err = m.writeFiles(ctx, plans)
	if err == nil {
		err = ctx.Err()
	}
	if err == nil || ctx.Err() == nil {
		err = cmp.Or(folder.Gone(), err) // which says what else failed by it
	}
	if err == nil {
		err = folder.Finish()
	}
	if err != nil {
		if left := folder.Discard(); left != nil {
			w.warn(left.Error())
		}
		return Made{}, err
	}
	return Made{m.job, m.seams, m.told}, nil
}

// making is a job on its way into its folder.
type making struct {
	Order
	watch  Watch
	at     string        // where the artwork is read: a file of its own for one that is piped in
	folder *place.Folder // unfinished
	extent Extent
	part   image.Rectangle // of the artwork, in its pixels

	art     *artwork.Picture // the part that is printed
	picture *texture.Texture // the same, for pictures on screen
	hung    *layout.Hanging
	job     Job
	seams   []seamsight.Seam // as the camera sees them
	told    *report.Report
}

// prepare finds out what can be known before the artwork is decoded: its size, the part that is the picture, and the
// ways to lay the paper.
func (m *making) prepare() (plans []layout.Plan, err error) {
	if m.extent, err = ReadExtent(m.at, m.Page, m.Limits); err != nil {
		return nil, OfPiped(m.Artwork, m.at, err)
	}
	if m.part, err = m.Order.part(m.extent); err != nil {
		return nil, err
	}
	if plans, err = m.plans(m.part); err != nil || m.extent.Page == 0 {
		return plans, err
	}
	m.extent = m.drawnFor(plans[0], m.extent, m.part)
	if m.part, err = m.Order.part(m.extent); err != nil {
		return nil, err
	}
	return m.plans(m.part) // whose proportions are those of whole pixels
}

// writeFiles writes the job's files into the unfinished folder. The plans are the ways to lay the paper, one of which
// is taken.
func (m *making) writeFiles(ctx context.Context, plans []layout.Plan) error {
	if err := m.keepArtwork(ctx); err != nil {
		return err
	}
	whole, err := m.open()
	if err != nil {
		return err
	}
	if err := m.plan(ctx, whole, plans); err != nil {
		return err
	}
	if err := m.writeSheets(ctx); err != nil {
		return err
	}
	if err := m.writePictures(ctx); err != nil {
		return err
	}
	if m.job.Files, err = m.fileSums(); err != nil {
		return err
	}
	return m.write(place.JobFile, m.job.Encode)
}

// open decodes the artwork.
func (m *making) open() (whole *artwork.Picture, err error) {
	if whole, err = m.extent.read(m.source(), m.Artwork, newReading(m.Setup.Background, m.Limits)); err != nil {
		return nil, err
	}
	if now, err := m.Crop.Pixels(whole.Size()); err != nil || now != m.part {
		return nil, fmt.Errorf("artwork %q changed while it was read\nhint: try again when nothing writes to it", m.Artwork)
	}
	if m.From != nil && hex.EncodeToString(whole.SHA256[:]) != m.From.Artwork.SHA256 {
		return nil, fmt.Errorf("artwork %q changed while it was read\nhint: try again when nothing writes to it", m.Artwork)
	}
	m.watch.warn(whole.Warnings...)
	if m.art, err = whole.Crop(m.part); err != nil {
		return nil, fmt.Errorf("artwork %q changed while it was read: %w", m.Artwork, err)
	}
	return whole, nil
}

// plan takes one of the plans, places its seams and puts the job together.
func (m *making) plan(ctx context.Context, whole *artwork.Picture, plans []layout.Plan) error {
	var warnings []string
	m.picture, warnings = OnScreen(m.art, plans[0].Backdrop.Surround)
	m.watch.warn(warnings...)
	plan, placed, err := m.PlaceSeams(ctx, plans, m.picture)
	if err != nil {
		return err
	}
	plan, placed = layout.Rounded(plan), layout.Rounded(placed)
	m.watch.warn(placed.warnings(len(plan.Sheets))...)
	m.told = report.Of(plan)
	m.warnOf(plan)
	w, h := m.art.Size()
	m.hung = plan.Hang()
	grid := newGrid(plan, m.hung, w, h, m.PPI.of(shot.Of(plan).Resolution()))
	print := Print{Grid: grid, Part: newPixelRect(m.part), Lossless: m.Lossless, InksByProfile: whole.InksByProfile,
		Dithered: whole.Dithered}
	if whole.Transparent {
		print.TransparentOn = m.Setup.Background
	}
	m.job, err = newJob(plan, whole, m.extent.Page, m.Order, m.folder.Final(), print)
	if err != nil {
		return err
	}
	if err := m.job.checkSheets(); err != nil {
		return WrongWords(fmt.Errorf("%w\nhint: print coarser, with a lower --ppi, or on smaller paper", err))
	}
	m.job.Placement, m.job.Shot = placed, layout.Rounded(m.told.Shot())
	return nil
}

// warnOf warns of what about the plan spoils the shot or the print.
func (m *making) warnOf(plan layout.Plan) {
	m.watch.tell(m.told.Warnings())
	if plan.Level().On() && m.art.ICC != nil {
		m.watch.warn("--level darkens by sRGB's curve, and the artwork's own colour profile may have another: check one " +
			"sheet before you print all")
	}
	m.watch.tell(m.told.TooCoarse(m.art.Size()))
	if c, ok := plan.Middle(); ok {
		if is, canBe := plan.Clear(c); canBe && !is {
			m.watch.warn(fmt.Sprintf("a seam crosses the middle of what the %s shows: --avoid 0.5,0.5,%.2g keeps it out",
				report.Body(plan.Drop), math.Ceil(100*c.RadiusMM/plan.Picture.FlatWidthMM)/100))
		}
	}
}

// write writes a file of the folder.
func (m *making) write(name string, content func(io.Writer) error) error {
	return place.WriteFile(m.folder.File(name), false, content)
}

// writeSheets writes the sheets, one a page.
func (m *making) writeSheets(ctx context.Context) error {
	sheets, warnings := m.job.sheets(m.art, m.hung)
	m.watch.warn(warnings...)
	all := m.job.Sheets
	return m.write("sheets.pdf", func(out io.Writer) error {
		return sheets.Write(ctx, out, all, func(done int) { m.watch.progress("sheet", done, len(all)) })
	})
}
