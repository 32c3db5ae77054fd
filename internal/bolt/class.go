package bolt

// Class is a property class of screws; 0: not known.
type Class int

// Classes are the names of the classes, the first being Class 1.
var Classes = []string{"4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9", "A2-70"}

// Classes that other figures depend on.
const (
	Class88   Class = 6
	Stainless Class = 10 // austenitic
)

// Strength are least values in MPa.
type Strength struct {
	Tensile float64
	Yield   float64
	Proof   float64 // 0: not known
	// Memory: from memory, not out of a page that was read.
	Memory bool
}

// strengths: ISO 898-1:2013 table 3; A2-70 is ISO 3506-1, its yield from memory:
// 450 MPa reproduces its published preloads. The last is 8.8 above 16 mm.
var strengths = [...]Strength{
	{},
	{400, 240, 225, false},
	{420, 340, 310, true},
	{500, 300, 280, true},
	{520, 420, 380, false},
	{600, 480, 440, true},
	{800, 640, 580, false},
	{900, 720, 650, true},
	{1040, 940, 830, false},
	{1220, 1100, 970, false},
	{700, 450, 0, true},
	{830, 660, 600, false},
}

// Strength is the class's strength at a nominal diameter in mm, zero where the
// class isn't known.
func (c Class) Strength(diameter float64) Strength {
	if c == Class88 && diameter > 16 {
		c = Class(len(strengths) - 1)
	}
	return strengths[c]
}
