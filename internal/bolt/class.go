package bolt

import "tidysump/internal/quantity"

// Class is a property class of screws, or a grade of inch screws; 0: not known.
type Class int

// Classes are the names of the classes, the first being Class 1.
var Classes = []string{"4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9", "A2-70",
	"SAE grade 2", "SAE grade 5", "SAE grade 8"}

// Classes that other figures depend on.
const (
	Class88   Class = 6
	Stainless Class = 10 // austenitic
	Grade2    Class = 11
	Grade5    Class = 12
	Grade8    Class = 13
)

// Strength are least values in MPa.
type Strength struct {
	Tensile float64
	Yield   float64
	Proof   float64 // 0: not known
	// Memory: from memory, not out of a page that was read.
	Memory bool
}

// ksi is a thousand psi in MPa.
const ksi = 6.894757293168361

// strengths: ISO 898-1:2013 table 3; A2-70 is ISO 3506-1, its yield from memory:
// 450 MPa reproduces its published preloads. The grades are SAE J429, read in two
// copies that agree; its sizes begin at 1/4 in and end at 1 1/2 in. A screw
// of grade 2 that is longer than 6 in, which no oil change has, is as weak as one
// above 3/4 in. Each row holds for its class up to a diameter, the next one beyond.
var strengths = [...]struct {
	Class
	upTo float64 // mm, nominal
	Strength
}{
	{1, 60, Strength{400, 240, 225, false}},
	{2, 60, Strength{420, 340, 310, true}},
	{3, 60, Strength{500, 300, 280, true}},
	{4, 60, Strength{520, 420, 380, false}},
	{5, 60, Strength{600, 480, 440, true}},
	{Class88, 16, Strength{800, 640, 580, false}},
	{Class88, 60, Strength{830, 660, 600, false}},
	{7, 60, Strength{900, 720, 650, true}},
	{8, 60, Strength{1040, 940, 830, false}},
	{9, 60, Strength{1220, 1100, 970, false}},
	{Stainless, 60, Strength{700, 450, 0, true}},
	{Grade2, 3.0 / 4 * inch, Strength{74 * ksi, 57 * ksi, 55 * ksi, false}},
	{Grade2, mostGraded, Strength{60 * ksi, 36 * ksi, 33 * ksi, false}},
	{Grade5, inch, Strength{120 * ksi, 92 * ksi, 85 * ksi, false}},
	{Grade5, mostGraded, Strength{105 * ksi, 81 * ksi, 74 * ksi, false}},
	{Grade8, mostGraded, Strength{150 * ksi, 130 * ksi, 120 * ksi, false}},
}

// SAE J429 has figures for diameters from leastGraded to mostGraded, in mm.
const (
	leastGraded = inch / 4
	mostGraded  = 1.5 * inch
)

// Strength is the class's strength at a nominal diameter in mm, zero where the
// class isn't known, or its standard doesn't have the size.
func (c Class) Strength(diameter float64) Strength {
	if c >= Grade2 && !quantity.AtLeast(diameter, leastGraded) {
		return Strength{}
	}
	for n := range strengths {
		if s := &strengths[n]; s.Class == c && quantity.AtMost(diameter, s.upTo) {
			return s.Strength
		}
	}
	return Strength{}
}
