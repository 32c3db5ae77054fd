package quantity

import (
	"math"
	"strings"

	"tidysump/internal/finding"
)

// mostText is the most bytes of a text in which a figure is looked for: above what any
// field offers room for.
const mostText = 300

// absoluteZero in °C, by the definition of the Celsius scale (SI Brochure, 9th ed., 2.3.1).
const absoluteZero = -273.15

// ReadRange reads what Read does, and ranges: "18–22 N·m", "18~22", "24 ± 2 N·m". For
// one figure both ends are the same, and ranged is false. A twin in another unit
// behind it, "25 N·m (18 lbf·ft)", is compared: the first counts. A whole line of a
// manual may stand there: "Wait: 3 minutes after idling 3–5 min" is three minutes, and
// what was not read is said.
func (q *Ask) ReadRange(text string) (low, high Amount, ranged bool, notes []finding.Finding) {
	text = Typed(text)
	if len(text) > mostText {
		a, notes := q.noNumber(text, text)
		return a.Amount, a.Amount, false, notes
	}
	line, beyond := cutLine(text)
	first, twin := cutTwin(line)
	a, b, ranged, notes := q.ends(first)
	if a.Kind == Temperature && !finding.Refused(notes) && !(AtLeast(a.Base, absoluteZero) && AtLeast(b.Base, absoluteZero)) {
		a, notes = q.refusal("below-absolute-zero", first)
	}
	if twin != "" && !finding.Refused(notes) {
		notes = append(notes, twins(a, b, first, twin)...)
	}
	if beyond != "" && !finding.Refused(notes) {
		notes = append(notes, finding.Finding{Code: "rest-not-read", Where: "/", Grade: finding.Note,
			Values: finding.Values("text", finding.Clip(line), "other", finding.Clip(beyond))})
	}
	if finding.Refused(notes) {
		a.Base, b.Base, ranged = math.NaN(), math.NaN(), false
	}
	return a.Amount, b.Amount, ranged, notes
}

// conditions are the words with which a line of a manual goes on behind its figure, and
// says when it holds. Common practice, no source.
const conditions = "after|at|before|each|every|excluding|for|from|if|in|including|incl.|on|once|when|while|with|without"

// cutLine takes from a line of a manual what it calls its figure, and parts it from what
// stands behind it and is no figure: "Wait: 3 minutes after idling" is "3 minutes" and
// "after idling". A text without a figure stays whole.
func cutLine(text string) (line, beyond string) {
	if name, rest, named := strings.Cut(text, ": "); named && !strings.ContainsAny(name, "0123456789") && begins(rest) {
		text = rest
	}
	read := false // a figure stands before it
	for i := range len(text) {
		read = read || digit(text[i])
		if !read || text[i] != ' ' {
			continue
		}
		word, _, more := strings.Cut(text[i+1:], " ")
		if more && oneOf(conditions, strings.ToLower(word)) && named(text[:i]) && !strings.HasSuffix(text[:i], "cu") { // "74 cu in"
			return text[:i], text[i+1:]
		}
	}
	return text, ""
}

// cutTwin takes the same figure in another unit off the end of a text.
func cutTwin(text string) (first, twin string) {
	for i := 1; i < len(text); i++ {
		before := strings.TrimRight(text[:i], " )]}")
		if before == "" || strings.IndexByte("([{/=,;", text[i]) < 0 {
			continue
		}
		bracket := strings.IndexByte("([{", text[i]) >= 0
		if rest := strings.Trim(text[i+1:], " )]}"); begins(rest) && (bracket || named(before)) {
			return before, rest
		}
	}
	return text, ""
}

// named reports whether a text ends with a unit: with no digit, but for the one of "cm2".
func named(text string) bool {
	last := len(text) - 1
	return !digit(text[last]) || last > 0 && text[last-1] >= 'A'
}

// begins reports whether a text begins with a number.
func begins(text string) bool {
	text = strings.TrimLeft(text, "+-.")
	return text != "" && digit(text[0])
}

