package pictures

import (
	"encoding/binary"
	"image"
)

// claims is what a photograph in boxes (ISO/IEC 23008-12) says of itself before
// anything of it is decoded.
type claims struct {
	sizes  []image.Point // of every image in it: parts, previews and the whole
	turned bool          // it says itself how it is turned: whatever cameras note beside it does not count
}

// boxClaims reads the properties of the images in a file.
func boxClaims(data []byte) claims {
	var c claims
	for _, meta := range boxesOf(data, "meta") {
		if len(meta) < 4 {
			continue
		}
		for _, properties := range boxesOf(meta[4:], "iprp") { // after version and flags
			for _, list := range boxesOf(properties, "ipco") {
				for _, size := range boxesOf(list, "ispe") {
					if len(size) >= 12 {
						w, h := binary.BigEndian.Uint32(size[4:]), binary.BigEndian.Uint32(size[8:])
						c.sizes = append(c.sizes, image.Pt(int(w), int(h)))
					}
				}
				c.turned = c.turned || len(boxesOf(list, "irot"))+len(boxesOf(list, "imir")) > 0
			}
		}
	}
	return c
}

// boxesOf gives the contents of the boxes of a kind that stand side by side in
// data. What is cut off or makes no sense ends the list.
func boxesOf(data []byte, kind string) [][]byte {
	var all [][]byte
	for len(data) >= 8 {
		size, head := uint64(binary.BigEndian.Uint32(data)), uint64(8)
		switch {
		case size == 0: // to the end
			size = uint64(len(data))
		case size == 1 && len(data) >= 16:
			size, head = binary.BigEndian.Uint64(data[8:]), 16
		}
		if size < head || size > uint64(len(data)) {
			return all
		}
		if string(data[4:8]) == kind {
			all = append(all, data[head:size])
		}
		data = data[size:]
	}
	return all
}
