// Package oil knows the grades and marks by which oils are sold, how thick an
// oil is at a temperature, what a mixture gives, and whether an oil at hand
// suits what a bike asks for.
//
// Viscosities are kinematic, in mm²/s (the same figure in cSt), temperatures
// in °C, densities in kg/m³. A figure that can't be had comes back as NaN or
// with ok false, never as a plausible wrong one.
package oil

import "slices"

// The names of the grades: those of SAE J300 for engine oils, coldest and
// thinnest first, in the order of Winters and Summers, then those of SAE J306
// for gear oils, which run beside them: a 75W-90 gear oil is about as thick as
// a 40 or 50 engine oil.
var (
	winterNames = []string{"", "0W", "5W", "10W", "15W", "20W", "25W", "70W", "75W", "80W", "85W"}
	summerNames = []string{"", "8", "12", "16", "20", "30", "40", "50", "60", "80", "85", "90", "110", "140", "190", "250"}
)

// Where the gear grades begin.
const (
	gearWinter = 7
	gearSummer = 9
)

// Family is the standard that a grade belongs to.
type Family string

// The families of grades.
const (
	EngineGrade Family = "SAE J300"
	GearGrade   Family = "SAE J306"
)

// Grade is a grade of SAE J300 or J306; a multigrade has both parts. The zero
// Grade is none.
type Grade struct {
	winter, summer int // in winterNames and summerNames
}

// String writes the grade as it stands on a bottle: "10W-40", "10W", "30".
func (g Grade) String() string {
	dash := ""
	if g.winter > 0 && g.summer > 0 {
		dash = "-"
	}
	return winterNames[g.winter] + dash + summerNames[g.summer]
}

// Designation is the grade as both standards call it, "SAE 10W-40"; "" of none.
func (g Grade) Designation() string {
	if g == (Grade{}) {
		return ""
	}
	return "SAE " + g.String()
}

// Gear reports whether the grade is one of J306.
func (g Grade) Gear() bool { return g.winter >= gearWinter || g.summer >= gearSummer }

// Summer is the grade's part without W; "" when it has only a cold grade.
func (g Grade) Summer() string { return summerNames[g.summer] }

// gradeOfParts gives the grade of its cold part, "10W", and its hot part, "40", of which
// one may be "". It reports false for what neither J300 nor J306 has.
func gradeOfParts(winter, summer string) (g Grade, ok bool) {
	g = Grade{slices.Index(winterNames, winter), slices.Index(summerNames, summer)}
	mixed := g.winter > 0 && g.summer > 0 && (g.winter >= gearWinter) != (g.summer >= gearSummer)
	if g.winter < 0 || g.summer < 0 || g.winter+g.summer == 0 || mixed {
		return Grade{}, false
	}
	return g, true
}
