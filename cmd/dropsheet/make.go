package main

import (
	"cmp"
	"context"
	"fmt"
	"image"
	"image/png"
	"io"
	"path/filepath"
	"strings"
	"sync"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
	"dropsheet/tile/guide"
	"dropsheet/tile/job/place"
	"dropsheet/tile/proof"
	"dropsheet/tile/seammap"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"
)

// Sizes of the pictures that make writes, in pixels.
const (
	proofSidePx    = 1920 // at most, of the longer side
	dropViewSidePx = 640
)

// dropViewDrops is how many drops wide the guide's close-up is: the drop with a little of what is beside it.
const dropViewDrops = 1.15

var makeCommand = command{
	name: "make", args: "ARTWORK",
	summary: "the whole job into a folder: sheets, guide, proof, seam map, job file",
	about: `Turns ARTWORK (JPEG, PNG, TIFF, BMP, GIF or WebP) as the drop demands, cuts it into sheets and
writes a folder with
  sheets.pdf   one sheet a page, in pasting order
  guide.pdf    how to assemble them
  proof.png    what the camera will record
  seams.png    where the seams fall, on the board and in the drop
  job.json     the job, which proof, seams, reprint and check read
Any two of --distance, --print-size (or --max-sheets) and --fill give the third.`,
	example: "dropsheet make examples/harbour/harbour.jpg --distance 40cm --out harbour-backdrop",
	prepare: func(flags *pflag.FlagSet) action {
		var m making
		m.setup.register(flags)
		m.placement.register(flags)
		addPPI(flags, &m.ppi)
		flags.BoolVar(&m.setup.Level, "level", false, "print darker where the lamps give more light, so that the board "+
			"comes out even; needs --lamp")
		flags.BoolVar(&m.lossless, "lossless", false, "keep every pixel as it is, in place of JPEG, which stores colour "+
			"at half the resolution; sheets.pdf grows several times larger")
		add(flags, &m.out, "out", "folder", "", named, "folder to write, new or empty (default: the artwork's name with "+
			"-backdrop)")
		flags.BoolVar(&m.json, "json", false, "tell the job as JSON, as job.json has it")
		flags.BoolVar(&m.force, "force", false, "replace a job that is already in the folder, its reprints and "+
			"trials included")
		return m.run
	},
}

// making is what the flags of make ask for.
type making struct {
	setup                 setupFlags
	placement             placementFlags
	ppi                   ppi
	out                   string
	lossless, json, force bool

	seams []seamsight.Seam // of the plan made, as the camera sees them
}

func (m *making) run(ctx context.Context, c console, args []string) error {
	path, err := only("make", anArtwork, args)
	if err != nil {
		return err
	}
	setup, err := m.setup.setup()
	if err != nil {
		return err
	}
	if err := m.placement.check(); err != nil {
		return err
	}
	if m.out == "" {
		base := filepath.Base(path)
		m.out = strings.TrimSuffix(base, filepath.Ext(base)) + "-backdrop"
	}
	// A setup that can't be, or a folder that can't be used, is told before the picture is decoded.
	part, err := m.setup.part(path)
	if err != nil {
		return err
	}
	setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	plans, err := setup.Plans()
	if err != nil {
		return asWrongWords(err)
	}
	folder, err := place.NewFolder(m.out, m.force, path)
	if err != nil {
		return err
	}
	j, err := m.fill(ctx, c, folder, path, part, plans)
	if err == nil {
		err = ctx.Err()
	}
	if err == nil {
		err = folder.Finish()
	}
	if err != nil {
		if left := folder.Discard(); left != nil {
			c.warn(left.Error())
		}
		return err
	}
	if m.json {
		return j.encode(c.out)
	}
	return m.tell(c.out, j)
}

