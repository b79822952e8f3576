package seamsight_test
import ("testing";"fmt";"math";"dropsheet/flip";"dropsheet/layout";"dropsheet/tile/seamsight")
func TestDbg(t *testing.T){
	picture := drawn(scenery)
	for _, c := range []struct{name string; change func(*layout.Setup)}{
		{"f45", func(s *layout.Setup) { s.Camera.FNumber = 45 }},
		{"wide", func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 100, 22 }},
		{"rod", rod(flip.UprightRod)},
	}{
		p := plan(t, c.change); f := rendered(t, p, picture)
		for _, s := range seamsight.New(p, picture, seamMM).Seams() { for _, path := range []seamsight.Path{0,1} {
			view := func(i int) seamsight.Sighting { return s.Samples[i].Sightings[path] }
			last := len(s.Samples)-1
			k:=0
			for i:=1;i<last;i++{ here,b,a:=view(i),view(i-1),view(i+1)
				if min(here.Verdict,b.Verdict,a.Verdict)==seamsight.OutOfSight {continue}
				tx,ty:=a.Frame.XPx-b.Frame.XPx,a.Frame.YPx-b.Frame.YPx; l:=math.Hypot(tx,ty); if l==0 {continue}
				v := math.Sqrt(1 + here.WidthPx*here.WidthPx + here.BlurPx*here.BlurPx)
				near := func(end seamsight.Sighting) bool {return end.Verdict != seamsight.OutOfSight && math.Hypot(end.Frame.XPx-here.Frame.XPx, end.Frame.YPx-here.Frame.YPx) < 1.5*v+4}
				if near(view(0))||near(view(last)) {continue}
				pk,li,th := f.parts(here.Frame,-ty/l,tx/l,v)
				k++
				if k%6==0 || c.name=="f45" && here.OverThreshold()<1 && pk/li/th>2.5 { fmt.Printf("%s %v %v px %.0f,%.0f v %.1f | C %.4f %.4f | L %.4f %.4f(with flare) | T %.4f %.4f\n",c.name,s.Between,path,here.Frame.XPx,here.Frame.YPx,v,here.Contrast,pk/li,here.Picture,li,here.Threshold,th)}
			}
		}}
	}
}
func (f frames) parts(at layout.FramePoint, nx, ny, visiblePx float64) (p,l,th float64) {
	const alongPx, half = 4, seamsight.WindowPx / 2
	var peak, sum, square float64
	for aside := -visiblePx / 2; aside <= visiblePx/2; aside += 0.5 {
		mean := 0.0
		for along := -alongPx; along <= alongPx; along++ {
			mean += f.change.at(at.XPx+aside*nx-float64(along)*ny, at.YPx+aside*ny+float64(along)*nx) / (2*alongPx + 1)
		}
		peak = max(peak, math.Abs(mean))
	}
	for j := -half; j <= half; j++ {
		for i := -half; i <= half; i++ {
			v := f.without.box(at.XPx+float64(i)*visiblePx, at.YPx+float64(j)*visiblePx, visiblePx)
			sum, square = sum+v, square+v*v
		}
	}
	const n = seamsight.WindowPx * seamsight.WindowPx
	spread := math.Sqrt(max(0, square/n-sum/n*sum/n))
	light := f.without.box(at.XPx, at.YPx, visiblePx)
	return peak, light+seamsight.Flare, seamsight.Threshold(light, spread/(light+seamsight.Flare), visiblePx)
}
