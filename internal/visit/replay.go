package visit

import (
	"cmp"

	"tidysump/internal/ledger"
	"tidysump/internal/quantity"
	"tidysump/internal/quote"
	"tidysump/internal/wire"
)

// Case is a visit as it is handed in: its facts, and what its job says.
type Case struct {
	ledger.Input
	System quantity.System // metric, if it is empty
	// Total of the job's bill, else of its estimate, in minor units of Currency; nothing
	// is known while Currency is empty.
	Total    int
	Currency string
	Started  bool // steps of the job are done
	Finished bool // the work is done
}

// Members names the members of the input.
func (i *Case) Members(m *wire.Members) {
	i.Input.Members(m)
	wire.Text(m, "system", &i.System)
	m.Int("total", &i.Total)
	m.String("currency", &i.Currency)
	m.Bool("started", &i.Started)
	m.Bool("finished", &i.Finished)
}

type replayer struct {
	*ledger.Reading
	system quantity.System
	told   map[string]*Said
	v      *Visit
}

// Of works a visit out. The facts are those of one job; one that is refused has no
// effect.
func Of(i *Case) *Visit {
	r := &replayer{Reading: i.Read(), system: i.System, told: map[string]*Said{}, v: &Visit{}}
	if r.system == "" {
		r.system = quantity.Metric
	}
	for _, f := range r.Standing {
		if r.v.Arrived == "" {
			r.v.Arrived = f.Time
		}
		r.take(f)
	}
	for n := range Asks {
		if s := r.told[Asks[n].Name]; s != nil {
			r.v.Said = append(r.v.Said, *s)
		}
	}
	for n := range r.v.Troubles {
		if t := &r.v.Troubles[n]; r.v.Handed == "" && (t.Answer == "" || t.Answer == NotReached) {
			r.v.Unanswered = append(r.v.Unanswered, t.ID)
		}
	}
	r.costs(i)
	r.compare()
	now := r.agreement()
	r.v.Agreement, r.v.Promised = now.text(), now.Promised
	r.v.Stage = r.stage(i)
	r.v.Findings = r.Findings
	return r.v
}

func (r *replayer) take(f *ledger.Fact) {
	switch f.Kind {
	case Told:
		r.say(f)
	case Seen:
		r.find(f)
	case Met:
		r.meet(f)
	case Answered:
		r.hear(f)
	case Signed:
		r.sign(f)
	case Handed:
		r.v.Handed, r.v.HandedID, r.v.HandedDay = f.Time, f.ID, cmp.Or(f.Day, f.Time[:len("2026-11-30")])
	default:
		r.Unknown(f)
	}
}

// agreement is what was agreed as it stands.
func (r *replayer) agreement() (a Agreement) {
	if s := r.told[Work]; s != nil {
		a.Work = s.Value
	}
	if s := r.told[Most]; s != nil {
		a.Most = s.Money
	}
	if s := r.told[Promised]; s != nil {
		a.Promised = s.Value
	}
	for n := range r.v.Troubles {
		if r.v.Troubles[n].Answer == Yes {
			a.Yes++
		}
	}
	return a
}

// costs says what the work may cost, and whether it costs more. What was agreed to
// later without a price, or in another currency, leaves open what it may cost.
func (r *replayer) costs(i *Case) {
	if s := r.told[Most]; s != nil {
		limit := *s.Money
		r.v.Most, r.v.Limit = s.Money, &limit
	}
	for n := range r.v.Troubles {
		t := &r.v.Troubles[n]
		if t.Answer != Yes || r.v.Limit == nil {
			continue
		}
		if t.Price == nil || t.Price.Currency != r.v.Limit.Currency {
			r.v.Limit = nil
			break
		}
		r.v.Limit.Minor = min(r.v.Limit.Minor+t.Price.Minor, quote.Most)
	}
	digits, known := quote.Digits(i.Currency)
	if !known {
		return
	}
	r.v.Costs = &Money{i.Total, digits, i.Currency}
	if l := r.v.Limit; l != nil && l.Currency == i.Currency && i.Total > l.Minor {
		r.v.Over = &Money{i.Total - l.Minor, digits, i.Currency}
	}
}

func (r *replayer) stage(i *Case) Progress {
	switch {
	case r.v.Handed != "":
		return Gone
	case len(r.v.Unanswered) > 0:
		return Asking
	case i.Finished:
		return Ready
	case i.Started:
		return Working
	case r.v.Agreement != "":
		return Agreed
	}
	return Begun
}
