package wire

import (
	"strconv"

	"github.com/go-json-experiment/json/jsontext"

	"tidysump/internal/finding"
)

// Floats is a member that is an array of numbers, such as the points of a
// curve.
func Floats(m *Members, name string, list *[]float64, rules ...Rule) {
	if !m.Reading() {
		if len(*list) > 0 {
			m.out.name(name)
			m.out.open('[')
			for _, v := range *list {
				m.out.float(v)
			}
			m.out.close(']')
		}
		return
	}
	n := m.take(name, jsontext.KindBeginArray, "array", rules)
	if n == nil {
		return
	}
	for _, child := range n.members {
		if child.kind != jsontext.KindNumber {
			m.report.add("wrong-type", child.where(), finding.Refuse, "want", "number")
			continue
		}
		v, err := strconv.ParseFloat(child.text, 64)
		if err != nil {
			m.report.add("number-too-large", child.where(), finding.Refuse)
			continue
		}
		*list = append(*list, v)
	}
}
