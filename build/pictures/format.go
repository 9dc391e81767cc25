package pictures

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"
	"io"
	"strings"

	"doorpocket/build/pictures/webp"
)

// format is a format that can be read.
type format struct {
	name   string
	is     func(data []byte) bool
	config func(io.Reader) (image.Config, error)
	decode func(io.Reader) (image.Image, error)
	// exif gives the block in which cameras note how they were held, nil for
	// none.
	exif func(data []byte) []byte
}

var formats = []format{
	{"JPEG", starts("\xff\xd8\xff"), jpeg.DecodeConfig, jpeg.Decode, jpegExif},
	{"PNG", starts("\x89PNG\r\n\x1a\n"), png.DecodeConfig, png.Decode, pngExif},
	{"WebP", isWebP, webp.DecodeConfig, webp.Decode, webpExif},
}

// readable names the formats for messages.
const readable = "JPEG, PNG and WebP can be read."

func starts(magic string) func([]byte) bool {
	return func(data []byte) bool { return bytes.HasPrefix(data, []byte(magic)) }
}

func isWebP(data []byte) bool {
	return len(data) >= 12 && string(data[:4]) == "RIFF" && string(data[8:12]) == "WEBP"
}

// isAnimated reports whether a WebP file holds a film instead of a picture.
func isAnimated(data []byte) bool {
	return isWebP(data) && len(data) > 20 && string(data[12:16]) == "VP8X" && data[20]&2 != 0
}

// foreign are formats that people have on their phones and computers and that
// cannot be read.
var foreign = []struct{ name, magic string }{
	{"a GIF", "GIF8"},
	{"a BMP", "BM"},
	{"a TIFF or a camera's raw file", "II*\x00"},
	{"a TIFF or a camera's raw file", "MM\x00*"},
	{"a JPEG XL", "\xff\x0a"},
	{"a JPEG XL", "\x00\x00\x00\x0cJXL "},
	{"a JPEG 2000", "\x00\x00\x00\x0cjP  "},
	{"a PDF", "%PDF"},
	{"an SVG drawing", "<svg"},
	{"an SVG drawing", "<?xml"},
}

// foreignName says what a file is instead, "" where that is not known.
func foreignName(data []byte) string {
	if isAVIF(data) {
		return "an AVIF"
	}
	for _, f := range foreign {
		if bytes.HasPrefix(data, []byte(f.magic)) {
			return f.name
		}
	}
	return ""
}

func isAVIF(data []byte) bool { return strings.Contains(brandsOf(data), " avi") }

// isFilm reports whether a file is in boxes as films are.
func isFilm(data []byte) bool { return brandsOf(data) != "" && !isAVIF(data) }

// isHEIC reports whether a file is a photograph as many phones store it.
func isHEIC(data []byte) bool {
	brands := brandsOf(data)
	for brand := range strings.FieldsSeq("heic heix hevc hevx heim heis hevm hevs") {
		if strings.Contains(brands, " "+brand) {
			return true
		}
	}
	// These say no more than "an image in boxes", which AVIF is too.
	return (strings.Contains(brands, " mif1") || strings.Contains(brands, " msf1")) && !isAVIF(data)
}

// brandsOf lists what a file in boxes says it is, each brand after a space; ""
// for other files.
func brandsOf(data []byte) string {
	if len(data) < 12 || string(data[4:8]) != "ftyp" {
		return ""
	}
	size := min(int(data[2])<<8|int(data[3]), len(data), 256)
	brands := " " + string(data[8:12])
	for at := 16; at+4 <= size; at += 4 {
		brands += " " + string(data[at:at+4])
	}
	return brands
}
