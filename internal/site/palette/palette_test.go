package main

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

// drawn makes a PNG of 64 by 64 pixels, each coloured by its number.
func drawn(t *testing.T, colour func(i int) color.NRGBA) []byte {
	t.Helper()
	picture := image.NewNRGBA(image.Rect(0, 0, 64, 64))
	for i := range 64 * 64 {
		picture.SetNRGBA(i%64, i/64, colour(i))
	}
	var b bytes.Buffer
	if err := png.Encode(&b, picture); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestSmaller_SamePixels(t *testing.T) {
	body := drawn(t, func(i int) color.NRGBA {
		n := uint8(i*i*i>>7) % 50
		return color.NRGBA{n, 90, 95 + n, 255 - n} // few colours, some see-through
	})
	out := smaller(body)
	if len(out) >= len(body) {
		t.Errorf("%d bytes became %d", len(body), len(out))
	}
	before, err := png.Decode(bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	after, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	for i := range 64 * 64 {
		if got, want := after.At(i%64, i/64), before.At(i%64, i/64); got != want {
			t.Fatalf("pixel %d is %v, was %v", i, got, want)
		}
	}
}

func TestSmaller_LeftAlone(t *testing.T) {
	colourful := drawn(t, func(i int) color.NRGBA { return color.NRGBA{uint8(i), uint8(i >> 8), 7, 255} })
	for name, body := range map[string][]byte{"257 colours and more": colourful, "no PNG": []byte("text")} {
		if !bytes.Equal(smaller(body), body) {
			t.Errorf("%s: changed", name)
		}
	}
}

// The icons of the page were made smaller when they were drawn; a twentieth is left
// to compressors of other versions.
func TestSmaller_Icons(t *testing.T) {
	paths, err := filepath.Glob("../../../static/icons/*.png")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no icons: %v", err)
	}
	for _, path := range paths {
		body, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if least := len(smaller(body)); 20*least < 19*len(body) {
			t.Errorf("%s has %d bytes and could have %d: make pictures", path, len(body), least)
		}
	}
}
