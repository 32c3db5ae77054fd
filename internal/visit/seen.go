package visit

import (
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/wire"
)

// Found is what the look round at arrival found.
type Found struct {
	ID    string
	Time  string
	What  string // a word of the question "found"
	Text  string
	Photo bool // a picture was taken; it may be missing on this phone
}

// Members names the members of what was found.
func (f *Found) Members(m *wire.Members) {
	m.String("id", &f.ID, wire.Required)
	m.String("time", &f.Time, wire.Required)
	m.String("what", &f.What, wire.Required)
	m.String("text", &f.Text)
	m.Bool("photo", &f.Photo)
}

// find takes in what the look round found: what it is, or a picture of it.
func (r *replayer) find(f *ledger.Fact) {
	photo := f.Signs["photo"] != ""
	switch {
	case !r.oneOf(f, askOf(Others[:], "found"), "/what", f.What):
	case !r.Short(f, "/text", f.Text, LongLetters):
	case !photo && !r.Told(f, "/text", f.Text, "@visit.ask.found.text"):
	default:
		r.v.Found = append(r.v.Found, Found{f.ID, f.Time, f.What, f.Text, photo})
	}
}

// Answers of a customer.
const (
	Yes        = "yes"
	No         = "no"
	NotReached = "not-reached" // asked for, and nobody there: still to be decided
)

// Snag is what was found during the work, and what the customer said of it.
type Snag struct {
	ID       string
	Time     string
	Text     string
	Photo    bool
	Price    *Money // nil where none was named
	Answer   string // Yes, No, NotReached; empty while nobody asked
	AnswerID string // of the fact that says so
	How      string // a word of the question "way"
	When     string // on the phone's own clock; empty where it was written down at once
	Answered string // time of the fact that says so
}

// Members names the members of a trouble.
func (t *Snag) Members(m *wire.Members) {
	m.String("id", &t.ID, wire.Required)
	m.String("time", &t.Time, wire.Required)
	m.String("text", &t.Text)
	m.Bool("photo", &t.Photo)
	wire.Optional(m, "price", &t.Price)
	m.String("answer", &t.Answer)
	m.String("answerID", &t.AnswerID)
	m.String("how", &t.How)
	m.String("when", &t.When)
	m.String("answered", &t.Answered)
}

// meet takes in trouble that was found during the work.
func (r *replayer) meet(f *ledger.Fact) {
	t := Snag{ID: f.ID, Time: f.Time, Text: f.Text, Photo: f.Signs["photo"] != ""}
	if f.Value != "" {
		t.Price = r.money(f)
		if t.Price == nil && f == r.New {
			return
		}
	}
	if r.Short(f, "/text", f.Text, LongLetters) && r.Told(f, "/text", f.Text, "@visit.ask.trouble.text") {
		r.v.Troubles = append(r.v.Troubles, t)
	}
}

// hear takes in what the customer said of a trouble: the last counts.
func (r *replayer) hear(f *ledger.Fact) {
	var of *Snag
	for n := range r.v.Troubles {
		if r.v.Troubles[n].ID == f.What {
			of = &r.v.Troubles[n]
		}
	}
	how, when := f.Signs["how"], f.Signs["when"]
	switch {
	case of == nil: // taken back since, which is nothing to tell
		if f == r.New {
			r.Fault(f, "trouble-unknown", "/what", finding.Refuse)
		}
	case !r.oneOf(f, askOf(Others[:], "answer"), "/value", f.Value):
	case how != "" && !r.oneOf(f, askOf(Others[:], "way"), "/signs/how", how):
	case when != "" && !r.moment(f, "/signs/when", when):
	default:
		of.Answer, of.AnswerID, of.How, of.When, of.Answered = f.Value, f.ID, how, when, f.Time
	}
}
