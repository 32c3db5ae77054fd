// Package bolt knows fasteners: threads, how tight they may be, and the wrenches
// that tighten them.
//
// Lengths and diameters are in mm, torques in N·m, forces in N, strengths and
// pressures in MPa, angles in degrees.
package bolt

import (
	"math"
	"strconv"
	"strings"

	"tidysump/internal/quantity"
)

// Thread is a straight screw thread.
type Thread struct {
	Name     string
	Diameter float64 // nominal, mm
	Pitch    float64 // mm
	Unified  bool    // ASME B1.1, and not ISO metric
	Coarse   bool    // its designation leaves the pitch out
}

// PitchOpen reports whether the pitch was left out of a designation of which screws
// with a fine one are as usual: ISO 262 selects fine pitches from M8 on. A cover's
// screws have the coarse one all the same, drain plugs mostly a fine one.
func (t *Thread) PitchOpen() bool { return t.Coarse && t.Diameter >= 8 }

// MayBe reports whether two designations may be of one thread: one may leave out the
// pitch that the other has.
func (t *Thread) MayBe(o *Thread) bool {
	return t.Diameter == o.Diameter && t.Unified == o.Unified && (t.Pitch == o.Pitch || t.PitchOpen() || o.PitchOpen())
}

// coarse is the ISO 261 coarse series: diameter and pitch in mm. A designation
// may leave its pitch out ("M6"), and manuals do so of caps that have no coarse pitch
// ("M35"): all of those sizes have one of 1.5 mm in ISO 261 (from memory).
var coarse = [...][2]float64{
	{3, 0.5}, {4, 0.7}, {5, 0.8}, {6, 1}, {7, 1}, {8, 1.25}, {10, 1.5}, {12, 1.75},
	{14, 2}, {16, 2}, {18, 2.5}, {20, 2.5}, {22, 2.5}, {24, 3}, {27, 3}, {30, 3.5}, {33, 3.5}, {36, 4},
	{39, 4}, {42, 4.5}, {45, 4.5}, {48, 5}, {52, 5}, {56, 5.5}, {60, 5.5},
	{15, 1.5}, {17, 1.5}, {25, 1.5}, {26, 1.5}, {28, 1.5}, {32, 1.5}, {35, 1.5}, {38, 1.5}, {40, 1.5}, {50, 1.5}, {55, 1.5}, {58, 1.5},
}

// ParseThread reads an ISO metric designation ("M12x1.5", "14*1.5", "M14x1.5-6g",
// "M6"), or a unified one in inches ("3/4-16 UNF", "1 1/16-12", "#10-32"). It reports
// false for anything else; diameters outside 2 to 60 mm and pitches outside 0.25 to
// 6 mm are no thread of an oil change.
func ParseThread(text string) (Thread, bool) {
	t := Thread{Name: strings.TrimSpace(quantity.PlainDigits(text))}
	s := plainThread(text)
	ok := t.metric(s)
	if !ok {
		ok = t.unified(s)
	}
	believable := t.Diameter >= 2 && t.Diameter <= 60 && t.Pitch >= 0.25 && t.Pitch <= 6 && t.Pitch < t.Diameter
	return t, ok && believable
}

// plainThread brings a designation to plain signs: capitals, X and a point, no blanks
// but a hyphen for one between digits.
func plainThread(text string) string {
	s := strings.ToUpper(quantity.Typed(text))
	for _, sign := range [...]string{"×", "*", "·", "Х", "✕"} { // the fourth is Cyrillic
		s = strings.ReplaceAll(s, sign, "X")
	}
	s = strings.ReplaceAll(s, ",", ".")
	s = strings.ReplaceAll(strings.ReplaceAll(s, "NO", "#"), "#.", "#")
	var b strings.Builder
	for i, r := range s {
		switch {
		case r == '"':
		case r != ' ':
			b.WriteRune(r)
		case strings.ContainsRune(figures, rune(s[i-1])) && strings.ContainsRune(figures, rune(s[i+1])):
			b.WriteByte('-')
		}
	}
	return b.String()
}

const figures = "0123456789"

// metric reads a designation as ISO 965-1 has it; the M may be left out where a pitch
// follows.
func (t *Thread) metric(s string) (ok bool) {
	size, named := strings.CutPrefix(s, "M")
	size, step, fine := strings.Cut(size, "X")
	if !fine {
		size = untolerated(size)
		t.Diameter, ok = decimal(size)
		for i := range coarse {
			if ok && named && coarse[i][0] == t.Diameter {
				t.Pitch, t.Coarse = coarse[i][1], true
				return true
			}
		}
		return false
	}
	t.Diameter, ok = decimal(size)
	if ok {
		t.Pitch, ok = decimal(untolerated(step))
	}
	return ok
}

// untolerated takes the tolerance class off the end, "-6g" or "-5g6g" (ISO 965-1).
func untolerated(s string) string {
	size, class, _ := strings.Cut(s, "-")
	if strings.Trim(class, "3456789EFGH/") == "" {
		return size
	}
	return s
}

// decimal reads a number of digits and one point; no sign, no exponent.
func decimal(s string) (float64, bool) {
	if strings.Trim(s, figures+".") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// inch is 25.4 mm exactly.
const inch = 25.4

// unified reads a designation as ASME B1.1 has it: size, threads an inch, and the
// series and class, which say nothing about either.
func (t *Thread) unified(s string) bool {
	if at := strings.Index(s, "UN"); at >= 0 {
		if rest := strings.TrimLeft(s[at:], "UNREFCSJ"); rest != "" && !isClass(strings.TrimPrefix(rest, "-")) {
			return false
		}
		s = strings.TrimSuffix(s[:at], "-")
	}
	parts := strings.Split(s, "-")
	last := len(parts) - 1
	if isClass(parts[last]) {
		last--
	}
	if last < 1 || last > 2 {
		return false
	}
	n, err := strconv.ParseUint(parts[last], 10, 8)
	size, ok := fraction(parts[last-1])
	number, numbered := strings.CutPrefix(parts[0], "#")
	if numbered || last == 1 && ok && size >= 3 && size == math.Trunc(size) {
		// A numbered size, of which none is coarser than 24 an inch.
		size, ok = decimal(number)
		ok = ok && last == 1 && size <= 12 && n >= 24
		size = 0.06 + 0.013*size
	}
	if last == 2 { // a whole number before the fraction
		whole, isWhole := decimal(parts[0])
		ok = ok && isWhole && size < 1 && whole == math.Trunc(whole) && whole > 0
		size += whole
	}
	t.Diameter, t.Pitch, t.Unified = size*inch, inch/float64(n), true
	return ok && err == nil && n > 0
}

// isClass reports whether a text is a class of tolerance of ASME B1.1, "2A".
func isClass(s string) bool {
	return len(s) == 2 && strings.Contains("123", s[:1]) && strings.Contains("AB", s[1:])
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
