package specs_test

import (
	"strings"
	"testing"

	"tidysump/internal/visit"
)

// visitWords are those of a customer's visit: what is asked and may be chosen there, and
// how far it has come.
func visitWords(t *testing.T) []family {
	ask := family{"visit.ask.", nil, plain}
	list := []family{{"visit.stage.", texts(visit.Stages), plain}, {"visit.moment.", []string{"date", "time"}, plain}, {"visit.signed.", visit.Moments, plain}}
	for _, q := range append(visit.Asks[:], visit.Others[:]...) {
		if q.Name != "text" && q.Name != "line" && q.Name != "points" { // letters alone
			ask.members = append(ask.members, q.Name)
		}
		if q.Family != "" {
			list = append(list, family{q.Family, q.Words, plain})
		}
	}
	var faults []string
	for _, text := range literals(goSources(t, "internal/visit")) {
		if strings.HasPrefix(text, "signature-") {
			faults = append(faults, text)
		}
	}
	return append(list, ask, family{"finding.", faults, []string{"", ".do"}})
}
