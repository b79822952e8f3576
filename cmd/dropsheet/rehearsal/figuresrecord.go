package rehearsal

import (
	"math"
	"slices"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// figuresRecord is what size tells: in words, and as its --json has it.
type figuresRecord struct {
	head
	Facts    []fact         `json:"facts"`
	Warnings []string       `json:"warnings"`
	Stops    stopTable      `json:"stops"`
	Ladder   []rung         `json:"ladder"`
	Catches  []catch        `json:"catches"`
	Figures  report.Figures `json:"figures"`
}

// fact is a fact of the report in plain words.
type fact struct {
	Key  string `json:"key"`
	Name string `json:"name,omitempty"`
	Text string `json:"text"`
	Asks bool   `json:"asks,omitempty"`
}

// stopTable is the report's table of stops.
type stopTable struct {
	Intro string     `json:"intro"`
	Heads []string   `json:"heads"`
	Rows  [][]string `json:"rows"`
}

// rung is a stop of the ladder, with what blurs the frame there, in its pixels.
type rung struct {
	FNumber     float64 `json:"f_number"`
	Mark        string  `json:"mark"`
	Own         bool    `json:"own"`
	Light       float64 `json:"light_stops"` // against the plan's own
	Defocus     float64 `json:"defocus_px"`
	Diffraction float64 `json:"diffraction_px"`
	Smear       float64 `json:"smear_px"`
}

func newFiguresRecord(s *set, p layout.Plan) figuresRecord {
	told := report.Of(p)
	r := figuresRecord{head: head{Kind: "figures"}, Warnings: append([]string{}, s.notes...),
		Figures: told.Figures(job.Version), Catches: catches(s, p)}
	for _, f := range told.Facts() {
		r.Facts = append(r.Facts, fact{f.Key, f.Name, job.Printable(f.Text.String()), f.Asks})
	}
	warnings := told.Warnings()
	if s.subject.Extent.Page == 0 { // a page has no pixels of its own
		warnings = slices.Concat(warnings, told.TooCoarse(s.part.Dx(), s.part.Dy()))
	}
	for _, w := range warnings {
		r.Warnings = append(r.Warnings, job.Printable(w.String()))
	}
	table := told.Stops()
	r.Stops = stopTable{Intro: told.StopsIntro().Capital().String(), Heads: table.Heads}
	for _, row := range table.Rows {
		var cells []string
		for _, c := range row.Cells {
			cells = append(cells, c.String())
		}
		r.Stops.Rows = append(r.Stops.Rows, cells)
	}
	r.Ladder = ladder(p, r.Figures)
	return r
}

// ladder is the stops that the report tells of, each with what defocus, diffraction and motion blur.
func ladder(p layout.Plan, f report.Figures) (rungs []rung) {
	for _, line := range f.Sharpness.Stops {
		camera := p.Camera
		camera.FNumber = line.FNumber
		at := line.Best
		switch camera.Focus {
		case layout.FocusEdge:
			at = line.Edge
		case layout.FocusPicture:
			at = line.Picture
		case layout.FocusWhole:
			at = line.Whole
		}
		airyPx := camera.AiryPx()
		worstPx := p.WorstPx(at.Blur)
		rungs = append(rungs, rung{FNumber: line.FNumber, Mark: report.Stop(line.FNumber).String(), Own: line.Current,
			Light:   line.ExposureStops,
			Defocus: math.Sqrt(max(0, worstPx*worstPx-airyPx*airyPx)), Diffraction: airyPx, Smear: f.Shot.SmearPx})
	}
	return rungs
}

// catch is a distance up to which a number of sheets do, at the fill.
type catch struct {
	Sheets     int     `json:"sheets"`
	DistanceMM float64 `json:"distance_mm"`
}

// mostCatches bounds how many are looked for, each side of the plan's own.
const mostCatches = 3

// catches are those round the plan's own number of sheets, in rising order.
func catches(s *set, p layout.Plan) (all []catch) {
	setup := s.order.Setup
	setup.Fill, setup.DistanceMM, setup.Print = p.Picture.Fill, 0, layout.Size{}
	own := p.Backdrop.Columns * p.Backdrop.Rows
	last := 0.0
	for n := max(1, own-2*mostCatches); n <= own+2*mostCatches && len(all) < 2*mostCatches; n++ {
		setup.MaxSheets = n
		sized, err := setup.Sized()
		if err != nil || sized.Drop.DistanceMM <= last*(1+1e-6) {
			continue // as many do no more than fewer
		}
		last = sized.Drop.DistanceMM
		all = append(all, catch{n, math.Floor(last)})
	}
	return all
}
