package quantity

import (
	"math"
	"strconv"
	"strings"

	"tidysump/internal/finding"
)

// mostDigits are the most digits that a number may have: more than float64 holds.
// Nothing of an oil change is mostWhole.
const (
	mostDigits = 20
	mostWhole  = 1e15
)

// number is a number as it was typed.
type number struct {
	value  float64
	digits int     // significant ones
	step   float64 // what one more of the last digit is worth
	// thousands reports that the only mark may group thousands as well: "1,500".
	// Then the value is the smaller one, and whole the digits without the mark.
	thousands bool
	whole     string
	fraction  bool
}

// half is how far rounding may have moved a number: half a unit of its last digit,
// and where that is a zero before the mark a twentieth, as in "1000 km (600 mi)".
func (n *number) half() float64 {
	if n.step <= 1 {
		return n.step / 2
	}
	return max(0.5, min(n.step/2, math.Abs(n.value)/20))
}

// readNumber takes a comma or a point as the decimal mark, not both: in
// "1,000.5" one of them groups digits, and which is not ours to guess. Several of
// one kind group thousands.
func readNumber(s string) (n number, ok bool) {
	at := strings.IndexAny(s, ",.")
	if at >= 0 {
		if groups := strings.Split(s, s[at:at+1]); len(groups) > 2 && groupsOf3(groups) {
			s, at = strings.Join(groups, ""), -1
		}
	}
	plain := strings.Replace(s, ",", ".", 1)
	value, err := strconv.ParseFloat(plain, 64)
	if count := digits(s); count == 0 || count > mostDigits || err != nil || math.Abs(value) >= mostWhole {
		return n, false
	}
	n = number{value: value, digits: significant(s), step: 1}
	switch {
	case at >= 0:
		n.step = math.Pow(10, float64(at+1-len(s)))
		first := strings.TrimLeft(s[:at], "+-")
		n.thousands = len(s)-at == 4 && len(first) > 0 && len(first) <= 3 && first[0] != '0'
		n.whole = s[:at] + s[at+1:]
	default:
		n.step = lastDigit(s)
	}
	return n, true
}

// digits counts the digits of a text.
func digits(s string) (n int) {
	for _, c := range []byte(s) {
		if digit(c) {
			n++
		}
	}
	return n
}

// lastDigit is what one more of a whole number's last digit that isn't zero is worth.
func lastDigit(s string) float64 {
	return math.Pow(10, float64(len(s)-len(strings.TrimRight(s, "0"))))
}

// groupsOf3 reports whether these are the groups of one number's digits.
func groupsOf3(groups []string) bool {
	first := strings.TrimLeft(groups[0], "+-")
	for _, g := range groups[1:] {
		if len(g) != 3 {
			return false
		}
	}
	return len(first) > 0 && len(first) <= 3 && first[0] != '0'
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

func digit(c byte) bool { return c >= '0' && c <= '9' }

// split parts the number from the unit word, and brings the word to the form
// of the spellings. Signs that group the digits go.
func split(text string) (number, word string) {
	i := numberEnd(text)
	number = strings.ReplaceAll(strings.ReplaceAll(text[:i], " ", ""), "'", "")
	word = strings.TrimPrefix(strings.TrimPrefix(strings.TrimSpace(text[i:]), "of an "), "of a ")
	return number, bare(word)
}

func numberEnd(text string) int {
	i := 0
	for i < len(text) && (strings.IndexByte("+-0123456789.,", text[i]) >= 0 || groups(text, i)) {
		i++
	}
	return i
}

// groups reports whether the blank or apostrophe at i groups digits: "12 400" and
// "1'500" are numbers, "3 2000" and "1.5 400" are not.
func groups(text string, i int) bool {
	if text[i] != ' ' && text[i] != '\'' || i == 0 || !digit(text[i-1]) || strings.ContainsAny(text[:i], ".,") {
		return false
	}
	rest := text[i+1:]
	return len(rest) >= 3 && digit(rest[0]) && digit(rest[1]) && digit(rest[2]) &&
		(len(rest) == 3 || !digit(rest[3]))
}

// bare brings a unit word to the form of the spellings: lower case, without the
// blanks, points, brackets and signs of multiplication that are written in it or
// left out.
func bare(word string) string {
	plain := true
	for i := 0; i < len(word) && plain; i++ {
		c := word[i]
		plain = c >= 'a' && c <= 'z' || c >= '0' && c <= '9'
	}
	if plain {
		return word
	}
	var b strings.Builder
	for _, r := range strings.ToLower(word) {
		switch r {
		case ' ', '.', '-', '·', '*', '×', '^', '(', ')':
		case '²':
			b.WriteByte('2')
		case '³':
			b.WriteByte('3')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// ParseNumber reads a bare number as people type it, with point or comma. What a
// program wrote reads as itself: no mark groups thousands.
func ParseNumber(text string) (float64, bool) {
	figures, word := split(Typed(text))
	n, ok := readNumber(figures)
	return n.value, ok && word == ""
}

// ReadNumber reads a bare number as Read does a quantity. A refusal comes back with NaN.
func (q *Ask) ReadNumber(text string) (float64, []finding.Finding) {
	text = Typed(text)
	typed, word := split(text)
	n, ok := readNumber(typed)
	if !ok || word != "" {
		f, list := q.noNumber(typed, text)
		return f.Base, list
	}
	f, notes := q.settled(&n, typed, &noUnit, nil)
	return f.Base, notes
}
