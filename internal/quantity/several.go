package quantity

import (
	"math"
	"strings"

	"tidysump/internal/finding"
)

// several reads amounts of one kind that add up, the larger unit first: "1 h 30 min",
// "1 lb 4 oz", "1h30".
func (q *Ask) several(n *number, text, word string) (figure, []finding.Finding) {
	at := numberEnd(text)
	next := at
	for next < len(text) && !digit(text[next]) {
		next++
	}
	unit, notes, ok := q.findUnit(bare(text[at:next]))
	if !ok || unit == nil || next == len(text) || n.value < 0 || n.value != math.Trunc(n.value) {
		return q.refusal("unknown-unit", word)
	}
	smaller := ""
	if unit.ID == "h" {
		smaller = "min"
	}
	rest := Ask{Kind: unit.Kind, System: q.System}
	b, more := rest.one(text[next:], smaller)
	second, _ := Find(b.Unit)
	switch {
	case finding.Refused(more):
		return figure{Amount: b.Amount}, more
	case unit.Offset != 0 || second.Scale >= unit.Scale || b.Base < 0 || b.Base >= unit.Scale:
		return q.refusal("unknown-unit", word)
	}
	return q.sum(unit.ToBase(n.value)+b.Base, b, append(notes, more...))
}

// sum gives an amount of that many in the base unit, as finely as its last part.
func (q *Ask) sum(base float64, last figure, notes []finding.Finding) (figure, []finding.Finding) {
	unit, _ := Find(last.Unit)
	if q.Kind != "" && q.Kind != unit.Kind {
		return q.refusal("unit-of-other-kind", unit.ID)
	}
	last.Base = base
	last.Digits = significant(Number(unit.FromBase(base), 12))
	return last, notes
}

// clock reads a time as clocks show it: "1:30" is hours and minutes unless its unit or
// what is believable says minutes and seconds, "1:30:00" both.
func (q *Ask) clock(text string) (figure, []finding.Finding) {
	at := 0
	for at < len(text) && (digit(text[at]) || text[at] == ':') {
		at++
	}
	parts := strings.Split(text[:at], ":")
	total := 0.0
	for n, part := range parts {
		v, ok := readNumber(part)
		if !ok || len(part) > 4 || n > 0 && (len(part) != 2 || v.value >= 60) || n > 2 || len(parts) < 2 || q.Kind != "" && q.Kind != Duration {
			return q.refusal("not-a-number", text)
		}
		total = total*60 + v.value
	}
	minutes, _ := Find("min")
	unit := minutes // of the last part
	word := bare(text[at:])
	var notes []finding.Finding
	named, _, _ := q.findUnit(word)
	switch {
	case len(parts) == 3 && (word == "" || named != nil && named.ID == "h"), len(parts) == 2 && named != nil && named.ID == "min":
		unit, _ = Find("s")
	case len(parts) == 2 && named != nil && named.ID == "h":
	case len(parts) == 2 && word == "":
		large := false
		notes, large = q.decide(minutes, text, total/60, total, parts[0]+" min "+parts[1]+" s", parts[0]+" h "+parts[1]+" min", takesLarge)
		if !large {
			unit, _ = Find("s")
		}
	default:
		return q.refusal("unknown-unit", text)
	}
	return q.sum(unit.ToBase(total), figure{Amount: Amount{Kind: Duration, Unit: unit.ID}, half: 0.5}, notes)
}
