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
	return decimals(value, digits-wholeDigits(value))
}

// wholeDigits counts the digits before the decimal point; zero or less for a
// value below one.
func wholeDigits(value float64) int {
	return int(math.Floor(math.Log10(math.Abs(value)))) + 1
}

// rounded rounds to that many places after the point; -1 rounds to tens, -2 to
// hundreds, ….
func rounded(value float64, places int) float64 {
	if places < 0 {
		step := math.Pow(10, float64(-places))
		return math.Round(value/step) * step
	}
	step := math.Pow(10, float64(places))
	if math.IsInf(step, 0) {
		return value
	}
	return math.Round(value*step) / step
}

// Down rounds towards nothing to so many significant digits. What a conversion leaves
// off a digit isn't missing.
func Down(value float64, digits int) float64 {
	if value == 0 {
		return 0
	}
	step := math.Pow(10, float64(wholeDigits(value)-digits))
	return math.Trunc(value/step*(1+1e-9)) * step
}

// decimals prints a value rounded so, without trailing zeros after the point.
func decimals(value float64, places int) string {
	s := strconv.FormatFloat(rounded(value, places), 'f', max(places, 0), 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// How far rounding may take a converted figure from the one given, and an estimate
// of two digits: by half of its second digit at most.
const farOff, roughlyOff = 0.01, 0.05

// Print gives the amount in the unit of that id, for instance "25 N·m". When it had
// to be converted it has no more digits than were given (two at least) and no more
// than can be set or poured, but as many as it takes to be within 1 %; an estimate
// of two digits never has more of them. A unit of another kind, or none, gives "".
func (a Amount) Print(unitID string) string {
	u, ok := Find(unitID)
	if !ok || u.Kind != a.Kind || math.IsNaN(a.Base) {
		return ""
	}
	return Range(a, a, u)
}

// number prints the value in a unit to so many places after the point, sizes that
// were given in inches as fractions.
func (a *Amount) number(u *Unit, places int) string {
	value := u.FromBase(a.Base)
	if n, ok := sixteenths(value); ok && u.ID == "in" && a.Unit == "in" {
		return inches(n)
	}
	return decimals(value, places)
}

// deserved counts the digits of an estimate: one that was rounded to tens, "70 mL",
// has no more than these.
func (a *Amount) deserved() int {
	u, _ := Find(a.Unit)
	value := u.FromBase(a.Base)
	text := Number(value, max(a.Digits, 1))
	if said, _ := strconv.ParseFloat(text, 64); !Near(said, value) {
		return a.Digits
	}
	return significant(strings.TrimRight(text, "0."))
}

// places says to how many places after the point the value is printed in a unit,
// and to how many at most, where the other end of a range has them.
func (a *Amount) places(u *Unit) (places, most int) {
	value := u.FromBase(a.Base)
	if value == 0 {
		return 0, 0
	}
	magnitude := wholeDigits(value)
	if u.ID == a.Unit {
		places = max(a.Digits, 1) - magnitude
		return places, places
	}
	off := farOff
	if a.Rough && a.Digits <= 2 {
		off = roughlyOff
	}
	places, most = settable(u.ID, value), 3-magnitude // three digits are within 1 %
	if a.Kind == Temperature {
		// A scale's zero is not nothing: its digits are those after the point.
		given, _ := Find(a.Unit)
		most = max(1, a.Digits-wholeDigits(given.FromBase(a.Base)))
	} else {
		places = min(places, max(a.Digits, 2)-magnitude)
	}
	for places < most && math.Abs(rounded(value, places)/value-1) > off {
		places++
	}
	if off == roughlyOff {
		most = places
	}
	return places, most
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

// Show gives the amount in the units of a system, the one a person would read
// first, then the others that may stand on a wrench or a bottle.
func (a Amount) Show(system System) []string { return Between(a, a, system) }

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