// fill writes the job's files into the unfinished folder: of that part of the artwork. The plans are the ways
// to lay the paper, one of which is taken.
func (m *making) fill(ctx context.Context, c console, folder *place.Folder, path string, part image.Rectangle,
	plans []layout.Plan) (job, error) {
	whole, err := artwork.Open(path, m.setup.maxPixels)
	if err != nil {
		return job{}, hintMaxPixels(err)
	}
	if now, err := m.setup.picture.crop.pixels(whole.Size()); err != nil || now != part {
		return job{}, fmt.Errorf("artwork %q changed while it was read: try again when nothing writes to it", path)
	}
	c.warn(whole.Warnings...)
	art, err := whole.Crop(part)
	if err != nil {
		return job{}, fmt.Errorf("artwork %q changed while it was read: %w", path, err)
	}
	picture, warnings := onScreen(art, plans[0].Backdrop.Surround)
	c.warn(warnings...)
	plan, placed, err := m.placement.place(plans, picture)
	if err != nil {
		return job{}, err
	}
	c.warn(placed.warnings()...)
	c.warn(lightWarnings(plan)...)
	c.warn(whitePaper(plan)...)
	c.warn(printerWarnings(plan.Backdrop)...)
	if plan.Level().On() && art.ICC != nil {
		c.warn(levelProfileWarning)
	}
	w, h := art.Size()
	resolution := shot.Of(plan).Resolution()
	c.warn(tooCoarse(resolution, w, h)...)
	hung := plan.Hang()
	grid := newGrid(plan, hung, w, h, m.ppi.of(resolution))
	j, err := newJob(plan, whole, path, folder.Final(), printing{grid, newPixelRect(part), m.lossless})
	if err != nil {
		return job{}, err
	}
	if err := j.checkSheets(); err != nil {
		return job{}, wrongWords{fmt.Errorf("%w: print coarser, with a lower --ppi, or on smaller paper", err)}
	}
	j.Placement = placed
	sheets, warnings := j.sheetJob(art, hung)
	c.warn(warnings...)
	show := progress{c, "sheet", len(plan.Sheets)}
	err = place.WriteFile(folder.File("sheets.pdf"), false, func(w io.Writer) error {
		return sheets.Write(ctx, w, plan.Sheets, show.done)
	})
	show.clear()
	if err != nil {
		return job{}, err
	}

	m.seams = seamsight.New(plan, picture, defaultSeamWidthMM).Seams()
	seams := seammap.Draw(plan, picture, m.seams)
	view := dropView(plan, picture)
	looks, err := bothLooks(plan, picture, view)
	if err != nil {
		c.warn(fmt.Sprintf("the guide does not show both looks side by side: %v", err))
	}
	if err := ctx.Err(); err != nil {
		return job{}, err
	}
	write := func(name string, fill func(io.Writer) error) error {
		return place.WriteFile(folder.File(name), false, fill)
	}
	// Guide and seam map are packed on one processor each, side by side. The proof, which takes all of them
	// and more memory, comes after.
	var mapping sync.WaitGroup
	var unmapped error
	mapping.Go(func() { unmapped = write("seams.png", writePNG(func() image.Image { return seams })) })
	unguided := write("guide.pdf", func(w io.Writer) error {
		return guide.Write(w, guide.Job{
			Name: j.Name, CheckCode: j.CheckCode, Plan: plan, PPI: grid.Resolution(plan.PictureOnBoard()).PixelsPerInch(),
			Picture: picture, SeamMap: seams,
			DropView: view, Looks: looks,
		})
	})
	mapping.Wait()
	if err := cmp.Or(unguided, unmapped); err != nil {
		return job{}, err
	}
	err = write("proof.png", func(w io.Writer) error {
		frame, err := renderScene(ctx, c, proof.Scene{Plan: plan, Camera: proof.Reduced(plan.Camera, proofSidePx),
			Picture: picture, SeamWidthMM: defaultSeamWidthMM})
		if err != nil {
			return err
		}
		return writePNG(func() image.Image { return frame })(w)
	})
	if err != nil {
		return job{}, err
	}
	if j.Files, err = fileSums(folder.File); err != nil {
		return job{}, err
	}
	if err := write(place.JobFile, j.encode); err != nil {
		return job{}, err
	}
	return j, nil
}

// dropView is the guide's close-up of what the drop shows.
func dropView(p layout.Plan, picture *texture.Texture) image.Image {
	return proof.Pinhole(p, proof.CloseUp(p, dropViewSidePx, dropViewDrops), picture)
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

// writePNG writes the picture that draw makes.
func writePNG(draw func() image.Image) func(io.Writer) error {
	return func(w io.Writer) error {
		encoder := png.Encoder{CompressionLevel: png.BestSpeed} // a few per cent larger, several times faster
		return encoder.Encode(w, draw())
	}
}

// tell says what was made.
func (m *making) tell(w io.Writer, j job) error {
	if err := writeFigures(w, j.Plan); err != nil {
		return err
	}
	if err := writePlacement(w, j.Placement, len(j.Sheets)); err != nil {
		return err
	}
	if err := writeSeen(w, m.seams, m.out); err != nil {
		return err
	}
	placed := j.Print.Grid.Resolution(j.PictureOnBoard())
	if _, err := fmt.Fprintf(w, "%-12s %s\n", "pixels", artworkLine(shot.Of(j.Plan).Resolution(), j.Print.Part.WidthPx,
		j.Print.Part.HeightPx, placed.PixelsPerMM())); err != nil {
		return err
	}
	ppi := placed.PixelsPerInch()
	_, err := fmt.Fprintf(w, "%-12s %s in %s (%.0f pixels to the inch, check code %s)\n", "written",
		strings.Join(place.Files, ", "), m.out, ppi, j.CheckCode)
	return err
}