// twins says where a twin is not the same amount, within the rounding of either,
// whatever system its unit is of. There may be more than one: "25 N·m (2.5 kgf·m,
// 18 lbf·ft)".
func twins(low, high figure, first, text string) (notes []finding.Finding) {
	for text != "" {
		twin, rest := cutTwin(text)
		text = rest
		agrees := false
		for _, system := range [...]System{Imperial, US} {
			q := Ask{Kind: low.Kind, System: system}
			a, b, _, list := q.ends(twin)
			if finding.Refused(list) {
				return list
			}
			agrees = agrees || same(low, a) && same(high, b)
		}
		if !agrees {
			notes = append(notes, finding.Finding{Code: "twin-differs", Where: "/", Grade: finding.Doubt,
				Values: finding.Values("text", finding.Clip(first), "other", finding.Clip(twin))})
		}
	}
	return notes
}

func same(a, b figure) bool {
	u, _ := Find(a.Unit)
	v, _ := Find(b.Unit)
	apart := a.Base - b.Base
	return AtMost(max(apart, -apart), a.half*u.Scale+b.half*v.Scale)
}

// separators part the ends of a range, and a figure from how far it may be off.
var separators = [...]string{"±", "...", "..", "~", "-", " to ", " bis "}

// cutSpread parts a range; low is "" for a single figure.
func cutSpread(text string) (low, between, high string) {
	for i := 1; i < len(text); i++ {
		for _, s := range separators {
			if !strings.HasPrefix(text[i:], s) || !strings.ContainsAny(text[:i], "0123456789") {
				continue
			}
			before, after := strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+len(s):])
			if v, _, fraction := cutFraction(after); s == "-" && fraction && v < 1 && strings.Trim(before, "0123456789") == "" && before != "0" {
				continue // "1-1/16" is one and a sixteenth
			}
			if begins(after) {
				return before, s, after
			}
		}
	}
	return "", "", text
}

// ends reads the two ends of a range.
func (q *Ask) ends(text string) (low, high figure, ranged bool, notes []finding.Finding) {
	before, between, after := cutSpread(text)
	if before == "" {
		low, notes = q.one(text, q.Unit)
		return low, low, false, notes
	}
	if percent, isShare := strings.CutSuffix(after, "%"); isShare && between == "±" {
		low, notes = q.one(before, q.Unit)
		part, ok := ParseNumber(percent)
		switch u, _ := Find(low.Unit); {
		case finding.Refused(notes):
			return low, low, true, notes
		case !ok:
			low, notes = q.refusal("not-a-number", percent)
			return low, low, true, notes
		case low.Kind != Share:
			part *= u.FromBase(low.Base) / 100
			return low.off(-part), low.off(part), true, notes
		}
	}
	high, more := q.one(after, "")
	if lacksUnit(more) { // it stands at the first, or nowhere
		low, notes = q.one(before, "")
		if lacksUnit(notes) {
			low.Unit = q.Unit
		}
		high, more = q.one(after, low.Unit)
	}
	if finding.Refused(more) { // one refusal says enough
		return high, high, true, more
	}
	low, notes = q.one(before, high.Unit)
	notes = append(notes, more...)
	if low.Kind != high.Kind && !finding.Refused(notes) { // "5 kg ± 1 L"
		low, notes = q.refusal("unit-of-other-kind", high.Unit)
	}
	if between == "±" && !finding.Refused(notes) {
		u, _ := Find(low.Unit)
		v, _ := Find(high.Unit)
		part := v.FromBase(high.Base) * v.Scale / u.Scale
		return low.off(-part), low.off(part), true, notes
	}
	return low, high, true, notes
}

// off gives a figure that is off by so many of its unit.
func (f figure) off(by float64) figure {
	u, _ := Find(f.Unit)
	v := u.FromBase(f.Base) + by
	f.Base, f.Digits = u.ToBase(v), significant(Number(v, 12))
	return f
}

func lacksUnit(list []finding.Finding) bool { return len(list) == 1 && list[0].Code == "no-unit" }
