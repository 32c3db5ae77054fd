package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Number prints a value with at most that many significant digits, and no
// trailing zeros after the decimal point.
func Number(value float64, digits int) string {
	if value == 0 {
		return "0"
	}
	magnitude := wholeDigits(value)
	return decimals(value, max(digits-magnitude, 0), magnitude-digits)
}

// wholeDigits counts the digits before the decimal point; zero or less for a
// value below one.
func wholeDigits(value float64) int {
	return int(math.Floor(math.Log10(math.Abs(value)))) + 1
}

// decimals rounds to that many digits after the point; with coarse > 0 it
// rounds to tens, hundreds, … instead.
func decimals(value float64, after, coarse int) string {
	if coarse > 0 {
		step := math.Pow(10, float64(coarse))
		value = math.Round(value/step) * step
	}
	s := strconv.FormatFloat(value, 'f', after, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// farOff is how far rounding may take a converted figure from the one given: a
// bottle's scale shows no less (common practice, no source).
const farOff = 0.01

// Print gives the amount in the unit of that id, for instance "25 N·m",
// rounded to what a person can set or pour and, when it had to be converted, to
// no more digits than were given (two at least, and one more where they would be
// 1 % off). A unit of another kind, or none, gives "".
func (a Amount) Print(unitID string) string {
	u, ok := Find(unitID)
	if !ok || u.Kind != a.Kind || math.IsNaN(a.Base) {
		return ""
	}
	value := u.FromBase(a.Base)
	if n, ok := sixteenths(value); ok && u.ID == "in" && a.Unit == "in" {
		return inches(n) + space(u)
	}
	if u.ID == a.Unit {
		return Number(value, max(a.Digits, 1)) + space(u)
	}
	fine, _ := settable(u.ID, value)
	after, coarse := fine.after, fine.coarse
	// A scale's zero is not nothing: digits say little about a temperature.
	if magnitude := wholeDigits(value); value != 0 && a.Kind != Temperature {
		digits := max(a.Digits, 2)
		if scale := math.Pow(10, float64(magnitude-digits)); math.Abs(math.Round(value/scale)*scale/value-1) > farOff {
			digits++ // "1 L" is 1.06 US qt and not 1.1
		}
		after = min(after, max(digits-magnitude, 0))
		coarse = max(coarse, magnitude-digits)
	}
	return decimals(value, after, coarse) + space(u)
}

// sixteenths gives a size in inches as sixteenths, false when it is none. It
// allows for the rounding of the way through millimetres.
func sixteenths(inches float64) (int, bool) {
	n := math.Round(inches * 16)
	return int(n), n >= 0 && n < 16000 && math.Abs(inches*16-n) < 1e-9
}

// inches prints sixteenths as spanners are marked: "5/8", "1 1/16".
func inches(sixteenths int) string {
	whole, top, bottom := sixteenths/16, sixteenths%16, 16
	for top > 0 && top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	switch {
	case top == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return strconv.Itoa(top) + "/" + strconv.Itoa(bottom)
	}
	return strconv.Itoa(whole) + " " + strconv.Itoa(top) + "/" + strconv.Itoa(bottom)
}

func space(u *Unit) string { return " " + u.ID }

// Show gives the amount in the units of a system, the one a person would read
// first, then the others that may stand on a wrench or a bottle.
func (a Amount) Show(system System) []string {
	ids := shown(a, system)
	out := make([]string, 0, len(ids))
	for _, id := range ids {
		if s := a.Print(id); s != "" {
			out = append(out, s)
		}
	}
	return out
}

// smallTorque is the torque in N·m below which lbf·in is shown too: below it
// wrenches are marked in lbf·in (common practice, no source).
const smallTorque = 15

func shown(a Amount, system System) []string {
	switch a.Kind {
	case Volume:
		return shownVolumes(a, system)
	case Torque:
		ids := []string{"N·m", "lbf·ft"}
		if system == US {
			ids = []string{"lbf·ft", "N·m"}
		}
		if a.Base < smallTorque {
			ids = append(ids, "lbf·in")
		}
		return ids
	case Temperature:
		return order(system == US, "°F", "°C")
	case Distance:
		return order(system == US || system == Imperial, "mi", "km")
	case Pressure:
		return order(system == US, "psi", "bar")
	case Mass:
		return order(system == US, "lb", "kg")
	}
	return []string{a.Unit}
}

func shownVolumes(a Amount, system System) []string {
	metric := "L"
	if a.Base < 0.5 && a.Unit != "L" {
		metric = "mL"
	}
	own := "US qt"
	if system == Imperial {
		own = "imp pt"
	}
	if a.Base < 0.4 {
		own = own[:strings.Index(own, " ")] + " fl oz"
	}
	return order(system == US, own, metric)
}

func order(foreignFirst bool, foreign, metric string) []string {
	if foreignFirst {
		return []string{foreign, metric}
	}
	return []string{metric, foreign}
}
