package sheets_test

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"doorpocket/build/sheets"
)

// harm is what can happen to a label between the printer and the phone.
type harm struct {
	name string
	do   func(p *image.Gray) *image.Gray
}

var harms = []harm{
	{"as printed", func(p *image.Gray) *image.Gray { return p }},
	{"noise", func(p *image.Gray) *image.Gray { return noisy(p, 22) }},
	{"turned by 15°", func(p *image.Gray) *image.Gray { return warped(p, turn(p, 15)) }},
	{"seen from the side", func(p *image.Gray) *image.Gray { return warped(p, slant(p)) }},
	{"blurred", func(p *image.Gray) *image.Gray { return blurred(p, 1) }},
	{"low contrast", func(p *image.Gray) *image.Gray { return pale(p, 0.35) }},
	{"scratched", scratched},
	{"turned, blurred, noisy", func(p *image.Gray) *image.Gray { return noisy(blurred(warped(p, turn(p, -15)), 1), 10) }},
}

// phone is how finely a phone sees a label, in dots an inch: about five pixels a
// module.
const phone = 150

// Labels are read after what life does to them: a table says what was read.
func TestHarmedLabels(t *testing.T) {
	const dpi = phone
	g := grids(t)["a4-3x7-64x36"]
	all := demoStickers("HZ")[:g.PerPage()]
	file, _ := printed(t, sheets.Job{Grid: g, Call: call}, slices.Values(all))
	clean := symbols(rendered(t, file, dpi, 1, 1), dpi, g, len(all))
	var table strings.Builder
	fmt.Fprintf(&table, "%-24s %8s %8s of %d\n", "", "zbar", "second", len(all))
	for _, h := range harms {
		var pictures []*image.Gray
		for _, p := range clean {
			pictures = append(pictures, h.do(p))
		}
		one, two := zbar(t, pictures), second(pictures)
		readOne, readTwo := 0, 0
		for i, s := range all {
			for _, text := range []string{one[i], two[i]} {
				if text != "" && text != s.Address {
					t.Errorf("%s: %s is read as %q", h.name, s.Code(), text)
				}
			}
			if one[i] == s.Address {
				readOne++
			}
			if two[i] == s.Address {
				readTwo++
			}
		}
		fmt.Fprintf(&table, "%-24s %8d %8d\n", h.name, readOne, readTwo)
		if readOne < len(all) || readTwo < len(all) {
			t.Errorf("%s: %d and %d of %d are read", h.name, readOne, readTwo, len(all))
		}
	}
	t.Log("\n" + table.String())
}

// What no error correction can bring back is not read: the harms above do
// reach the symbols.
func TestTooMuchHarm(t *testing.T) {
	const dpi = phone
	g := grids(t)["a4-3x7-64x36"]
	all := demoStickers("HZ")[:3]
	file, _ := printed(t, sheets.Job{Grid: g, Call: call}, slices.Values(all))
	var pictures []*image.Gray
	for _, p := range symbols(rendered(t, file, dpi, 1, 1), dpi, g, len(all)) {
		pictures = append(pictures, blurred(p, 8))
	}
	if read := strings.Join(append(zbar(t, pictures), second(pictures)...), ""); read != "" {
		t.Errorf("read %q", read)
	}
}

// noisy adds grain as of a dark picture.
func noisy(p *image.Gray, sigma float64) *image.Gray {
	chance := rand.New(rand.NewPCG(1, 2))
	return each(p, func(x, y int) float64 { return float64(p.GrayAt(x, y).Y) + chance.NormFloat64()*sigma })
}

// pale leaves a share of the contrast, as in fading light.
func pale(p *image.Gray, share float64) *image.Gray {
	return each(p, func(x, y int) float64 { return 90 + float64(p.GrayAt(x, y).Y)*share })
}

// scratched draws a white scratch across: less than the share of a symbol that
// level Q brings back, and clear of the finder patterns, without which no
// decoder begins.
func scratched(p *image.Gray) *image.Gray {
	side := float64(p.Rect.Dy())
	return each(p, func(x, y int) float64 {
		u, v := float64(x)/side, float64(y)/side
		if math.Abs(u+v-1.30) < 0.02 {
			return 255
		}
		return float64(p.GrayAt(x, y).Y)
	})
}

func each(p *image.Gray, value func(x, y int) float64) *image.Gray {
	to := image.NewGray(p.Rect)
	for y := range p.Rect.Dy() {
		for x := range p.Rect.Dx() {
			to.Pix[y*to.Stride+x] = uint8(math.Max(0, math.Min(255, value(x, y))))
		}
	}
	return to
}

// blurred is the mean over a square of so many pixels to each side, twice, which
// is close to a lens out of focus.
func blurred(p *image.Gray, radius int) *image.Gray {
	for range 2 {
		p = smeared(smeared(p, radius, 1, 0), radius, 0, 1)
	}
	return p
}

func smeared(p *image.Gray, radius, dx, dy int) *image.Gray {
	return each(p, func(x, y int) float64 {
		sum, n := 0, 0
		for i := -radius; i <= radius; i++ {
			if at := (image.Point{x + i*dx, y + i*dy}); at.In(p.Rect) {
				sum += int(p.Pix[at.Y*p.Stride+at.X])
				n++
			}
		}
		return float64(sum) / float64(n)
	})
}

// warp tells from where in the picture a spot comes.
type warp func(x, y float64) (float64, float64)

// turn turns about the middle.
func turn(p *image.Gray, degrees float64) warp {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	mx, my := float64(p.Rect.Dx())/2, float64(p.Rect.Dy())/2
	return func(x, y float64) (float64, float64) {
		x, y = x-mx, y-my
		return mx + cos*x + sin*y, my - sin*x + cos*y
	}
}

// slant is the view from below: a projection in which the far edge is a third
// shorter than the near one.
func slant(p *image.Gray) warp {
	w, h := float64(p.Rect.Dx()), float64(p.Rect.Dy())
	return func(x, y float64) (float64, float64) {
		near := 1 + 0.4*(y/h-0.5)
		return w/2 + (x-w/2)/near, h/2 + (y-h/2)*1.1/near
	}
}

// warped looks each spot up and mixes the four pixels around; what lies outside
// is white, and so is a margin.
func warped(p *image.Gray, from warp) *image.Gray {
	at := func(x, y int) float64 {
		if !(image.Point{x, y}).In(p.Rect) {
			return 255
		}
		return float64(p.Pix[y*p.Stride+x])
	}
	const margin = 40
	to := image.NewGray(image.Rect(0, 0, p.Rect.Dx()+2*margin, p.Rect.Dy()+2*margin))
	return each(to, func(x, y int) float64 {
		u, v := from(float64(x-margin), float64(y-margin))
		i, j := int(math.Floor(u)), int(math.Floor(v))
		fu, fv := u-float64(i), v-float64(j)
		return (at(i, j)*(1-fu)+at(i+1, j)*fu)*(1-fv) + (at(i, j+1)*(1-fu)+at(i+1, j+1)*fu)*fv
	})
}
