package proof

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// skin is what a drop throws on in place of letting it through: its front mirrors the board, and inside light is
// thrown back. Toward the drop's middle that is too little to be seen.
type skin struct {
	fromShare float64 // of the drop's visible radius, from which on it is traced
	aims      []aim
	// inside tells that what was thrown back inside may come from the board, as with drops that hardly bend light. Water
	// turns all of it to the dark room.
	inside  bool
	ghostOn float32 // see ghostOn
}

// skinShare is the rays for the skin of a pixel inside the drop, as a share of those through it: the skin adds a small
// part of the light there, and squeezes what it shows.
const (
	skinShare     = 0.25
	leastSkinRays = 4
)

// newSkin prepares the skin, where a pixel inside the drop has so many rays.
func (v *view) newSkin(samples int) skin {
	s := skin{aims: v.lens.aim(raySet(max(min(leastSkinRays, samples), int(float64(samples)*skinShare))))}
	incidence := v.sight.MirrorsFromRad(math.Hypot(v.surface.CentreMM.XMM, v.surface.CentreMM.YMM))
	// The mirrored room may show earlier, where what comes through the drop is black.
	for i := incidence; i > 0 && v.sight.Drop.Reflectance(i)*float64(board.Room[1]) > layout.HalfLevel; i -= 0.01 {
		incidence = i
	}
	// Of a drop that is pressed flat the normal leans over earlier: tan incidence = tan t / k, sin t the share.
	k := min(1, v.outline.HeightMM/v.outline.WidthMM)
	if v.sight.Drop.Body.Rod() {
		k = 1
	}
	s.fromShare = math.Sin(math.Atan(k*math.Tan(incidence))) - v.edgeBlurMM/min(v.outline.WidthMM, v.outline.HeightMM)
	s.inside, s.ghostOn = v.bringsBoardInside(s.fromShare), ghostOn(v.sight.Drop)
	return s
}

// bringsBoardInside tells whether light that was thrown back inside a drop comes from the board, from such a share of
// its radius on: by rays straight across, and for a ball straight up.
func (v *view) bringsBoardInside(fromShare float64) bool {
	const steps = 200
	for n := range steps {
		share := fromShare + (1-fromShare)*(float64(n)+0.5)/steps
		for _, p := range []layout.Point{{XMM: share * v.outline.WidthMM}, {YMM: share * v.outline.HeightMM}} {
			if math.IsInf(p.XMM, 0) || math.IsInf(p.YMM, 0) {
				continue // along a rod
			}
			ways, _ := v.tracer.Thrown(v.sight.PinholeRay(p.XMM, p.YMM))
			for _, way := range ways[flip.OnceInside:] {
				x, y, ok := v.tracer.OnBoard(way.Ray)
				onIt := math.Abs(x) < v.surface.CentreMM.XMM && math.Abs(y) < v.surface.CentreMM.YMM
				if ok && way.Share > layout.HalfLevel && onIt {
					return true
				}
			}
		}
	}
	return false
}

// skinPixel is the light that a drop's skin throws to a pixel whose rays all meet it, and which lies at most so far
// outside the drop's edge.
func (v *view) skinPixel(i, j int, at, drop layout.Point, mostMM float64) (sum texture.Light) {
	if 1+mostMM/min(v.outline.WidthMM, v.outline.HeightMM) < v.skin.fromShare {
		return texture.Light{}
	}
	if v.draft && !v.moves() && !v.skin.inside {
		if light, ok := v.draftSkin(at, drop); ok {
			return light
		}
	}
	spread := v.mirrorSpread(at, drop)
	for k := range v.skin.aims {
		a := &v.skin.aims[k]
		sum = sum.Add(v.thrown(v.lens.ray(i, j, a), v.met(at, drop, a), spread.patch(a)))
	}
	return sum.Scale(1 / float32(len(v.skin.aims)))
}

