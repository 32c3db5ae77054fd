package fill_test

import (
	"fmt"

	"tidysump/internal/fill"
)

// How many bottles for 2.4 L, with half a litre opened and three whole ones of 1 L on
// the shelf?
func ExampleChoose() {
	const litre = 1e6 // µL
	shelf := []fill.Bottle{{Left: litre, Price: 1290}, {Left: litre / 2, Opened: true}, {Left: litre, Price: 1290}, {Left: litre, Price: 1490}}
	choice := fill.Choose(2.4*litre, shelf)
	for _, p := range choice.Pours {
		fmt.Println("bottle", p.Bottle+1, "pour", p.Amount/1000, "mL, leaves", p.Left/1000)
	}
	fmt.Println(choice.New, "opened,", choice.Left/1000, "mL left over")
	// Output:
	// bottle 2 pour 500 mL, leaves 0
	// bottle 1 pour 1000 mL, leaves 0
	// bottle 3 pour 900 mL, leaves 100
	// 2 opened, 100 mL left over
}

// How much of 2.4 L goes in before the first start, with a new spin-on filter that
// hangs with its open end up?
func ExampleBegin() {
	start := fill.Begin(2.4, fill.SpinOn, fill.OpenUp, false, false)
	for _, part := range []struct {
		name   string
		litres fill.Span
	}{{"before the start", start.Before}, {"of that into the filter", start.Prefill}, {"kept back", start.After}} {
		fmt.Printf("%s: %.2f to %.2f L\n", part.name, part.litres.Low, part.litres.High)
	}
	// Output:
	// before the start: 2.04 to 2.16 L
	// of that into the filter: 0.07 to 0.26 L
	// kept back: 0.24 to 0.36 L
}

// The oil stands a quarter of the way up between the marks, which are 0.4 L apart.
// What is to be done? And when the bike leaned by two degrees, with the glass 120 mm
// off the middle and its marks 10 mm apart?
func ExampleAmend() {
	advice, millilitres := fill.Amend(0.25, 0.25, 400, 0)
	fmt.Printf("%s %.0f mL\n", advice, millilitres)
	off := fill.Tilt(120, 2) / 10
	advice, _ = fill.Amend(0.25, 0.25, 400, off)
	fmt.Printf("off by %.1f of the band: %s\n", off, advice)
	// Output:
	// pour 50 mL
	// off by 0.4 of the band: unsure
}
