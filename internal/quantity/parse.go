package quantity

import (
	"math"
	"strconv"
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
	// unit never shows more.
	Digits int
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

// Parse reads what a person typed for a quantity of that kind (of any kind, if
// it is ""): a number with point or comma, or a fraction, and a unit in any
// usual spelling. Without a unit, standard is taken (a unit id). A refusal
// comes back with an Amount whose Base is NaN; what could be read in two ways
// is read in the likelier one and noted.
func Parse(kind Kind, text, standard string, system System) (Amount, []finding.Finding) {
	text = typed(text)
	number, word := split(text)
	value, digits, ok := parseNumber(number)
	if f, after, isFraction := cutFraction(text); isFraction {
		value, digits, word, ok = f, fractionDigits, after, true
	}
	if !ok {
		return refuse(kind, "not-a-number", text)
	}
	if word == "" {
		unit, known := Find(standard)
		if !known {
			return refuse(kind, "no-unit", text)
		}
		return grouped(number, value, digits, unit, kind, nil)
	}
	unit, notes, ok := findUnit(kind, word, system)
	if !ok {
		return refuse(kind, "unknown-unit", word)
	}
	return grouped(number, value, digits, unit, kind, notes)
}

// grouped reads "12,400 km" as thousands and says so: distances are typed from
// odometers and intervals, which count whole kilometres or miles.
func grouped(number string, value float64, digits int, unit *Unit, kind Kind, notes []finding.Finding) (Amount, []finding.Finding) {
	at := strings.IndexAny(number, ",.")
	if unit.Kind == Distance && at > 0 && at <= 3 && number[0] != '0' && len(number)-at == 4 {
		whole := number[:at] + number[at+1:]
		if v, n, ok := parseNumber(whole); ok {
			value, digits = v, n
			notes = append(notes, finding.Finding{Code: "number-read-as", Where: "/", Grade: finding.Note,
				Values: finding.Values("text", number, "number", whole)})
		}
	}
	return amount(kind, value, digits, unit, notes)
}

func amount(kind Kind, value float64, digits int, unit *Unit, notes []finding.Finding) (Amount, []finding.Finding) {
	if kind != "" && unit.Kind != kind {
		return refuse(kind, "unit-of-other-kind", unit.ID)
	}
	return Amount{Kind: unit.Kind, Base: unit.ToBase(value), Unit: unit.ID, Digits: digits}, notes
}

func refuse(kind Kind, code, text string) (Amount, []finding.Finding) {
	return Amount{Kind: kind, Base: math.NaN()}, finding.Refusal(code, "/", "text", finding.Clip(text), "kind", string(kind))
}

// marks are signs that phones and packagings have, and the plain ones for them.
var marks = [...][2]string{{"−", "-"}, {"\u00a0", " "}, {"\u202f", " "}, {"\u2009", " "},
	{"½", " 1/2"}, {"¼", " 1/4"}, {"¾", " 3/4"}, {"  ", " "}}

// typed brings such signs to plain ones.
func typed(text string) string {
	for i := range marks {
		text = strings.ReplaceAll(text, marks[i][0], marks[i][1])
	}
	return text
}

// split parts the number from the unit word, and brings the word to the form
// of the spellings. Spaces that group the digits go.
func split(text string) (number, word string) {
	text = strings.TrimSpace(text)
	i := 0
	for i < len(text) && (strings.IndexByte("+-0123456789.,", text[i]) >= 0 || groups(text, i)) {
		i++
	}
	return strings.ReplaceAll(text[:i], " ", ""), bare(text[i:])
}

// bare brings a unit word to the form of the spellings: lower case, without the
// blanks, points and signs of multiplication that are written in it or left out.
func bare(word string) string {
	word = strings.ToLower(word)
	for _, gone := range [...]string{" ", ".", "-", "·", "⋅", "*"} {
		word = strings.ReplaceAll(word, gone, "")
	}
	return strings.ReplaceAll(strings.ReplaceAll(word, "²", "2"), "³", "3")
}

// groups reports whether the space at i groups digits: "12 400" is a number,
// "3 2000" and "1.5 400" are not.
func groups(text string, i int) bool {
	if text[i] != ' ' || i == 0 || !digit(text[i-1]) || strings.ContainsAny(text[:i], ".,") {
		return false
	}
	rest := text[i+1:]
	return len(rest) >= 3 && digit(rest[0]) && digit(rest[1]) && digit(rest[2]) &&
		(len(rest) == 3 || !digit(rest[3]))
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// ParseNumber reads a bare number as people type it, with point or comma.
func ParseNumber(text string) (float64, bool) {
	number, word := split(typed(text))
	v, _, ok := parseNumber(number)
	return v, ok && word == ""
}

// parseNumber takes a comma or a point as the decimal mark, not both: in
// "1,000.5" one of them groups digits, and which is not ours to guess.
func parseNumber(s string) (value float64, digits int, ok bool) {
	if strings.Contains(s, ",") && strings.Contains(s, ".") || strings.Count(s, ",") > 1 {
		return 0, 0, false
	}
	s = strings.Replace(s, ",", ".", 1)
	value, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		return 0, 0, false
	}
	return value, significant(s), true
}

// significant counts the digits from the first that is not zero.
func significant(s string) int {
	n := 0
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c >= '1' && c <= '9' || c == '0' && n > 0 {
			n++
		}
	}
	return max(n, 1)
}

func findUnit(kind Kind, word string, system System) (*Unit, []finding.Finding, bool) {
	if stem := looseUnit(word); stem != "" && (kind == Volume || kind == "") {
		prefix, other := "US ", "imp "
		if system == Imperial {
			prefix, other = other, prefix
		}
		u, ok := Find(prefix + stem)
		note := finding.Finding{Code: "unit-read-as", Where: "/", Grade: finding.Note,
			Values: finding.Values("text", word, "unit", u.ID, "other", other+stem)}
		return u, []finding.Finding{note}, ok
	}
	for i := range Units {
		if Units[i].spelled(word) {
			return &Units[i], nil, true
		}
	}
	return &noUnit, nil, false
}
