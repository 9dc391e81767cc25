package pictures

import (
	"bytes"
	"encoding/binary"
)

// orientation is how a camera was held, as EXIF counts it: 1 is upright, 2 to 8
// say how the stored image is to be turned and mirrored.
type orientation uint8

const upright orientation = 1

// turned reports whether width and height change places.
func (o orientation) turned() bool { return o >= 5 }

// orientation is what the file says, upright where it says nothing.
func (s source) orientation() orientation {
	f := s.format()
	if f == nil || s.upright {
		return upright
	}
	return tiffOrientation(bytes.TrimPrefix(f.exif(s.data), []byte(exifHead)))
}

// exifHead stands before the block in a JPEG, and by mistake elsewhere.
const exifHead = "Exif\x00\x00"

// jpegExif finds the block among the segments before the image itself.
func jpegExif(data []byte) []byte {
	const app1, scan, end = 0xe1, 0xda, 0xd9
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		kind := data[at+1]
		if kind == 0xff { // padding
			at++
			continue
		}
		if kind == scan || kind == end {
			return nil
		}
		size := int(binary.BigEndian.Uint16(data[at+2:]))
		if size < 2 || at+2+size > len(data) {
			return nil
		}
		body := data[at+4 : at+2+size]
		if kind == app1 && bytes.HasPrefix(body, []byte(exifHead)) {
			return body
		}
		at += 2 + size
	}
	return nil
}

// pngExif finds the chunk, which may also stand after the image.
func pngExif(data []byte) []byte {
	for at := 8; at+12 <= len(data); {
		size := int64(binary.BigEndian.Uint32(data[at:]))
		if size > int64(len(data)-at-12) {
			return nil
		}
		if string(data[at+4:at+8]) == "eXIf" {
			return data[at+8 : at+8+int(size)]
		}
		at += 12 + int(size)
	}
	return nil
}

// webpExif finds the chunk, which stands after the image.
func webpExif(data []byte) []byte {
	for at := 12; at+8 <= len(data); {
		size := int64(binary.LittleEndian.Uint32(data[at+4:]))
		if size > int64(len(data)-at-8) {
			return nil
		}
		if string(data[at:at+4]) == "EXIF" {
			return data[at+8 : at+8+int(size)]
		}
		at += 8 + int(size+size&1)
	}
	return nil
}

// tiffOrientation reads the one entry that matters here out of a block, and
// nothing else in it. Whatever makes no sense counts as upright.
func tiffOrientation(block []byte) orientation {
	const tag, short, entrySize = 0x0112, 3, 12
	var order binary.ByteOrder
	switch {
	case bytes.HasPrefix(block, []byte("II*\x00")):
		order = binary.LittleEndian
	case bytes.HasPrefix(block, []byte("MM\x00*")):
		order = binary.BigEndian
	default:
		return upright
	}
	if len(block) < 8 {
		return upright
	}
	start := int64(order.Uint32(block[4:]))
	if start+2 > int64(len(block)) {
		return upright
	}
	count := int(order.Uint16(block[start:]))
	entries := block[start+2:]
	for range min(count, len(entries)/entrySize) {
		if order.Uint16(entries) == tag {
			value := order.Uint16(entries[8:])
			if order.Uint16(entries[2:]) != short || value < 1 || value > 8 {
				return upright
			}
			return orientation(value)
		}
		entries = entries[entrySize:]
	}
	return upright
}
