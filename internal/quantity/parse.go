package quantity

import (
	"math"
	"strings"

	"tidysump/internal/finding"
)

// System is the set of units that a person works in. It settles what "qt",
// "pt", "oz" and "gal" mean.
type System string

// The systems of units.
const (
	Metric   System = "metric"
	US       System = "us"
	Imperial System = "imperial"
)

// Systems lists the systems, the usual one first.
var Systems = []System{Metric, US, Imperial}

// Amount is a quantity as somebody gave it.
type Amount struct {
	Kind Kind
	Base float64 // in the base unit of the kind
	Unit string  // id of the one in which it was given
	// Digits are the significant digits that were given; printing in another
	// unit never shows more, unless it would be 1 % off.
	Digits int
	// Rough is an estimate: none of its texts has more digits than two, or Digits.
	Rough bool
}

// Half is how far rounding to its digits may have moved an amount, in the base unit.
func (a *Amount) Half() float64 {
	u, _ := Find(a.Unit)
	if v := math.Abs(u.FromBase(a.Base)); v > 0 && a.Digits > 0 {
		return math.Pow(10, math.Floor(math.Log10(v))+1-float64(a.Digits)) / 2 * u.Scale
	}
	return u.Scale / 2
}

// loose are unit words that mean something else in the US and in Britain: the
// end of the unit's id, and how people write it.
var loose = [...][2]string{
	{"qt", "qt|quart"},
	{"pt", "pt|pint"},
	{"fl oz", "oz|floz|ounce|fluidounce"},
	{"gal", "gal|gallon"},
}

// looseUnit gives the stem of a loose word, "" for another.
func looseUnit(word string) string {
	for i := range loose {
		if oneOf(loose[i][1], word) {
			return loose[i][0]
		}
	}
	return ""
}

// Ask is a question that is answered with a quantity.
type Ask struct {
	Kind   Kind   // of any kind, if it is ""
	Unit   string // id of the unit of a bare number
	System System
	// Low and High are what is believable in the base unit; nothing is known where
	// they are the same. They settle what can be read in two ways.
	Low, High float64
}

// Parse reads what a person typed for a quantity of that kind, where nothing is known
// of how much may be believed. See Ask.Read.
func Parse(kind Kind, text, standard string, system System) (Amount, []finding.Finding) {
	q := Ask{Kind: kind, Unit: standard, System: system}
	return q.Read(text)
}

// Read reads what a person typed: a number with point or comma, or a fraction, and a
// unit in any usual spelling; several of them that add up ("1 h 30 min"); its twin in
// another unit behind it. A refusal comes back with an Amount whose Base is NaN; what
// could be read in two ways is read in the likelier one and noted, or asked for.
func (q *Ask) Read(text string) (Amount, []finding.Finding) {
	low, _, ranged, notes := q.ReadRange(text)
	if ranged {
		return refuse(q.Kind, "one-figure", text)
	}
	return low, notes
}

// figure is one amount that was read.
type figure struct {
	Amount
	half float64 // how far rounding may have moved it, in its unit
}

// one reads one amount; standard is the unit of a bare number.
func (q *Ask) one(text, standard string) (figure, []finding.Finding) {
	text = strings.TrimLeft(text, "~≈ ")
	if rest, below := strings.CutPrefix(text, "- "); below {
		text = "-" + rest
	}
	if strings.Contains(text, ":") {
		return q.clock(text)
	}
	typed, word := split(text)
	n, isNumber := readNumber(typed)
	if v, after, isFraction := cutFraction(text); isFraction {
		n, word, isNumber = number{value: v, digits: fractionDigits, fraction: true}, after, true
	}
	switch {
	case !isNumber:
		return q.noNumber(typed, text)
	case word == "":
		return q.bare(&n, typed, text, standard)
	}
	unit, notes, ok := q.findUnit(word)
	switch {
	case !ok:
		return q.several(&n, text, word)
	case unit == nil: // degrees of whichever scale
		return q.bare(&n, typed, text, standard)
	}
	return q.settled(&n, typed, unit, notes)
}

