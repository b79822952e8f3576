package ask

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/job"
)

// FromPlan is words that come as near as can be to a job of a format that kept none, made up from its plan: flags and
// values each by itself, as MakeWords has them. same tells that print, board and sheets come out of them as they were;
// what the plan does not hold, such as --ppi, is not known.
func FromPlan(j job.Job) (words []string, same bool) {
	asked := planWords(j)
	return MakeWords(asked), comesBack(j, asked)
}

// planWords are the words of a job's plan. Lengths are told to the micrometre, and the distance never rounded up: the
// largest print that so many sheets hold would ask for more of them.
func planWords(j job.Job) job.Asked {
	p, b, c := j.Plan, j.Backdrop, j.Camera
	size := func(w, h float64) string { return units.Typed(w) + "x" + units.Typed(h) }
	share := func(v float64) string { return strconv.FormatFloat(v, 'g', 9, 64) }
	all := job.Asked{
		"drop": {units.Typed(p.Drop.DiameterMM)}, "distance": {units.Typed(downTo(p.Drop.DistanceMM))},
		"fill": {share(p.Picture.Fill)}, "look": {p.Picture.Look.String()}, "paper": {b.Paper.Name},
		"orientation": {string(b.Orientation)}, "lap": {units.Typed(b.LapMM)}, "light-from": {string(b.LightFrom)},
		"camera-distance": {units.Typed(p.Drop.CameraMM)}, "frame-width": {units.Typed(c.FrameWidthMM)},
		"sensor": {size(c.Sensor.WidthMM, c.Sensor.HeightMM)}, "pixels": {fmt.Sprintf("%dx%d", c.WidthPx, c.HeightPx)},
		"aperture": {"f/" + share(c.FNumber)}, "focus": {string(c.Focus)}, "sharp-to": {share(c.SharpToPx)},
	}
	put := func(there bool, flag string, words ...string) {
		if there {
			all[flag] = words
		}
	}
	liquid := p.Drop.Material
	if liquid == "" {
		liquid = share(p.Drop.Index)
	}
	put(true, "liquid", liquid)
	put(p.Drop.Body != flip.Ball, "body", p.Drop.Body.String())
	put(p.Drop.HeldMM != 0, "held", units.Typed(p.Drop.HeldMM))
	put(p.Drop.HeightOverWidth != 0, "oblate", share(p.Drop.HeightOverWidth))
	put(p.Drop.TravelMM != 0, "travel", units.Typed(p.Drop.TravelMM))
	put(c.FrameRate != 0, "frame-rate", share(c.FrameRate))

	f := p.Picture.Framing
	put(f.Round, "round", "true")
	put(!f.Round, "fit", string(p.Picture.Fit))
	put(f.TurnDeg != 0, "turn", share(f.TurnDeg))
	put(f.OffX != 0 || f.OffY != 0, "centre", share(f.OffX+0.5)+","+share(f.OffY+0.5))
	part, w, h := j.Print.Part, float64(j.Artwork.WidthPx), float64(j.Artwork.HeightPx)
	put(part.WidthPx != j.Artwork.WidthPx || part.HeightPx != j.Artwork.HeightPx, "crop", strings.Join([]string{
		share(float64(part.X) / w), share(float64(part.Y) / h), share(float64(part.WidthPx) / w),
		share(float64(part.HeightPx) / h)}, ","))
	put(j.Artwork.Page > 1, "page", strconv.Itoa(j.Artwork.Page))

	put(b.FillOnly, "background", b.Surround.Word())
	put(!b.FillOnly && b.Surround != "", "surround", b.Surround.Word())
	put(!b.FillOnly && b.Surround != "" && b.Board() != p.PictureOnBoard(), "surround-size", size(b.WidthMM, b.HeightMM))
	if b.Printer != nil {
		put(true, "printer", b.Printer.Name)
	} else {
		put(true, "margin", units.Typed(b.MarginMM))
	}
	for _, l := range p.Lamps {
		all["lamp"] = append(all["lamp"], strings.Join([]string{units.Typed(l.XMM), units.Typed(l.YMM), units.Typed(l.ZMM)},
			","))
	}
	put(len(p.LevelledFor) > 0, "level", "true")
	put(j.Placement.Rule == layout.SeamsEven, "seams", string(layout.SeamsEven))
	for _, a := range j.Placement.Avoid {
		all["avoid"] = append(all["avoid"], share(a.X)+","+share(a.Y)+","+share(a.Radius))
	}
	put(j.Print.Lossless, "lossless", "true")
	return all
}

// downTo is a length rounded down to the micrometre, but for what is off by the nanometre that jobs are rounded to.
func downTo(mm float64) float64 { return math.Floor(mm*1000+0.001) / 1000 }

// comesBack tells whether words come to the job's print, distance, board and sheets, to a tenth of a millimetre.
func comesBack(j job.Job, asked job.Asked) bool {
	var m Make
	flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
	m.Register(flags)
	for flag, words := range asked {
		for _, word := range words {
			if flag == "printer" {
				continue // as it was read then
			}
			if flags.Lookup(flag) == nil || Set(flags, flag, word) != nil {
				return false
			}
		}
	}
	setup, err := m.read()
	if err != nil {
		return false
	}
	part, err := m.picture.crop.Pixels(j.Artwork.WidthPx, j.Artwork.HeightPx)
	if err != nil {
		return false
	}
	setup.Printer = j.Backdrop.Printer
	setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	is, err := setup.Plan()
	if err != nil {
		return false
	}
	near := func(a, b float64) bool { return math.Abs(a-b) < 0.1 }
	was := j.Plan
	return near(is.Picture.WidthMM, was.Picture.WidthMM) && near(is.Picture.HeightMM, was.Picture.HeightMM) &&
		near(is.Drop.DistanceMM, was.Drop.DistanceMM) && near(is.Backdrop.WidthMM, was.Backdrop.WidthMM) &&
		near(is.Backdrop.HeightMM, was.Backdrop.HeightMM) && is.Backdrop.Paper == was.Backdrop.Paper &&
		is.Backdrop.Columns == was.Backdrop.Columns && is.Backdrop.Rows == was.Backdrop.Rows
}
