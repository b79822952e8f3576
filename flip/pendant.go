package flip

import (
	"errors"
	"fmt"
	"math"
	"sync"
)

// pendant is the shape of a drop that hangs, held by a level circle: a surface of revolution about the upright.
//
// Frame: h is the height above the drop's tip, mm, and q(h) the square of the radius there. Young and Laplace: the
// surface's two curvatures add up to what they do at the tip, 2/R, less the height over the square of the capillary
// length, since inside the pressure falls with the height (Bashforth and Adams, An Attempt to Test the Theories of
// Capillary Action, 1883, whose beta is -(R/capillary length)² here). With p = q'/2 and w = √(q + p²), the length
// of the normal from surface to axis, one curvature is 1/w and the other (p² - q p')/w³, so that
//
//	q' = 2p,  q p' = p² - w³ (2/R - h/a² - 1/w).
//
// Both q and p are smooth from the tip on and past the neck, where the radius itself is not.
type pendant struct {
	tipRadiusMM    float64 // of curvature at the tip
	capillaryMM    float64
	halfWidthMM    float64 // at the equator
	equatorMM      float64 // its height above the tip
	heldMM         float64 // the held circle's radius
	topMM          float64 // its height above the tip
	inwardMM       float64 // height above the tip from where on the side bends toward the neck; topMM where it does not
	volumeMM3      float64
	steps          float64 // pieces to the square root of a millimetre of height
	pieces         []piece
	curvedUpMM     float64 // radius of curvature along the upright, at the equator
	belowA, belowB float64 // q at and below the tip: belowA h + belowB h²
}

// piece is q from one knot to the next, by the quintic that has q, q' and q” of both: powers of the share of the way.
type piece struct {
	fromMM, perMM float64
	power         [6]float64
}

// onProfile is a place of a profile: q and p.
type onProfile struct{ q, p float64 }

// bend is p' there; h is above 0.
func (m onProfile) bend(h, tipRadiusMM, capillaryMM float64) float64 {
	w2 := m.q + m.p*m.p
	w := math.Sqrt(w2)
	return (m.p*m.p - w2*w*(2/tipRadiusMM-h/(capillaryMM*capillaryMM)) + w2) / m.q
}

// tipPowers are the first powers of h in p/R, with h in shares of R: 1 + a h + b h², by putting them into the
// equation.
func tipPowers(tipRadiusMM, capillaryMM float64) (a, b float64) {
	m := tipRadiusMM * tipRadiusMM / (capillaryMM * capillaryMM) / 4
	return m - 1, m * (2 + 7*m) / 6
}

// nearTip is the profile so near the tip that three powers tell it.
func nearTip(h, tipRadiusMM, capillaryMM float64) onProfile {
	a, b := tipPowers(tipRadiusMM, capillaryMM)
	x, r := h/tipRadiusMM, tipRadiusMM
	return onProfile{r * r * x * (2 + x*(a+x*b*2/3)), r * (1 + x*(a+x*b))}
}

// climb goes from a height to another by one step of Runge and Kutta's fourth order, in the square root of the height:
// in it steps are short near the tip.
func (m onProfile) climb(from, to, tipRadiusMM, capillaryMM float64) onProfile {
	root, step := math.Sqrt(from), math.Sqrt(to)-math.Sqrt(from)
	slope := func(root float64, m onProfile) onProfile {
		return onProfile{4 * root * m.p, 2 * root * m.bend(root*root, tipRadiusMM, capillaryMM)}
	}
	on := func(by onProfile, k float64) onProfile { return onProfile{m.q + k*by.q, m.p + k*by.p} }
	k1 := slope(root, m)
	k2 := slope(root+step/2, on(k1, step/2))
	k3 := slope(root+step/2, on(k2, step/2))
	k4 := slope(root+step, on(k3, step))
	return onProfile{m.q + step/6*(k1.q+2*k2.q+2*k3.q+k4.q), m.p + step/6*(k1.p+2*k2.p+2*k3.p+k4.p)}
}

// Steps of a profile.
const (
	pendantPieces   = 512
	stepsAPiece     = 4
	searchSteps     = 1000 // to the height where a search gives up
	mostCapillaries = 8.0  // that height, in capillary lengths; no neck lies so high
)

