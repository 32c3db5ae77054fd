package core

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/wire"
)

// cardInput is the input of an operation that needs no more than a card.
type cardInput struct{ card card.Card }

func (i *cardInput) Members(m *wire.Members) { m.Object("card", &i.card, wire.Required) }

// findingsAnswer is the answer of a check.
type findingsAnswer struct{ list []finding.Finding }

func (a *findingsAnswer) Members(m *wire.Members) { wire.Findings(m, "findings", &a.list) }

// checkCard answers with all findings about a card, also with those that
// refuse it: the check itself succeeded. Only what is not JSON is refused.
func checkCard(in []byte) (wire.Record, []finding.Finding) {
	var i cardInput
	list := wire.Read(in, &i)
	if len(list) > 0 && outcomeOf(list) == Malformed {
		return nil, list
	}
	if nameless(list) || !finding.Refused(list) {
		list = append(list, cardFindings(&i.card)...)
	}
	return &findingsAnswer{list}, nil
}

// nameless reports whether nothing worse is wrong with a card's form than that
// its name or its manual's is missing: it is being written, and may be checked.
func nameless(list []finding.Finding) bool {
	for _, f := range list {
		name := f.Where[strings.LastIndexByte(f.Where, '/')+1:]
		if f.Grade == finding.Refuse && (f.Code != "missing" || name != "make" && name != "model" && name != "title") {
			return false
		}
	}
	return true
}

// cardFindings checks the card that is the member "card" of an input.
func cardFindings(c *card.Card) []finding.Finding {
	list := card.Check(c)
	for n := range list {
		list[n].Where = "/card" + list[n].Where
	}
	return list
}

// readWithCard reads an input and checks the card in it. A card that couldn't
// be read in full is not checked: what is missing would be blamed twice.
func readWithCard(in []byte, into wire.Record, c *card.Card) []finding.Finding {
	list := wire.Read(in, into)
	if finding.Refused(list) {
		return list
	}
	return append(list, cardFindings(c)...)
}

type planInput struct {
	card  card.Card
	bench job.Bench
}

func (i *planInput) Members(m *wire.Members) {
	m.Object("card", &i.card, wire.Required)
	m.Object("bench", &i.bench)
}

func plan(in []byte) (wire.Record, []finding.Finding) {
	var i planInput
	if list := readWithCard(in, &i, &i.card); finding.Refused(list) {
		return nil, list
	}
	p, list := job.Make(&i.card, i.bench)
	if p == nil {
		return nil, list
	}
	return p, nil
}

type replayInput struct {
	planInput
	events []job.Event
	last   *job.Past // nil where there is none, or it can't be read
}

func (i *replayInput) Members(m *wire.Members) {
	i.planInput.Members(m)
	wire.List(m, "events", &i.events)
	wire.Optional(m, "last", &i.last)
}

// replayed runs the events of an input over its plan; nil when that can't be done.
func replayed(in []byte) (*job.State, []finding.Finding) {
	var i replayInput
	list := i.withoutLast(wire.Read(in, &i))
	if !finding.Refused(list) {
		list = cardFindings(&i.card)
	}
	if finding.Refused(list) {
		return nil, list
	}
	return job.ReplayAfter(i.last, &i.card, i.bench, i.events)
}

func replay(in []byte) (wire.Record, []finding.Finding) {
	s, list := replayed(in)
	if s == nil {
		return nil, list
	}
	return s, nil
}

// withoutLast takes out what was found about the last job, and that job if it
// can't be used: it must not keep the one under way from going on.
func (i *replayInput) withoutLast(found []finding.Finding) []finding.Finding {
	var own, foreign []finding.Finding
	for _, f := range found {
		if strings.HasPrefix(f.Where, "/last/") || f.Where == "/last" {
			foreign = append(foreign, f)
		} else {
			own = append(own, f)
		}
	}
	if i.last != nil && !finding.Refused(foreign) {
		foreign = card.Check(&i.last.Card)
	}
	if finding.Refused(foreign) {
		i.last = nil
	}
	return own
}
