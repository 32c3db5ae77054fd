package calc

import (
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

var convertFields = []field{{name: "text", kind: Text, says: Amount, needed: true}}

// convert gives a quantity or a range, as a person types it, in every unit of its kind.
func convert(f *Form, a *Answer) {
	q := quantity.Ask{System: f.system}
	low, high, ranged, list := q.ReadRange(f.of("text").text)
	*f.list = append(*f.list, finding.At("/text", list)...)
	switch {
	case finding.Refused(list):
		return
	case high.Base < low.Base:
		f.reject("range-reversed", "text", "value", finding.Clip(f.of("text").text))
	case low.Base < 0 && low.Kind != quantity.Temperature:
		f.reject("negative", "text", "value", low.Print(low.Unit))
	}
	a.word("kind", string(low.Kind))
	a.number("base", low.Base)
	if ranged {
		a.number("to", high.Base)
	}
	var texts []string
	for i := range quantity.Units {
		if u := &quantity.Units[i]; u.Kind == low.Kind {
			texts = append(texts, quantity.Range(low, high, u))
		}
	}
	a.list("texts", texts)
}
