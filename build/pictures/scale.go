package pictures

import (
	"image"
	"math"

	"golang.org/x/image/draw"
)

// scaled draws the variants of an image, the smallest first. It is turned
// upright once it is small, and each size is made from the next larger one:
// the same to the eye, and much less work.
func scaled(stored image.Image, o orientation) []*image.RGBA {
	size := stored.Bounds().Size()
	if o.turned() {
		size.X, size.Y = size.Y, size.X
	}
	list := sizes(size)
	all := make([]*image.RGBA, len(list))
	for i := len(list) - 1; i >= 0; i-- {
		if i < len(list)-1 {
			all[i] = drawn(all[i+1], list[i])
			continue
		}
		target := list[i]
		if o.turned() {
			target.X, target.Y = target.Y, target.X
		}
		all[i] = o.apply(drawn(stored, target))
	}
	return all
}

// sizes are those of the variants of an upright image: none wider than it is.
func sizes(whole image.Point) []image.Point {
	var all []image.Point
	for _, w := range widths {
		if len(all) > 0 && all[len(all)-1].X == whole.X {
			break
		}
		w = min(w, whole.X)
		h := math.Round(float64(w) * float64(whole.Y) / float64(whole.X))
		all = append(all, image.Pt(w, max(1, int(h))))
	}
	return all
}

// drawn is an image in another size, on white where one can see through it.
func drawn(m image.Image, size image.Point) *image.RGBA {
	out := image.NewRGBA(image.Rectangle{Max: size})
	draw.Draw(out, out.Bounds(), image.White, image.Point{}, draw.Src)
	if m.Bounds().Size() == size {
		draw.Draw(out, out.Bounds(), m, m.Bounds().Min, draw.Over)
		return out
	}
	draw.CatmullRom.Scale(out, out.Bounds(), m, m.Bounds(), draw.Over, nil)
	return out
}

// apply turns and mirrors a stored image so that it is upright.
func (o orientation) apply(m *image.RGBA) *image.RGBA {
	if o == upright {
		return m
	}
	w, h := m.Bounds().Dx(), m.Bounds().Dy()
	size := image.Pt(w, h)
	if o.turned() {
		size = image.Pt(h, w)
	}
	out := image.NewRGBA(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			from := o.stored(x, y, w, h)
			copy(out.Pix[out.PixOffset(x, y):][:4], m.Pix[m.PixOffset(from.X, from.Y):][:4])
		}
	}
	return out
}

// stored is where a pixel of the upright image stands in a stored one that is w
// wide and h high.
func (o orientation) stored(x, y, w, h int) image.Point {
	switch o {
	case 2: // mirrored
		return image.Pt(w-1-x, y)
	case 3: // upside down
		return image.Pt(w-1-x, h-1-y)
	case 4: // upside down and mirrored
		return image.Pt(x, h-1-y)
	case 5: // turned to the left and mirrored
		return image.Pt(y, x)
	case 6: // turned to the left
		return image.Pt(y, h-1-x)
	case 7: // turned to the right and mirrored
		return image.Pt(w-1-y, h-1-x)
	case 8: // turned to the right
		return image.Pt(w-1-y, x)
	}
	return image.Pt(x, y)
}
