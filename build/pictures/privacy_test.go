package pictures

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
)

const canary = "CANARY-5XK"

// located is a block as a phone writes it: maker, moment, place and a preview.
func located() []byte {
	le := binary.LittleEndian
	text := canary + " maker\x00"
	offset := func(n int) [4]byte { return [4]byte(le.AppendUint32(nil, uint32(n))) }
	const entries, gpsEntries = 4, 5
	after := 8 + 2 + 12*entries + 4 // the first directory
	gps := after + len(text)
	latitude := gps + 2 + 12*gpsEntries + 4
	block := append(head(le), directory(le,
		tag{id: 0x010f, kind: 2, count: uint32(len(text)), value: offset(after)},
		tag{id: 0x0112, kind: 3, count: 1, value: [4]byte{6}},
		tag{id: 0x0132, kind: 2, count: uint32(len(text)), value: offset(after)},
		tag{id: 0x8825, kind: 4, count: 1, value: offset(gps)})...)
	block = append(block, text...)
	block = append(block, directory(le,
		tag{id: 1, kind: 2, count: 2, value: [4]byte{'N'}},
		tag{id: 2, kind: 5, count: 3, value: offset(latitude)},
		tag{id: 3, kind: 2, count: 2, value: [4]byte{'E'}},
		tag{id: 4, kind: 5, count: 3, value: offset(latitude)},
		tag{id: 0x12, kind: 2, count: uint32(len(text)), value: offset(after)})...)
	for _, n := range []uint32{54, 1, 38, 1, 4711, 100} {
		block = le.AppendUint32(block, n)
	}
	return append(block, []byte(canary+" preview")...)
}

// files are pictures that say all that a file can say beside its image.
func locatedFiles(t testing.TB) map[string][]byte {
	photo := asJPEG(t, quadrants(1200, 800))
	note := []byte(canary + " note")
	text := func(head string) []byte { return append([]byte(head), note...) }
	return map[string][]byte{
		"phone.jpg": append(segments(photo,
			exifSegment(located()),
			segment(0xe1, text("http://ns.adobe.com/xap/1.0/\x00<x:xmpmeta>exif:GPSLatitude ")),
			segment(0xe2, text("ICC_PROFILE\x00\x01\x01")),
			segment(0xed, text("Photoshop 3.0\x00")),
			segment(0xfe, note)), note...),
		"screen.png": append(chunks(asPNG(t, quadrants(1200, 800)),
			chunk("eXIf", located()),
			chunk("tEXt", text("Comment\x00")),
			chunk("iTXt", text("XML:com.adobe.xmp\x00\x00\x00\x00\x00")),
			chunk("tIME", []byte{0x07, 0xea, 1, 2, 3, 4, 5})), note...),
		"sent.webp":      extended(read(t, "quadrants.webp"), 48, 32, "EXIF", located()),
		"sent-note.webp": extended(read(t, "quadrants.webp"), 48, 32, "XMP ", text("<x:xmpmeta>")),
	}
}

// Of what a file says beside its image nothing is left: no canary, no tag, and
// in the outputs no segment that could hold one.
func TestNothingButTheImage(t *testing.T) {
	forbidden := []string{canary, "Exif", "GPS", "xmp", "ICC_PROFILE", "Photoshop", "II*\x00", "MM\x00*", "JFIF"}
	for name, data := range locatedFiles(t) {
		if !bytes.Contains(data, []byte(canary)) {
			t.Fatalf("%s: no canary in the source: the test proves nothing", name)
		}
		made, _ := mustMakeBoth(t, name, data)
		if len(made.Modern) == 0 {
			t.Errorf("%s: no WebP", name)
		}
		for _, v := range made.All() {
			for _, f := range forbidden {
				if bytes.Contains(v.Data, []byte(f)) || strings.Contains(v.Name, f) {
					t.Errorf("%s: %s holds %q", name, v.Name, f)
				}
			}
			want := "d8 db c0 c4 da d9"
			if isWebP(v.Data) {
				want = "VP8 "
			}
			if kinds := kindsOf(t, v.Data); kinds != want {
				t.Errorf("%s: %s has segments %s", name, v.Name, kinds)
			}
		}
	}
}

// kindsOf lists the kinds of segments of a JPEG, one that repeats once, or of the
// chunks of a WebP, and fails for bytes after its end.
func kindsOf(t *testing.T, data []byte) string {
	t.Helper()
	if isWebP(data) {
		return chunksOf(t, data)
	}
	kinds := "d8"
	for at := 2; at+1 < len(data); {
		if data[at] != 0xff {
			t.Fatalf("no segment at %d", at)
		}
		if kind := fmt.Sprintf("%02x", data[at+1]); !strings.HasSuffix(kinds, kind) {
			kinds += " " + kind
		}
		if data[at+1] == 0xd9 {
			if at+2 != len(data) {
				t.Errorf("%d bytes after the end", len(data)-at-2)
			}
			return kinds
		}
		scan := data[at+1] == 0xda
		at += 2 + int(binary.BigEndian.Uint16(data[at+2:]))
		for scan && !(data[at] == 0xff && data[at+1] != 0) {
			at++
		}
	}
	return kinds
}

func chunksOf(t *testing.T, data []byte) string {
	t.Helper()
	if int(binary.LittleEndian.Uint32(data[4:]))+8 != len(data) {
		t.Errorf("%d bytes, and it says %d", len(data), binary.LittleEndian.Uint32(data[4:])+8)
	}
	var kinds []string
	for at := 12; at+8 <= len(data); {
		kinds = append(kinds, string(data[at:at+4]))
		size := int(binary.LittleEndian.Uint32(data[at+4:]))
		at += 8 + size + size%2
	}
	return strings.Join(kinds, " ")
}

// The tests read what the sample says as other programs do: the place is there
// to be lost.
func TestLocatedSampleIsTurned(t *testing.T) {
	if o := tiffOrientation(located()); o != 6 {
		t.Errorf("orientation %d", o)
	}
}
