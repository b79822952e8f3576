package pdf_test

import (
	"bytes"
	"compress/zlib"
	"context"
	"image"
	"image/color"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/pdf/pdftest"
	"dropsheet/tile/raster"
	"dropsheet/tile/sheet"
)

// patches are colours that sRGB can show, whichever of the test's spaces they are in.
var patches = [3][4][3]uint8{
	{{0, 0, 0}, {60, 60, 60}, {128, 128, 128}, {255, 255, 255}},
	{{200, 120, 100}, {110, 150, 90}, {90, 110, 170}, {180, 170, 100}},
	{{150, 100, 150}, {90, 140, 150}, {40, 50, 45}, {230, 200, 190}},
}

// patchPx is a patch's side: three of the squares of 16 pixels that a JPEG sheet gives one colour to, so that
// the middle one holds no other patch.
const patchPx = 48

func patchPicture() *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, len(patches[0])*patchPx, len(patches)*patchPx))
	for y := range m.Rect.Max.Y {
		for x := range m.Rect.Max.X {
			p := patches[y/patchPx][x/patchPx]
			m.SetRGBA(x, y, color.RGBA{p[0], p[1], p[2], 255})
		}
	}
	return m
}

// greyPicture has the patches' greens for levels.
func greyPicture() *image.Gray {
	rgb := patchPicture()
	m := image.NewGray(rgb.Rect)
	for i := range m.Pix {
		m.Pix[i] = rgb.Pix[4*i+1]
	}
	return m
}

// What an outside colour engine makes of the coloured patches under the test's own profiles, saved to files:
// transicc 5.1 of lcms 2.14, "transicc -t1 -n -i FILE.icc -o '*sRGB'". The test's expectations take another
// way, by primaries and no profile, and must agree.
func TestExpectationsAgainstLCMS(t *testing.T) {
	for _, c := range []struct {
		name  string
		space space
		want  [2][4][3]float64
	}{
		{"Display P3", displayP3, [2][4][3]float64{
			{{212.98, 115.00, 94.77}, {98.10, 151.40, 82.41}, {84.69, 110.75, 174.73}, {182.15, 169.56, 88.78}},
			{{158.63, 97.17, 153.09}, {72.79, 141.64, 151.64}, {37.36, 50.38, 44.68}, {236.07, 198.61, 188.28}},
		}},
		{"Adobe RGB", adobeRGB, [2][4][3]float64{
			{{223.77, 120.81, 99.06}, {87.34, 151.41, 85.62}, {79.33, 110.48, 173.54}, {185.27, 171.51, 95.42}},
			{{166.62, 100.07, 153.14}, {52.53, 141.27, 151.82}, {29.63, 46.43, 40.61}, {241.17, 201.31, 190.98}},
		}},
	} {
		for i, row := range c.want {
			for j, want := range row {
				got := c.space.inSRGB(patches[i+1][j])
				require.InDeltaSlice(t, want[:], got[:], 0.02, "%s, %v", c.name, patches[i+1][j])
			}
		}
	}
	for level, want := range map[uint8]float64{50: 65.20, 100: 119.25, 150: 166.64, 200: 210.17} {
		require.InDelta(t, want, 255*srgbLevel(greyLight(float64(level)/255)), 0.02, "grey %d", level)
	}
}