// profile is what a search finds of a profile of such a tip: where it is widest, and where, from there on, it has first
// come in to the held radius, before its neck.
type profile struct {
	equatorMM, halfWidthMM, topMM float64
	widest, held                  bool // whether there is such a place
}

// follow goes up a profile.
func follow(tipRadiusMM, capillaryMM, heldMM float64) (out profile) {
	most := math.Min(mostCapillaries*capillaryMM, 8*tipRadiusMM*(1+tipRadiusMM/capillaryMM))
	at := func(k int) float64 { return most * float64(k*k) / (searchSteps * searchSteps) }
	m := nearTip(at(1), tipRadiusMM, capillaryMM)
	for k := 1; k < searchSteps; k++ {
		from, to := at(k), at(k+1)
		next := m.climb(from, to, tipRadiusMM, capillaryMM)
		crosses := func(of func(onProfile) float64) float64 {
			low, high := from, to
			for range 60 {
				middle := (low + high) / 2
				if of(m.climb(from, middle, tipRadiusMM, capillaryMM)) > 0 {
					low = middle
				} else {
					high = middle
				}
			}
			return (low + high) / 2
		}
		switch {
		case !out.widest && next.p <= 0:
			out.widest, out.equatorMM = true, crosses(func(m onProfile) float64 { return m.p })
			out.halfWidthMM = math.Sqrt(m.climb(from, out.equatorMM, tipRadiusMM, capillaryMM).q)
			if out.halfWidthMM <= heldMM {
				return out
			}
			fallthrough
		case out.widest:
			if held := func(m onProfile) float64 { return m.q - heldMM*heldMM }; !(held(next) > 0) {
				out.held, out.topMM = true, crosses(held)
				return out
			}
			if next.p >= 0 { // past the neck
				return out
			}
		}
		m = next
	}
	return out
}

// Bounds of what is looked for: a drop much smaller than the capillary length is a ball to the last digit.
const (
	leastHeldShare = 0.02 // the held width, of the drop's
	leastWaist     = 1e-3 // by how much of the held width the drop is wider
	tipHalvings    = 60
)

// errNoLiquid is a drop of a liquid of which it is not known how it holds together.
var errNoLiquid = errors.New("the shape of a hanging drop goes by its liquid's density and surface tension, which " +
	"are " +
	"known of those with a name and not of a bare index\nhint: name the liquid (--liquid)")

// newPendant is the drop of a width, of those that the held width carries. Of a family of profiles, by the curvature
// at the tip, each is as wide as no other; on its way in from the equator it meets the held circle before its neck. As
// the liquid runs in, the drop goes through these one by one and its volume grows; beyond the last no such drop is.
func newPendant(widthMM, heldWidthMM, capillaryMM float64) (*pendant, error) {
	switch {
	case !(capillaryMM > 0):
		return nil, errNoLiquid
	case !(heldWidthMM > 0 && heldWidthMM >= leastHeldShare*widthMM):
		return nil, fmt.Errorf("a drop %gmm wide can't hang from %gmm\n"+
			"hint: give the width where it is held, at least %.2fmm "+
			"(--held)", widthMM, heldWidthMM, leastHeldShare*widthMM)
	case widthMM <= heldWidthMM*(1+leastWaist):
		return nil, fmt.Errorf("a drop %gmm wide held by %gmm is no wider than what holds it, and shows no more than a "+
			"cap\nhint: "+
			"give a narrower holder (--held) or a wider drop", widthMM, heldWidthMM)
	}
	half, held := widthMM/2, heldWidthMM/2
	tip := tipOf(half, capillaryMM)
	found := follow(tip, capillaryMM, held)
	if !found.held {
		widestMM := WidestHangingMM(heldWidthMM, capillaryMM)
		if widestMM < heldWidthMM*(1+leastWaist) {
			return nil, fmt.Errorf("no drop of this liquid that hangs from %gmm is wider than that, and shows more than a "+
				"cap\nhint: "+
				"give a narrower holder (--held)", heldWidthMM)
		}
		return nil, fmt.Errorf("a drop of this liquid %gmm wide does not hang from %gmm: it falls off before, at most "+
			"%.2fmm wide\nhint: give a smaller drop, or a wider holder (--held)", widthMM, heldWidthMM, widestMM)
	}
	return tabulated(tip, capillaryMM, held, found), nil
}

