// Package oil knows the grades and marks by which oils are sold.
package oil

// engineGrades are the grades of SAE J300; a multigrade joins a W grade and
// one without.
var winterGrades = map[string]bool{"0W": true, "5W": true, "10W": true, "15W": true, "20W": true, "25W": true}
var summerGrades = map[string]bool{"8": true, "12": true, "16": true, "20": true, "30": true, "40": true, "50": true, "60": true}

// gearGrades are the grades of SAE J306, which run beside those of J300: a
// 75W-90 gear oil is about as thick as a 40 or 50 engine oil.
var gearWinter = map[string]bool{"70W": true, "75W": true, "80W": true, "85W": true}
var gearSummer = map[string]bool{"80": true, "85": true, "90": true, "110": true, "140": true, "190": true, "250": true}

// Family is the standard that a grade belongs to.
type Family string

// The families of grades.
const (
	EngineGrade Family = "SAE J300"
	GearGrade   Family = "SAE J306"
)

// ParseGrade tells which standard a grade such as "10W-40" or "80W-90" belongs
// to, and false when neither knows it.
func ParseGrade(text string) (Family, bool) {
	winter, summer := cutGrade(text)
	switch {
	case fits(winter, winterGrades, summer, summerGrades):
		return EngineGrade, true
	case fits(winter, gearWinter, summer, gearSummer):
		return GearGrade, true
	}
	return "", false
}

// cutGrade parts "10W-40" into "10W" and "40"; a single grade leaves the other
// part empty.
func cutGrade(text string) (winter, summer string) {
	for i := 0; i < len(text); i++ {
		if text[i] == 'W' {
			winter, summer = text[:i+1], text[i+1:]
			if len(summer) > 1 && summer[0] == '-' {
				summer = summer[1:]
			}
			return winter, summer
		}
	}
	return "", text
}

func fits(winter string, winters map[string]bool, summer string, summers map[string]bool) bool {
	if winter == "" && summer == "" {
		return false
	}
	return (winter == "" || winters[winter]) && (summer == "" || summers[summer])
}

// Marks are the marks of JASO T903 for four-stroke motorcycle oils: MA, MA1
// and MA2 for wet clutches, MB for machines without one.
var Marks = []string{"MA", "MA1", "MA2", "MB"}

// WetClutchMark reports whether a JASO T903 mark is one for wet clutches.
func WetClutchMark(mark string) bool { return mark == "MA" || mark == "MA1" || mark == "MA2" }
