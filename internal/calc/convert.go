package calc

import (
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

var convertFields = []field{{name: "text", kind: aText, needed: true}}

// convert gives a quantity, as a person types it, in every unit of its kind.
func convert(f *Form, a *Answer) {
	amount, list := quantity.Parse("", f.of("text").text, "", f.system)
	*f.list = append(*f.list, finding.At("/text", list)...)
	switch {
	case finding.Refused(list):
		return
	case amount.Base < 0 && amount.Kind != quantity.Temperature:
		f.reject("negative", "text", "value", amount.Print(amount.Unit))
	}
	a.word("kind", string(amount.Kind))
	a.number("base", amount.Base)
	var texts []string
	for i := range quantity.Units {
		if u := &quantity.Units[i]; u.Kind == amount.Kind {
			texts = append(texts, amount.Print(u.ID))
		}
	}
	a.list("texts", texts)
}