// A picture's profile goes from whatever file holds it into the sheets, and an outside reader, PDFium, shows
// the colours that it means.
func TestArtworkColoursThroughPDFium(t *testing.T) {
	const within = 2.0
	type file struct {
		name string
		data []byte
	}
	rgbFiles := func(profile []byte) []file {
		m := patchPicture()
		return []file{
			{"jpeg in one chunk", jpegFile(t, m, profile, 1<<15)},
			{"jpeg in chunks, the last first", jpegFile(t, m, profile, 100)},
			{"png", pngFile(t, m, profile)},
			{"tiff", tiffFile(m, profile)},
			{"webp", webpFile(m, profile)},
		}
	}
	greyFiles := func(profile []byte) []file {
		m := greyPicture()
		return []file{{"jpeg", jpegFile(t, m, profile, 100)}, {"png", pngFile(t, m, profile)}, {"tiff", tiffFile(m, profile)}}
	}
	asGrey := func(light func(float64) float64) func([3]uint8) [3]float64 {
		return func(c [3]uint8) [3]float64 {
			v := 255 * srgbLevel(light(float64(c[0])/255))
			return [3]float64{v, v, v}
		}
	}
	p3, adobe := displayP3.told.Profile(), adobeRGB.told.Profile()
	for _, c := range []struct {
		name    string
		files   []file
		profile []byte // nil: the built-in one
		entries string // of the profile's object
		want    func([3]uint8) [3]float64
	}{
		{"Display P3", rgbFiles(p3), p3, "/N 3 /Alternate /DeviceRGB", displayP3.inSRGB},
		{"Adobe RGB", rgbFiles(adobe), adobe, "/N 3 /Alternate /DeviceRGB", adobeRGB.inSRGB},
		{"no profile", rgbFiles(nil), nil, "/N 3 /Alternate /DeviceRGB", srgb.inSRGB},
		{"grey, gamma 1.8", greyFiles(greyGamma), greyGamma, "/N 1 /Alternate /DeviceGray", asGrey(greyLight)},
		{"grey, no profile", greyFiles(nil), nil, "/N 1 /Alternate /DeviceGray", asGrey(srgbLight)},
	} {
		for _, f := range c.files {
			for _, lossless := range []bool{true, false} {
				name := c.name + ", " + f.name + ", jpeg sheet"
				if lossless {
					name = strings.Replace(name, "jpeg sheet", "lossless sheet", 1)
				}
				t.Run(name, func(t *testing.T) {
					art := opened(t, f.data)
					require.Equal(t, c.profile, art.ICC)
					data, at := oneSheet(t, art, lossless)
					requireProfile(t, data, c.entries, c.profile)
					page := pdftest.Open(t, data).Render(1, sheetDPI)
					worst := 0.0
					for i, row := range patches {
						for j := range row {
							// What the file's own JPEG loses is no matter of colour: the decoded levels count.
							stored := color.RGBAModel.Convert(art.Image.At(j*patchPx+patchPx/2, i*patchPx+patchPx/2)).(color.RGBA)
							want := c.want([3]uint8{stored.R, stored.G, stored.B})
							got := page.RGBAAt(at(float64(j)+0.5, float64(i)+0.5))
							for k, v := range []uint8{got.R, got.G, got.B} {
								worst = max(worst, math.Abs(float64(v)-want[k]))
							}
							require.LessOrEqual(t, worst, within, "patch %v, stored as %v, is drawn as %v, want %.1f", patches[i][j],
								stored, got, want)
						}
					}
					t.Logf("%.2f levels off at most", worst)
				})
			}
		}
	}
}

func opened(t *testing.T, data []byte) *artwork.Picture {
	path := filepath.Join(t.TempDir(), "artwork")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	art, err := artwork.Open(path, artwork.Default)
	require.NoError(t, err)
	require.Empty(t, art.Warnings)
	return art
}

const sheetDPI = 60

// oneSheet prints an artwork on a sheet as the program does. at gives the place of a picture point, in
// patches, on the page rendered at sheetDPI.
func oneSheet(t *testing.T, art *artwork.Picture, lossless bool) (data []byte, at func(x, y float64) (xPx, yPx int)) {
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	const columns, rows = 4, 3
	plan, err := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300,
		Print: layout.Size{WidthMM: 160, HeightMM: 120},
		Fit:   layout.Cover, Proportions: float64(columns) / rows, Paper: a4, Orientation: layout.Auto, MarginMM: 5,
		LapMM: 10, LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 480, HeightPx: 320, LensMM: 100,
			FNumber: 16, Focus: layout.FocusBest},
	}.Plan()
	require.NoError(t, err)
	require.Len(t, plan.Sheets, 1)
	on := plan.PictureOnBoard()
	w, h := art.Size()
	grid := raster.NewGrid(on, w, h, units.PerInch(300))
	job := sheet.Job{
		Label: sheet.Label{Job: "colours", Code: "C0105E", Of: 1}, Plan: plan, Grid: grid,
		Source:  raster.NewSource(art, plan.Drop.Reverses.Turn(), grid, image.YCbCrSubsampleRatio420),
		Profile: art.ICC, Lossless: lossless,
	}
	var file bytes.Buffer
	require.NoError(t, job.Write(context.Background(), &file, plan.Sheets, nil))
	return file.Bytes(), func(x, y float64) (int, int) {
		// A ball turns the picture by half a turn, so it hangs turned.
		place := plan.Backdrop.OnPage(plan.Sheets[0]).FromBoard(layout.Rect{XMM: on.XMM + (1-x/columns)*on.WidthMM,
			YMM: on.YMM + (1-y/rows)*on.HeightMM})
		perMM := units.PerInch(sheetDPI).PixelsPerMM()
		return int(place.XMM * perMM), int(place.YMM * perMM)
	}
}

var iccBased = regexp.MustCompile(`/ColorSpace \[/ICCBased (\d+) 0 R\]`)

// requireProfile finds the picture's colour space in a file of one sheet: a profile with these entries and,
// unless want is nil, these very bytes.
func requireProfile(t *testing.T, file []byte, entries string, want []byte) {
	t.Helper()
	refs := iccBased.FindAllSubmatch(file, -1)
	require.Len(t, refs, 1, "one picture")
	_, object, found := bytes.Cut(file, []byte("\n"+string(refs[0][1])+" 0 obj\n<<"+entries+" /Filter /FlateDecode"))
	require.True(t, found, "no profile with %s", entries)
	_, packed, _ := bytes.Cut(object, []byte("stream\n"))
	z, err := zlib.NewReader(bytes.NewReader(packed))
	require.NoError(t, err)
	got, err := io.ReadAll(z)
	require.NoError(t, err)
	if want != nil {
		require.True(t, bytes.Equal(want, got), "the profile's bytes differ")
	}
}
