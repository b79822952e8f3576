package layout

// Eye is somebody's eye in place of a camera, as it would be asked for: Emsley's reduced eye (Emsley, Visual Optics,
// 1946; recalled from memory) has 60 dioptres, so that its image is as large as behind a thin lens of 1000/60 mm in
// air. An eye that looks at something near grows stronger and stays as long, and sees it larger by what the lens is
// short of its distance: a twentieth at 300 mm.
//
// The pupil is 3 mm wide, as in a lit room (common practice, no source): f/5.6. A pixel is as far as cones stand apart
// where they are densest, 2.5 micrometres (Curcio and others, Human photoreceptor topography, 1990; recalled from
// memory), and sees half a minute of arc; two of them are the minute that a good eye tells apart. The frame is what an
// eye takes in by turning alone, 40 by 27 degrees.
func Eye() CameraSetup {
	const dioptres, coneMM = 60.0, 0.0025
	c := CameraSetup{Eye: true, LensMM: 1000 / dioptres, FNumber: 5.6, WidthPx: 4800, HeightPx: 3200}
	c.Sensor = Size{WidthMM: coneMM * float64(c.WidthPx), HeightMM: coneMM * float64(c.HeightPx)}
	return c
}
