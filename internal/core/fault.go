package core

import (
	"tidysump/internal/fault"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// faultInput is a problem of the table, with what was answered and is at hand.
type faultInput struct {
	table   fault.Table
	id      string
	answers map[string]string
	hand    []string
}

func (i *faultInput) Members(m *wire.Members) {
	m.Object("table", &i.table, wire.Required)
	m.String("id", &i.id, wire.Required)
	m.TextMap("answers", &i.answers)
	wire.Texts(m, "hand", &i.hand)
}

// faultAnswer is what follows, with its cautions' signal words.
type faultAnswer struct {
	fault.Verdict
	warns []plan.Warn
}

func (a *faultAnswer) Members(m *wire.Members) {
	m.String("outcome", &a.Outcome)
	m.String("to", &a.To)
	wire.Texts(m, "open", &a.Open)
	wire.Texts(m, "other", &a.Other)
	m.String("why", &a.Why)
	m.Bool("feared", &a.Feared)
	wire.List(m, "warns", &a.warns)
	wire.Texts(m, "now", &a.Now)
	wire.Texts(m, "limits", &a.Limits)
	wire.Texts(m, "home", &a.Home)
	wire.Texts(m, "until", &a.Until)
	m.String("sure", &a.Sure)
	m.String("source", &a.Source)
}

// judgeFault says what to do about something that is wrong.
func judgeFault(i *faultInput, _ []finding.Finding) (*faultAnswer, []finding.Finding) {
	f := i.table.Find(i.id)
	if f == nil {
		return nil, finding.Refusal("unknown-fault", "/id", "text", finding.Clip(i.id))
	}
	a := &faultAnswer{Verdict: *fault.Judge(&i.table, f, i.answers, i.hand)}
	for _, w := range a.Warns {
		a.warns = append(a.warns, plan.Warn{Signal: plan.Signal(i.table.Warns[w]), Word: w})
	}
	return a, nil
}