// tipOf is the radius of curvature at the tip of a drop that is half so wide.
func tipOf(halfWidthMM, capillaryMM float64) float64 {
	low, high := halfWidthMM/4, halfWidthMM
	for range tipHalvings {
		middle := (low + high) / 2
		if p := follow(middle, capillaryMM, 0); !p.widest || p.halfWidthMM > halfWidthMM {
			high = middle
		} else {
			low = middle
		}
	}
	return (low + high) / 2
}

// WidestHangingMM is the width of the widest drop that a held width carries, for a liquid of that capillary length.
func WidestHangingMM(heldWidthMM, capillaryMM float64) float64 {
	held := heldWidthMM / 2
	low, high := tipOf(held, capillaryMM), 2*capillaryMM
	widest := held
	for range tipHalvings {
		middle := (low + high) / 2
		if p := follow(middle, capillaryMM, held); p.held {
			low, widest = middle, p.halfWidthMM
		} else {
			high = middle
		}
	}
	return 2 * widest
}

// HangingWidthMM is the width of the drop of that volume, in mm³, that a held width carries, for a liquid of that
// capillary length; lengths in mm. It returns an error where a drop of that volume falls off, is no more than a cap, or
// the liquid is not known.
func HangingWidthMM(volumeMM3, heldWidthMM, capillaryMM float64) (float64, error) {
	if !(capillaryMM > 0) {
		return 0, errNoLiquid
	}
	const inside = 1e-9 // of the width: within the ends of the family, and the end of the search
	low, high := heldWidthMM*(1+leastWaist)*(1+inside), WidestHangingMM(heldWidthMM, capillaryMM)*(1-inside)
	least, err := newPendant(low, heldWidthMM, capillaryMM)
	if err != nil {
		return 0, err
	}
	most, err := newPendant(high, heldWidthMM, capillaryMM)
	switch {
	case err != nil:
		return 0, err
	case volumeMM3 < least.volumeMM3:
		return 0, fmt.Errorf("a drop of %.3gµl shows no more than a cap below %gmm\n"+
			"hint: give a narrower holder (--held), or more than %.3gµl", volumeMM3, heldWidthMM, least.volumeMM3)
	case volumeMM3 > most.volumeMM3:
		return 0, fmt.Errorf("a drop of %.3gµl does not hang from %gmm: it falls off before, at most %.3gµl large\n"+
			"hint: give a smaller drop, or a wider holder (--held)", volumeMM3, heldWidthMM, most.volumeMM3)
	}
	for high-low > inside*high {
		middle := (low + high) / 2
		p, err := newPendant(middle, heldWidthMM, capillaryMM)
		if err != nil {
			return 0, err
		}
		if p.volumeMM3 < volumeMM3 {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2, nil
}

// tabulated works the found profile out in pieces.
func tabulated(tipRadiusMM, capillaryMM, heldMM float64, found profile) *pendant {
	p := &pendant{tipRadiusMM: tipRadiusMM, capillaryMM: capillaryMM, halfWidthMM: found.halfWidthMM,
		equatorMM: found.equatorMM, heldMM: heldMM, topMM: found.topMM, inwardMM: found.topMM,
		steps: pendantPieces / math.Sqrt(found.topMM), pieces: make([]piece, pendantPieces)}
	a, _ := tipPowers(tipRadiusMM, capillaryMM)
	p.belowA, p.belowB = 2*tipRadiusMM, a
	height := func(k, of int) float64 { return found.topMM * float64(k*k) / float64(of*of) }
	from, m, bend, side := 0.0, onProfile{0, tipRadiusMM}, a, 1/tipRadiusMM
	for k := range p.pieces {
		to := height(k+1, pendantPieces)
		next := nearTip(to, tipRadiusMM, capillaryMM)
		if k > 0 {
			next = m
			at := from
			for n := range stepsAPiece {
				on := height(k*stepsAPiece+n+1, pendantPieces*stepsAPiece)
				next = next.climb(at, on, tipRadiusMM, capillaryMM)
				at = on
			}
		}
		nextBend := next.bend(to, tipRadiusMM, capillaryMM)
		p.pieces[k] = newPiece(from, to, m, next, bend, nextBend)
		p.volumeMM3 += math.Pi * p.pieces[k].sum()
		// The side bends inward where its own curvature changes sign, between here and there on a straight line.
		sideways := 2/tipRadiusMM - to/(capillaryMM*capillaryMM) - 1/math.Sqrt(next.q+next.p*next.p)
		if to > found.equatorMM && p.inwardMM == found.topMM && sideways < 0 {
			p.inwardMM = from + (to-from)*side/(side-sideways)
		}
		side = sideways
		from, m, bend = to, next, nextBend
	}
	p.curvedUpMM = 1 / (2/tipRadiusMM - found.equatorMM/(capillaryMM*capillaryMM) - 1/found.halfWidthMM)
	return p
}

// newPiece is the quintic (Hermite's, of value, slope and bend at both ends).
func newPiece(from, to float64, a, b onProfile, bendA, bendB float64) piece {
	l := to - from
	v0, s0, c0 := a.q, 2*a.p*l, bendA*l*l // c is half of q'' times l², and q'' is twice p'
	d, s1, c1 := b.q-v0-s0-c0, 2*b.p*l-s0-2*c0, bendB*l*l-c0
	return piece{from, 1 / l, [6]float64{v0, s0, c0, 10*d - 4*s1 + c1, -15*d + 7*s1 - 2*c1, 6*d - 3*s1 + c1}}
}

// sum is the integral of q over the piece.
func (c *piece) sum() (sum float64) {
	for k, v := range c.power {
		sum += v / float64(k+1)
	}
	return sum / c.perMM
}

// at is q, q' and q” at a height. Below the tip it goes on as a parabola, above the held circle as its cylinder.
func (p *pendant) at(h float64) (q, slope, bend float64) {
	switch {
	case !(h > 0): // of a ray straight up it is no number
		return h * (p.belowA + h*p.belowB), p.belowA + 2*h*p.belowB, 2 * p.belowB
	case h >= p.topMM:
		return p.heldMM * p.heldMM, 0, 0
	}
	c := &p.pieces[min(int(math.Sqrt(h)*p.steps), pendantPieces-1)]
	t := (h - c.fromMM) * c.perMM
	w := &c.power
	q, slope = w[5]*t+w[4], w[5]
	for k := 3; k >= 0; k-- { // Horner's rule, for value, slope and half the bend
		bend = bend*t + slope
		slope = slope*t + q
		q = q*t + w[k]
	}
	return q, slope * c.perMM, 2 * bend * c.perMM * c.perMM
}

// known are shapes that were worked out.
var known = struct {
	sync.Mutex
	shapes map[[3]float64]*pendant
}{shapes: map[[3]float64]*pendant{}}

// mostKnown are as many as are kept: more than a plan and what is tried on it take.
const mostKnown = 64

// pendant is the shape of the drop, which hangs; nil where there is none such.
func (d Drop) pendant() *pendant {
	key := [3]float64{d.DiameterMM, d.HeldMM, d.CapillaryMM}
	known.Lock()
	defer known.Unlock()
	p, found := known.shapes[key]
	if !found {
		p, _ = newPendant(d.DiameterMM, d.HeldMM, d.CapillaryMM)
		if len(known.shapes) >= mostKnown {
			clear(known.shapes)
		}
		known.shapes[key] = p
	}
	return p
}

// CheckHanging refuses a hanging drop that can't be.
func (d Drop) CheckHanging() error {
	_, err := newPendant(d.DiameterMM, d.HeldMM, d.CapillaryMM)
	return err
}

// CapillaryMM is the capillary length, the root of surface tension over density and gravity: what sizes of hanging
// drops go by. 0 where the liquid is not known.
func (l Liquid) CapillaryMM() float64 {
	const standardGravityMPerS2, mmPerM = 9.80665, 1000
	if !l.Known() {
		return 0
	}
	return mmPerM * math.Sqrt(l.TensionNPerM/((l.DensityKgPerM3-airKgPerM3)*standardGravityMPerS2))
}

// airKgPerM3 is the density of air at 20 degrees Celsius and one atmosphere, which carries so much of a drop (CRC
// Handbook of Chemistry and Physics; from memory).
const airKgPerM3 = 1.204
