package core

import (
	"tidysump/internal/finding"
	"tidysump/internal/visit"
	"tidysump/internal/wire"
)

// visitAnswer is a visit, with what is asked in one.
type visitAnswer struct {
	*visit.Visit
	asks, others []visit.Question
}

func (a *visitAnswer) Members(m *wire.Members) {
	if a.Visit == nil {
		a.Visit = &visit.Visit{}
	}
	a.Visit.Members(m)
	wire.List(m, "asks", &a.asks)
	wire.List(m, "others", &a.others)
}

// visitInput is a visit as it is handed in.
type visitInput struct{ visit.Case }

// visitState says where the visit of a job stands.
func visitState(i *visitInput, _ []finding.Finding) (*visitAnswer, []finding.Finding) {
	if _, list := systemOf(i.System); list != nil {
		return nil, list
	}
	return &visitAnswer{visit.Of(&i.Case), visit.Asks[:], visit.Others[:]}, nil
}

// visitsToday sorts the visits of a day.
func visitsToday(t *visit.TodayInput, _ []finding.Finding) (*visit.Today, []finding.Finding) {
	return t.Sort()
}