// ghostOn is the light on which white that a drop throws back inside twice, near its middle, is half a level of 255: by
// the slope of sRGB's curve, 1.055/2.4 light^(-7/12) (IEC 61966-2-1). That is 0.0004 of white for water, on 0.016, and
// 0.0016 for glass of index 1.5, on 0.17.
func ghostOn(drop flip.Drop) float32 {
	back := drop.Reflectance(0)
	return float32(math.Pow(255*1.055/2.4*back*back/0.5, 12.0/7))
}

// ghostPixel is the light of a pixel that was thrown back inside twice, further in than the skin is traced: the board
// once more, small. On anything but black it is too little to be told.
func (v *view) ghostPixel(i, j int, at, drop layout.Point, through texture.Light) texture.Light {
	if min(through[0], through[1], through[2]) > v.skin.ghostOn || v.share(at, drop) >= v.skin.fromShare {
		return texture.Light{}
	}
	ways, ok := v.tracer.Thrown(fromDrop(v.lens.ray(i, j, &aim{}), drop))
	if !ok {
		return texture.Light{}
	}
	// Near the axis rays thrown back twice are turned by 6/n - 2 of their incidence, those that go through by 2 - 2/n.
	smaller := (3 - v.sight.Drop.Index) / (v.sight.Drop.Index - 1)
	spread := v.throughSpread(i, j, at, drop)
	return v.comesBy(ways[flip.TwiceInside], drop, board.Patch{
		XX: smaller * smaller * (spread.pixel.XX + spread.pupil.XX),
		XY: smaller * smaller * (spread.pixel.XY + spread.pupil.XY),
		YY: smaller * smaller * (spread.pixel.YY + spread.pupil.YY),
	})
}

// thrown is the light along a ray that a drop throws on, each ray of which stands for such a patch of the mirrored
// board. What runs away from the board, or past it, shows the dark room.
func (v *view) thrown(r flip.Ray, drop layout.Point, over board.Patch) (light texture.Light) {
	if v.skin.inside {
		ways, _ := v.tracer.Thrown(fromDrop(r, drop))
		for _, way := range ways {
			light = light.Add(v.comesBy(way, drop, over))
		}
		return light
	}
	front, kept, ok := v.tracer.Mirrored(fromDrop(r, drop))
	if !ok {
		return texture.Light{}
	}
	return v.comesBy(front, drop, over).Add(board.Room.Scale(float32(kept)))
}

// comesBy is the light that comes by one way.
func (v *view) comesBy(way flip.Thrown, drop layout.Point, over board.Patch) texture.Light {
	if way.Share < layout.HalfLevel {
		return texture.Light{}
	}
	from := board.Room
	if x, y, ok := v.tracer.OnBoard(way.Ray); ok {
		from = v.landed(x+drop.XMM, y+drop.YMM, over, nil)
	}
	return from.Scale(float32(way.Share))
}

// mirrorSpread is how far apart a pixel's rays land on the board that the front of a drop mirrors. Light that was
// thrown back inside is taken to spread alike.
func (v *view) mirrorSpread(at, drop layout.Point) spread {
	if r := ringsOf(v.mirrors, drop); r != nil {
		read := r.at
		if v.draft {
			read = r.about
		}
		if k, ok := read(at); ok {
			return v.spread(&k.slopes)
		}
	}
	s, _ := v.slopesOf(v.within(at, drop), drop, func(r flip.Ray) (layout.Point, bool) {
		p, _, ok := v.mirrored(r)
		return p, ok
	})
	return v.spread(&s)
}

// mirrored is where a ray lands on the board that the front of a drop mirrors, in the frame whose origin is the drop's
// centre, and how much of its light is thrown there.
func (v *view) mirrored(r flip.Ray) (p layout.Point, share float64, ok bool) {
	front, _, ok := v.tracer.Mirrored(r)
	if !ok {
		return p, 0, false
	}
	p.XMM, p.YMM, ok = v.tracer.OnBoard(front.Ray)
	return p, front.Share, ok
}
