package visit

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/quantity"
	"tidysump/internal/quote"
	"tidysump/internal/wire"
)

// Said is what was told of one thing at arrival, and holds.
type Said struct {
	Name  string // of the question
	ID    string // of the fact
	Time  string
	Value string   // as it was typed or chosen
	Texts []string // as it is read: in the person's units, or a word id after "@"; empty for money and a moment
	Money *Money
}

// Members names the members of what was said.
func (s *Said) Members(m *wire.Members) {
	m.String("name", &s.Name, wire.Required)
	m.String("id", &s.ID, wire.Required)
	m.String("time", &s.Time, wire.Required)
	m.String("value", &s.Value)
	wire.Texts(m, "texts", &s.Texts)
	wire.Optional(m, "money", &s.Money)
}

// Far enough for any bike, near enough to catch a slip of the key (common practice, no
// source).
const mostKm = 2e6

// say takes in what was told at arrival: the last of each holds, and an empty text
// takes it away.
func (r *replayer) say(f *ledger.Fact) {
	a := askOf(Asks[:], f.What)
	if a == nil {
		r.Fault(f, "unknown-word", "/what", finding.Refuse, "text", finding.Clip(f.What))
		return
	}
	s := Said{Name: a.Name, ID: f.ID, Time: f.Time, Value: f.Value}
	if a.Lines {
		s.Value = f.Text
	}
	if s.Value == "" {
		delete(r.told, a.Name)
		return
	}
	if r.reads(f, a, &s) {
		r.told[a.Name] = &s
	}
}

// reads reads what was told, and reports whether it can be used.
func (r *replayer) reads(f *ledger.Fact, a *Question, s *Said) bool {
	where := "/value"
	if a.Lines {
		where = "/text"
	}
	if a.Letters > 0 && !r.Short(f, where, s.Value, a.Letters) {
		return false
	}
	switch a.Kind {
	case aChoice:
		s.Texts = []string{"@" + a.Family + s.Value}
		return r.oneOf(f, a, where, s.Value)
	case aMoney:
		s.Money = r.money(f)
		return s.Money != nil
	case aMoment:
		return r.moment(f, where, s.Value)
	case string(quantity.Distance):
		typed := quantity.System(f.Signs["system"]) // of who typed it: a bare number is the same on every phone
		if !slices.Contains(quantity.Systems, typed) {
			typed = r.system
		}
		q := quantity.Ask{Kind: quantity.Distance, Unit: unitOf(typed), System: typed, High: mostKm}
		amount, list := q.Read(s.Value)
		for _, x := range list {
			r.Fault(f, x.Code, where, x.Grade, pairs(x.Values)...)
		}
		switch {
		case math.IsNaN(amount.Base):
			return false
		case amount.Base < 0:
			return !r.Fault(f, "negative", where, finding.Refuse, "value", amount.Print(amount.Unit))
		case amount.Base > mostKm:
			most := quantity.Amount{Kind: quantity.Distance, Base: mostKm, Unit: "km", Digits: 7}
			none := quantity.Amount{Kind: quantity.Distance, Unit: "km", Digits: 1}
			return !r.Fault(f, "not-believable", where, finding.Refuse, "value", amount.Print(amount.Unit), "low", none.Print(amount.Unit), "high", most.Print(amount.Unit))
		}
		s.Texts = amount.Show(r.system)
		return true
	}
	s.Texts = []string{s.Value}
	return true
}

func unitOf(system quantity.System) string {
	if system == quantity.Metric {
		return "km"
	}
	return "mi"
}

// oneOf refuses a word that isn't one of those offered.
func (r *replayer) oneOf(f *ledger.Fact, a *Question, where, word string) bool {
	if slices.Contains(a.Words, word) {
		return true
	}
	return !r.Fault(f, "unknown-word", where, finding.Refuse, "text", finding.Clip(word))
}

// money reads a fact's value as an amount; nil where it can't be.
func (r *replayer) money(f *ledger.Fact) *Money {
	a, fault := readMoney(f.Value, f.Signs["currency"])
	if fault != "" {
		where, text := "/value", finding.Clip(f.Value)
		if fault == "unknown-currency" {
			where, text = "/signs/currency", finding.Clip(f.Signs["currency"])
		}
		digits, _ := quote.Digits(f.Signs["currency"])
		r.Fault(f, fault, where, finding.Refuse, "text", text, "value", text, "places", strconv.Itoa(digits),
			"small", text+"0", "large", strings.ReplaceAll(strings.ReplaceAll(text, ".", ""), ",", ""))
	}
	return a
}

// moment refuses what is no day and time on the phone's clock.
func (r *replayer) moment(f *ledger.Fact, where, text string) bool {
	if isMoment(text) {
		return true
	}
	return !r.Fault(f, "bad-moment", where, finding.Refuse, "text", finding.Clip(text))
}

// isMoment tells "2026-11-30T17:00", which sorts as a text.
func isMoment(text string) bool {
	if len(text) != len("2026-11-30T17:00") || text[10] != 'T' || !date.Valid(text+":00.000Z") {
		return false
	}
	_, ok := date.ReadDay(text[:10])
	return ok
}

func pairs(values map[string]string) (list []string) {
	for name, value := range values {
		list = append(list, name, value)
	}
	return list
}
