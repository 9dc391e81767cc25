package pictures

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io"
)

// source is a photograph as it came.
type source struct {
	name string
	data []byte
	// upright says that the image is stored upright, whatever is noted beside it.
	upright bool
}

// format is what the content says, whatever the name ends in; nil for none that
// can be read.
func (s source) format() *format {
	for i := range formats {
		if formats[i].is(s.data) {
			return &formats[i]
		}
	}
	return nil
}

// decode gives the image as stored, before it is turned upright. The header is
// looked at first: a small file can claim to be a huge picture.
func (s source) decode() (image.Image, error) {
	switch {
	case len(s.data) == 0:
		return nil, s.refuse("is empty", again)
	case len(s.data) > MaxBytes:
		return nil, s.refuse("is too large", "The file has more than %d MB, which is the most that is read. %s", MaxBytes/1_000_000, smaller)
	}
	f := s.format()
	if f == nil {
		return nil, s.unread()
	}
	config, err := f.config(bytes.NewReader(s.data))
	if err != nil {
		return nil, s.broken(f, err)
	}
	if err := s.measure(config, true); err != nil {
		return nil, err
	}
	m, err := f.image(s.data)
	if err != nil {
		return nil, s.broken(f, err)
	}
	if size := m.Bounds().Size(); size.X != config.Width || size.Y != config.Height {
		return nil, s.broken(f, errors.New("its parts differ in size"))
	}
	return m, nil
}

// image decodes the file. That a decoder gives up in panic over a damaged file
// must not end the work on a whole fleet.
func (f *format) image(data []byte) (m image.Image, err error) {
	defer func() {
		if reason := recover(); reason != nil {
			m, err = nil, fmt.Errorf("its content makes no sense: %v", reason)
		}
	}()
	return f.decode(bytes.NewReader(data))
}

// measure refuses pictures that would take too much memory or, where they are to
// be shown whole, that nobody could see anything in.
func (s source) measure(c image.Config, whole bool) error {
	if c.Width < 1 || c.Height < 1 {
		return s.refuse("is empty", "It is %d by %d pixels. %s", c.Width, c.Height, again)
	}
	if n := megapixels(c.Width, c.Height); n > maxMegapixels {
		return s.refuse("is too large", "It is %d by %d pixels. That is %d megapixels, and at most %d are read. %s",
			c.Width, c.Height, n, maxMegapixels, smaller)
	}
	if long, short := max(c.Width, c.Height), min(c.Width, c.Height); whole && long > maxStretch*short {
		return s.refuse("is too long and narrow",
			"It is %d by %d pixels, and at most %d times as long as wide can be shown. Cut it to what matters.", c.Width, c.Height, maxStretch)
	}
	return nil
}

// unread says what a file is that cannot be read.
func (s source) unread() error {
	if isFilm(s.data) {
		return s.refuse("is a film", "%s %s", readable, still)
	}
	if what := foreignName(s.data); what != "" {
		return s.refuse("is "+what, "%s %s", readable, jpegCopy)
	}
	return s.refuse("is no picture that can be read", "%s %s", readable, jpegCopy)
}

// broken says what is wrong with a file that a decoder gave up on.
func (s source) broken(f *format, err error) error {
	var oddJPEG jpeg.UnsupportedError
	var oddPNG png.UnsupportedError
	switch {
	case isAnimated(s.data):
		return s.refuse("is a film", "It is a WebP in which something moves. %s", still)
	case errors.As(err, &oddJPEG), errors.As(err, &oddPNG):
		return s.refuse("is of an uncommon kind of "+f.name, "The decoder says: %v. %s", err, jpegCopy)
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF), errors.Is(err, png.FormatError("not enough pixel data")):
		return s.refuse("is not whole", "The %s ends too early: it was not copied to its end. %s", f.name, again)
	}
	return s.refuse("is damaged", "It is a %s, but it cannot be decoded: %v. %s", f.name, err, again)
}
