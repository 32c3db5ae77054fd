package oil_test

import (
	"fmt"

	"tidysump/internal/oil"
)

// How much thinner is a 10W-40 when the engine is hot? The bottle of this one says
// 97 mm²/s at 40 °C and 14.5 at 100 °C.
func ExampleLineThrough() {
	line, ok := oil.LineThrough(40, 97, 100, 14.5)
	fmt.Println(ok)
	for _, celsius := range []float64{10, 40, 80, 100} {
		fmt.Printf("%3.0f °C: %4.0f mm²/s\n", celsius, line.At(celsius))
	}
	index, _ := oil.Index(97, 14.5)
	fmt.Printf("viscosity index %.0f\n", index)
	// Output:
	// true
	//  10 °C:  483 mm²/s
	//  40 °C:   97 mm²/s
	//  80 °C:   24 mm²/s
	// 100 °C:   14 mm²/s
	// viscosity index 155
}

// Three quarters of a can of 10W-40 are left, 14 mm²/s at 100 °C, and the rest is to
// be a 20W-50 of 19. What comes of it?
func ExampleMix() {
	mixed := oil.Mix(14, 19, 0.25)
	fmt.Printf("%.1f mm²/s at 100 °C, as a grade ending in %v has\n", mixed, oil.GradesAt(mixed, mixed, false))
	// Output:
	// 15.1 mm²/s at 100 °C, as a grade ending in [40] has
}

// The bike asks for a 10W-40 with JASO MA2, since its clutch runs in the oil. Will the
// car oil on the shelf do, whose label has no such mark and says "resource conserving"?
func ExampleJudge() {
	asked, _ := oil.ReadGrade("10W-40")
	need := oil.Need{Grades: []oil.Grade{asked}, Marks: []string{"MA2"}, WetClutch: true, Coldest: 5, Hottest: 25}
	label := oil.ReadLabel("SAE 5w30, API SN resource conserving")
	verdict, reasons := oil.Judge(&need, &oil.Bottle{Grade: label.Grades[0], Marks: []string{oil.None}, Service: label.Service, Conserving: label.Conserving})
	fmt.Println(verdict)
	for _, r := range reasons {
		fmt.Println(r.Weight, r.Code)
	}
	// Output:
	// no
	// limit grade-thinner
	// suits season-fits
	// no conserving-wet
}

// 1.2 kg of oil were weighed into a can at 20 °C, of a density of 875 kg/m³ at 15 °C.
// How many litres are that?
func ExampleDensity() {
	fmt.Printf("%.2f L\n", 1.2/oil.Density(875, 20)*1000)
	// Output:
	// 1.38 L
}
