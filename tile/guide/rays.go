package guide

import (
	"fmt"
	"io"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/pdf"
)

// HasRays tells whether there is a page of rays of a plan: across a rod they stay in one plane, and can be drawn.
func HasRays(p layout.Plan) bool { return p.Drop.Body.Rod() }

// WriteRays writes the page of the rays as a PDF of its own. The same job gives the same bytes.
func WriteRays(w io.Writer, j Job) error {
	if err := j.check(); err != nil {
		return fmt.Errorf("the page of rays: %w", err)
	}
	b := newBook(j.document(), j, find(j), 1)
	b.arrangement = arrangement{pages: 1}
	b.spacing = 1
	b.newPage()
	b.heading("", raysTitle)
	b.rays()
	if err := b.Stream(w, b.picture); err != nil {
		return fmt.Errorf("the page of rays: %w", err)
	}
	return nil
}

const raysTitle = "The rays, to scale"

// Measures of the page of rays, in guide mm.
const (
	largeRodMM  = 23.0 // radius at most of the rod drawn large,
	rodShare    = 0.09 // and as a share of the page's height
	aboveRodMM  = 5.0
	ownRays     = 3    // lines of the table for a pupil's own
	boardWordMM = 22.0 // right of the board
	letterMM    = 4.0  // from one ray's letter to the next, at least
)

// rays draws the rod large and the bench small, both to scale, with rays on one side of the axis, and tells their
// angles. The other side is left for a pupil's own.
func (b *book) rays() {
	body, from := b.job.body(), "above: up the page is left, as the "+b.job.looker()+" sees it"
	if b.job.Plan.Drop.Body == flip.LevelRod {
		from = "the side"
	}
	b.intro("Seen from " + from + ". Rays are drawn on one half. The other is for your own pencil, ruler and protractor.")
	b.y += 1
	k := b.niceScale(min(largeRodMM, rodShare*(b.geo.bottom-b.geo.top)) / b.dropRadiusMM())
	half := k*b.dropRadiusMM() + aboveRodMM
	b.y = max(b.y, b.floor)
	b.rodLarge(layout.Rect{XMM: b.geo.left, YMM: b.y, WidthMM: b.geo.fullMM(), HeightMM: 2 * half}, k)
	b.y += 2*half + 2
	b.y = b.block(captionStyle, b.geo.left, b.y, b.geo.fullMM(), "The "+body+" at "+report.OneTo(1/k/b.geo.scale)+
		". Dashed: radii, to which i and r are measured.") + 1
	b.y = b.block(bodyStyle, b.geo.left, b.y, b.geo.fullMM(), set(b.report.RayLaw().Sentence())) + 2
	b.floor = b.y
	b.rayTable()

	const wordsMM = 7
	high := b.geo.bottom - b.y - wordsMM
	p := b.job.Plan
	wide := b.geo.fullMM() - boardWordMM - 4
	k = b.niceScale(min(wide/(p.Drop.CameraMM+p.Drop.DistanceMM), high/b.boardAcrossMM()))
	high = min(high, k*b.boardAcrossMM()+4)
	b.bench(layout.Rect{XMM: b.geo.left, YMM: b.y, WidthMM: b.geo.fullMM(), HeightMM: high}, k)
	b.y += high + 2
	b.y = b.block(captionStyle, b.geo.left, b.y, b.geo.fullMM(), "The bench at "+report.OneTo(1/k/b.geo.scale)+
		". The letters at the board are the rays; beside them is how far from the axis each meets it.")
	b.floor = b.y
}

// boardAcrossMM is the board's side in the plane of the rays.
func (b *book) boardAcrossMM() float64 {
	if b.job.Plan.Drop.Body == flip.LevelRod {
		return b.job.Plan.Backdrop.HeightMM
	}
	return b.job.Plan.Backdrop.WidthMM
}

// niceScale is the largest scale up to one that a ruler reads easily on the paper, in guide mm.
func (b *book) niceScale(most float64) float64 {
	most *= b.geo.scale
	magnitude := math.Pow(10, math.Floor(math.Log10(most)))
	best := magnitude
	for _, step := range []float64{1, 1.25, 2, 2.5, 4, 5, 10} { // 1 : 8 and 1 : 4 are 1.25 and 2.5 of a tenth
		if v := magnitude * step; v <= most*(1+1e-9) {
			best = v
		}
	}
	return best / b.geo.scale
}

// raysIn draws the rays on one side: the rod's middle at middle, k guide mm for a millimetre.
func (b *book) raysIn(middle layout.Point, k float64) {
	for _, ray := range b.report.Rays() {
		for i := 1; i < len(ray.Corners); i++ {
			from, to := onPage(middle, k, ray.Corners[i-1]), onPage(middle, k, ray.Corners[i])
			b.Line(from.XMM, from.YMM, to.XMM, to.YMM, pen(accent, 0.35))
		}
	}
}

// onPage is where a place of the plane of the rays is drawn: the axis runs to the right.
func onPage(middle layout.Point, k float64, v flip.Vec) layout.Point {
	return layout.Point{XMM: middle.XMM + k*v.Z, YMM: middle.YMM - k*v.Y}
}