// bare reads a number without a unit.
func (q *Ask) bare(n *number, typed, text, standard string) (figure, []finding.Finding) {
	unit, known := Find(standard)
	switch {
	case !known:
		return q.refusal("no-unit", text)
	case n.fraction && unit.Kind == Share:
		n.value *= 100
	case n.fraction && unit.Kind == Length: // nobody marks parts of a millimetre so
		unit, _ = Find("in")
	case n.fraction && unit.Kind == Angle:
		unit, _ = Find("turn")
	case unit.Kind == Share && n.value != 0 && math.Abs(n.value) < 2:
		// "0.5" of a level is half; of "1" nobody knows.
		often := takesLarge
		if math.Abs(n.value) >= 1 {
			often = asks
		}
		percent := func(v float64) string { return Number(v, 6) + " %" }
		notes, large := q.decide(unit, text, n.value, 100*n.value, percent(n.value), percent(100*n.value), often)
		if large {
			n.value *= 100
		}
		n.thousands = false
		return q.settled(n, typed, unit, notes)
	}
	return q.settled(n, typed, unit, nil)
}

// settled gives the amount, once it is settled whether its mark groups thousands.
func (q *Ask) settled(n *number, typed string, unit *Unit, notes []finding.Finding) (figure, []finding.Finding) {
	if q.Kind != "" && unit.Kind != q.Kind {
		return q.refusal("unit-of-other-kind", unit.ID)
	}
	if n.thousands {
		more, large := q.decide(unit, typed, n.value, 1000*n.value, typed+"0", n.whole, marks(unit))
		notes = append(notes, more...)
		if large {
			n.value, n.digits, n.step = 1000*n.value, significant(n.whole), lastDigit(n.whole)
		}
	}
	if finding.Refused(notes) {
		return figure{Amount: Amount{Kind: q.Kind, Base: math.NaN()}}, notes
	}
	return figure{Amount{Kind: unit.Kind, Base: unit.ToBase(n.value), Unit: unit.ID, Digits: n.digits}, n.half()}, notes
}

func (q *Ask) refusal(code, text string) (figure, []finding.Finding) {
	a, list := refuse(q.Kind, code, text)
	return figure{Amount: a}, list
}

// noNumber says why a text is no number.
func (q *Ask) noNumber(typed, text string) (figure, []finding.Finding) {
	if digits(typed) > 15 { // however it is written
		return q.refusal("number-too-long", text)
	}
	return q.refusal("not-a-number", text)
}

func refuse(kind Kind, code, text string) (Amount, []finding.Finding) {
	return Amount{Kind: kind, Base: math.NaN()}, finding.Refusal(code, "/", "text", finding.Clip(text), "kind", string(kind))
}

// findUnit gives the unit of a word, nil where it leaves open which of its kind.
func (q *Ask) findUnit(word string) (*Unit, []finding.Finding, bool) {
	if q.Kind == Temperature && oneOf("°|deg|degree", word) {
		return nil, nil, true
	}
	if stem := looseUnit(word); stem != "" && (q.Kind == Volume || q.Kind == "") {
		prefix, other := "US ", "imp "
		if q.System == Imperial {
			prefix, other = other, prefix
		}
		u, ok := Find(prefix + stem)
		note := finding.Finding{Code: "unit-read-as", Where: "/", Grade: finding.Note,
			Values: finding.Values("text", word, "unit", u.ID, "other", other+stem)}
		return u, []finding.Finding{note}, ok
	}
	if u, ok := Find(everySpelling()[word]); ok && u.spelled(word) {
		return u, nil, true
	}
	for i := range Units {
		if Units[i].spelled(word) {
			return &Units[i], nil, true
		}
	}
	return &noUnit, nil, false
}
