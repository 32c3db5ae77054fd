package visit

import (
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Agreement is what a signature was given for, as it stood then.
type Agreement struct {
	Work     string
	Most     *Money
	Promised string
	Yes      int // troubles that the customer agreed to
}

// Members names the members of an agreement.
func (a *Agreement) Members(m *wire.Members) {
	m.Lenient()
	m.String("agreed", &a.Work)
	wire.Optional(m, "most", &a.Most)
	m.String("promised", &a.Promised)
	m.Int("yes", &a.Yes)
}

// text gives the agreement as a signature keeps it; "" where nothing was agreed.
func (a *Agreement) text() string {
	if a.Work == "" && a.Most == nil {
		return ""
	}
	return string(wire.Write(a))
}

// readAgreement reads what a signature keeps; ok is false for another program's text.
func readAgreement(text string) (a Agreement, ok bool) {
	list := wire.Read([]byte(text), &a)
	return a, !finding.Refused(list)
}

// unlike names what is other than it was signed for, by word ids. What a customer agreed
// to later is no change of what was signed at arrival.
func (a *Agreement) unlike(now *Agreement, arrival bool) (list []string) {
	if a.Work != now.Work {
		list = append(list, "visit.changed.agreed")
	}
	if !a.Most.same(now.Most) {
		list = append(list, "visit.changed.most")
	}
	if a.Promised != now.Promised {
		list = append(list, "visit.changed.promised")
	}
	if !arrival && a.Yes != now.Yes {
		list = append(list, "visit.changed.yes")
	}
	return list
}

// same reports whether two amounts are one, or both are none.
func (a *Money) same(b *Money) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}
