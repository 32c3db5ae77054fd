package calc

import (
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// WrenchChecked is what a check of a torque wrench says that was written down: the
// calculation "wrench-check" of what was typed, by the names of its fields. readings are
// those that it answered at. The verdict is a word id, empty where there is no reading;
// the places of the findings are those of the calculation's input.
func WrenchChecked(typed map[string]string, readings []string, by, shownIn quantity.System) (verdict string, figures []shown.Figure, found []finding.Finding) {
	f := newForm(wrenchCheckFields[:])
	f.system = by
	f.given = make([]given, len(f.fields))
	for n := range f.fields {
		switch d := &f.fields[n]; d.kind {
		case List:
			for _, text := range readings {
				f.given[n].rows = append(f.given[n].rows, Form{fields: d.rows, given: []given{{text: quantity.Typed(text)}}, list: f.list})
			}
			for row := range f.given[n].rows {
				f.given[n].rows[row].at = "/readings"
			}
		case Choice:
			f.given[n].text = typed[d.name]
		default:
			f.given[n].text = quantity.Typed(typed[d.name])
		}
	}
	if !f.settle(nil) {
		return "", nil, *f.list
	}
	a := &Answer{system: shownIn}
	wrenchCheck(f, a)
	if !f.refused() {
		verdict, figures = a.put("verdict", holdsWord).text, a.put("figures", holdsFigures).figures
	}
	return verdict, figures, *f.list
}
