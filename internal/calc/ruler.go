package calc

import (
	"math"

	"tidysump/internal/debris"
	"tidysump/internal/quantity"
)

// cardEdge is the short edge of a bank card in mm: ISO/IEC 7810, size ID-1, which
// is 85.60 × 53.98 mm.
const cardEdge = 53.98

// The scales of screens that are believed, in CSS pixels per mm: phones have about
// 6, the reference pixel of CSS is 96/25.4 = 3.78. Common practice, no source.
const (
	scaleLow, scaleHigh = 2.0, 20.0
	scaleNominal        = 96 / 25.4
)

// ruler is the operation for the ruler that is drawn on the screen to hold
// pieces against. It is none of the calculations: the page draws it by itself.
var ruler = Calculation{"gauge", []field{
	// edge is how long the card's short edge was matched to, in CSS pixels; ratio
	// are the screen's pixels per CSS pixel then and now; zoom is the pinch zoom now.
	{name: "edge", kind: Number, high: 1e5},
	{name: "ratio", kind: Number, low: 0.01, high: 100, absent: 1},
	{name: "now", kind: Number, low: 0.01, high: 100, absent: 1},
	{name: "zoom", kind: Number, low: 0.01, high: 100, absent: 1},
}, drawRuler, rulerShape}

// marks are the ruler's, in mm.
var marks = [...]float64{0.5, 1, 2, 5, 10}

// drawRuler says how large everything on the ruler is to be drawn, and whether it
// may be measured with.
func drawRuler(f *Form, a *Answer) {
	scale, verdict := f.number("edge")/cardEdge, "gauge.true"
	const tolerance = 0.005 // of the zoom: below what an eye can see
	switch {
	case scale == 0:
		scale, verdict = scaleNominal, "gauge.not-set"
	case scale < scaleLow || scale > scaleHigh:
		f.reject("scale-not-believable", "edge", "value", quantity.Number(scale, 2), "low", quantity.Number(scaleLow, 2), "high", quantity.Number(scaleHigh, 2))
		return
	case math.Abs(f.number("now")/f.number("ratio")-1) > tolerance || math.Abs(f.number("zoom")-1) > tolerance:
		verdict = "gauge.zoomed"
	}
	a.word("verdict", verdict)
	a.yes("trusted", verdict == "gauge.true")
	a.number("scale", round(scale, 1000))
	a.number("edge", round(scale*cardEdge, 100))
	a.number("low", math.Ceil(scaleLow*cardEdge))
	a.number("high", math.Floor(scaleHigh*cardEdge))
	var ticks []float64
	for mm := range int(marks[len(marks)-1]) + 1 {
		ticks = append(ticks, round(scale*float64(mm), 100))
	}
	a.points("ruler", ticks)
	var held []Answer
	for _, mm := range marks {
		row := Answer{}
		row.number("across", round(scale*mm, 100))
		row.word("text", quantity.Number(mm, 2)+" mm")
		row.word("size", debris.Sizes[debris.SizeUpTo(mm)-1])
		held = append(held, row)
	}
	a.rows("marks", held)
}
