package main

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
)

// smaller writes a PNG again with a palette where it has at most 256 colours,
// as a drawn icon has: the same pixels in fewer bytes. Another picture, and what
// is no PNG, stays as it is.
func smaller(body []byte) []byte {
	picture, err := png.Decode(bytes.NewReader(body))
	if err != nil {
		return body
	}
	indexed := withPalette(picture)
	if indexed == nil {
		return body
	}
	var b bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(&b, indexed); err != nil || b.Len() >= len(body) {
		return body
	}
	return b.Bytes()
}

// withPalette returns the same picture with a palette, or nil if it has more
// colours than one can hold.
func withPalette(picture image.Image) *image.Paletted {
	bounds := picture.Bounds()
	out := image.NewPaletted(bounds, nil)
	index := map[color.Color]uint8{}
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			c := picture.At(x, y)
			i, known := index[c]
			if !known {
				if len(out.Palette) == 256 {
					return nil
				}
				i = uint8(len(out.Palette))
				index[c] = i
				out.Palette = append(out.Palette, c)
			}
			out.SetColorIndex(x, y, i)
		}
	}
	return out
}
