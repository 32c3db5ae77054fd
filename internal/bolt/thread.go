// Package bolt knows fasteners: threads, how tight they may be, and the wrenches
// that tighten them.
//
// Lengths and diameters are in mm, torques in N·m, forces in N, strengths and
// pressures in MPa, angles in degrees.
package bolt

import (
	"strconv"
	"strings"
)

// Thread is a straight screw thread.
type Thread struct {
	Name     string
	Diameter float64 // nominal, mm
	Pitch    float64 // mm
	Unified  bool    // ASME B1.1, and not ISO metric
}

// coarse is the ISO 261 coarse series: diameter and pitch in mm. A designation
// may leave its pitch out ("M6").
var coarse = [...][2]float64{
	{3, 0.5}, {4, 0.7}, {5, 0.8}, {6, 1}, {8, 1.25}, {10, 1.5}, {12, 1.75},
	{14, 2}, {16, 2}, {18, 2.5}, {20, 2.5}, {22, 2.5}, {24, 3}, {30, 3.5}, {36, 4},
}

// ParseThread reads an ISO metric designation ("M12x1.5", "M6") or a unified
// one in inches ("3/4-16 UNF"). It reports false for anything else; diameters
// outside 2 to 60 mm and pitches outside 0.25 to 6 mm are no thread of an oil
// change.
func ParseThread(text string) (Thread, bool) {
	t := Thread{Name: strings.TrimSpace(text)}
	s := strings.ToUpper(strings.ReplaceAll(t.Name, " ", ""))
	s = strings.ReplaceAll(strings.ReplaceAll(s, "×", "X"), ",", ".")
	var ok bool
	if strings.HasPrefix(s, "M") {
		t.Diameter, t.Pitch, ok = metric(s[1:])
	} else {
		t.Unified = true
		t.Diameter, t.Pitch, ok = unified(s)
	}
	believable := t.Diameter >= 2 && t.Diameter <= 60 && t.Pitch >= 0.25 && t.Pitch <= 6 && t.Pitch < t.Diameter
	return t, ok && believable
}

func metric(s string) (diameter, pitch float64, ok bool) {
	size, step, fine := strings.Cut(s, "X")
	diameter, ok = decimal(size)
	if !ok {
		return 0, 0, false
	}
	if !fine {
		for i := range coarse {
			if coarse[i][0] == diameter {
				return diameter, coarse[i][1], true
			}
		}
		return diameter, 0, false
	}
	pitch, ok = decimal(step)
	return diameter, pitch, ok
}

// decimal reads a number of digits and one point; no sign, no exponent.
func decimal(s string) (float64, bool) {
	if strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// inch is 25.4 mm exactly.
const inch = 25.4

func unified(s string) (diameter, pitch float64, ok bool) {
	for _, series := range []string{"UNEF", "UNF", "UNC", "UNS", "UN"} {
		s = strings.TrimSuffix(s, series)
	}
	size, perInch, found := strings.Cut(s, "-")
	if !found {
		return 0, 0, false
	}
	n, err := strconv.ParseUint(perInch, 10, 8)
	if err != nil || n == 0 {
		return 0, 0, false
	}
	d, ok := fraction(size)
	return d * inch, inch / float64(n), ok
}

// fraction reads "3/4" or "1".
func fraction(s string) (float64, bool) {
	top, bottom, parted := strings.Cut(s, "/")
	a, ok := decimal(top)
	if !ok || !parted {
		return a, ok
	}
	b, ok := decimal(bottom)
	return a / b, ok && b > 0
}