// rodLarge draws the rod with the rays near it, and the angles of one of them.
func (b *book) rodLarge(box layout.Rect, k float64) {
	radius := k * b.dropRadiusMM()
	middle := layout.Point{XMM: box.XMM + 0.4*box.WidthMM, YMM: box.YMM + box.HeightMM/2}
	b.Clipped(box, func() {
		b.ring(middle.XMM, middle.YMM, radius, tint, pen(black, 0.4))
		if wall := k * b.job.Plan.Drop.WallMM; wall > 0 {
			b.ring(middle.XMM, middle.YMM, radius-wall, white, pen(black, 0.3))
		}
		b.Line(box.XMM, middle.YMM, box.RightMM(), middle.YMM, axis)
		b.raysIn(middle, k)
		rays := b.report.Rays()
		const beginMM = 9.0
		b.Fill(layout.Rect{XMM: box.XMM, YMM: box.YMM, WidthMM: beginMM, HeightMM: middle.YMM - box.YMM - 1}, white)
		above := math.Inf(1)
		for _, ray := range rays {
			in := onPage(middle, k, ray.Corners[1])
			begins := in.YMM + (in.XMM-box.XMM-beginMM)*math.Tan(ray.LeavesRad)
			above = min(begins, above-letterMM)
			b.Put(boldLabel, box.XMM+1, above+boldLabel.CapMM()/2, ray.Letter)
			b.Line(box.XMM+4, above, box.XMM+beginMM, begins, mark)
		}
		if len(rays) > 0 {
			b.angles(middle, k, rays[len(rays)/2])
		}
		b.ring(middle.XMM, middle.YMM, 0.5, black, pen(black, 0.1))
	})
}

// angles draws the radius where a ray enters, with its angles to it outside and inside.
func (b *book) angles(middle layout.Point, k float64, ray report.Ray) {
	const arcMM, wordMM, pastMM = 9.0, 12.5, 16.0
	in, next := onPage(middle, k, ray.Corners[1]), onPage(middle, k, ray.Corners[2])
	out := onPage(middle, k, ray.Corners[len(ray.Corners)-2])
	radius := math.Hypot(in.XMM-middle.XMM, in.YMM-middle.YMM)
	ux, uy := (in.XMM-middle.XMM)/radius, (in.YMM-middle.YMM)/radius
	normal := pen(grey, 0.2, 1.4, 1)
	b.Line(middle.XMM, middle.YMM, in.XMM+pastMM*ux, in.YMM+pastMM*uy, normal)
	b.Line(middle.XMM, middle.YMM, out.XMM, out.YMM, normal)
	arc := func(from, to, at float64, word string) {
		to = from + math.Remainder(to-from, 2*math.Pi)
		const steps = 12
		place := func(rad, mm float64) layout.Point {
			sin, cos := math.Sincos(rad)
			return layout.Point{XMM: in.XMM + mm*cos, YMM: in.YMM + mm*sin}
		}
		for i := range steps {
			p := place(from+(to-from)*float64(i)/steps, at)
			q := place(from+(to-from)*float64(i+1)/steps, at)
			b.Line(p.XMM, p.YMM, q.XMM, q.YMM, pen(black, 0.25))
		}
		middle := place((from+to)/2, at+wordMM-arcMM)
		b.PutMiddle(boldLabel, middle.XMM, middle.YMM+boldLabel.CapMM()/2, word)
	}
	outward := math.Atan2(uy, ux)
	arc(outward, math.Pi-ray.LeavesRad, arcMM, "i")
	inward := math.Atan2(-uy, -ux)
	arc(inward, math.Atan2(next.YMM-in.YMM, next.XMM-in.XMM), arcMM, "r")
}

// bench draws pupil, rod, board and rays.
func (b *book) bench(box layout.Rect, k float64) {
	p := b.job.Plan
	middle := layout.Point{XMM: box.XMM + 2 + k*p.Drop.CameraMM, YMM: box.YMM + box.HeightMM/2}
	pupil, board := middle.XMM-k*p.Drop.CameraMM, middle.XMM+k*p.Drop.DistanceMM
	half := k * b.boardAcrossMM() / 2
	b.Line(pupil, middle.YMM, board, middle.YMM, axis)
	b.Fill(layout.Rect{XMM: board, YMM: middle.YMM - half, WidthMM: 1.2, HeightMM: 2 * half}, accent)
	b.ring(middle.XMM, middle.YMM, k*b.dropRadiusMM(), tint, pen(black, 0.3))
	b.raysIn(middle, k)
	b.Polygon(black, pdf.Pen{}, layout.Point{XMM: pupil - 0.8, YMM: middle.YMM - 1.6},
		layout.Point{XMM: pupil - 0.8, YMM: middle.YMM + 1.6}, layout.Point{XMM: pupil, YMM: middle.YMM})
	b.Put(captionStyle, pupil, middle.YMM+5, b.job.looker())
	b.PutMiddle(captionStyle, middle.XMM, middle.YMM+k*b.dropRadiusMM()+4.6, b.job.body())
	above := math.Inf(1)
	rays := b.report.Rays()
	for i := range rays { // from the outermost in, where it is lowest on the page
		ray := rays[len(rays)-1-i]
		end := ray.Corners[len(ray.Corners)-1]
		above = min(onPage(middle, k, end).YMM, above-letterMM)
		b.Put(boldLabel, board+3, above+boldLabel.CapMM()/2, ray.Letter)
		b.Put(labelStyle, board+7, above+labelStyle.CapMM()/2, b.length(math.Abs(end.Y)))
	}
}

// rayTable sets the rays' figures over the whole width.
func (b *book) rayTable() {
	typeset := typesetTable(b.report.RayTable(ownRays)).stretched(b.geo.fullMM())
	typeset.wide = true
	b.table(typeset)
}
