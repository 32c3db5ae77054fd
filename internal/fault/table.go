// Package fault says what to do when something is wrong with the oil, its plug,
// filter or level, in a garage or at the roadside: whether to carry on, to ride
// gently, not to ride or not to start, and what can be done with what is at hand.
//
// The rules are data (specs/faults.json), each with its source or the word that it
// has none. Nothing is called safe: the best outcome is that no reason was found to
// stop. What nobody answered counts as the worst that it may be.
package fault

import "tidysump/internal/wire"

// Outcomes are what may follow, from the best to the worst.
var Outcomes = []string{"carry-on", "ride-gently", "do-not-ride", "do-not-start"}

// Rank gives an outcome's place among them, from 1; the higher the worse. What is
// no outcome has 0.
func Rank(outcome string) int {
	for n, o := range Outcomes {
		if o == outcome {
			return n + 1
		}
	}
	return 0
}

// Stops reports whether an outcome keeps the bike where it is.
func Stops(outcome string) bool { return Rank(outcome) > Rank("ride-gently") }

// Table is all that is known of what can go wrong.
type Table struct {
	Format    string
	Version   int
	Questions map[string]string // the possible answers of each, blanks between
	Warns     map[string]string // signal word of each caution, by its word id
	Faults    []Fault
}

// Members names the table's members.
func (t *Table) Members(m *wire.Members) {
	m.String("format", &t.Format)
	m.Int("version", &t.Version)
	m.TextMap("questions", &t.Questions)
	m.TextMap("warns", &t.Warns)
	wire.List(m, "faults", &t.Faults)
}

// Find gives the problem of that id, nil when there is none.
func (t *Table) Find(id string) *Fault {
	for n := range t.Faults {
		if t.Faults[n].ID == id {
			return &t.Faults[n]
		}
	}
	return nil
}

// Doors are what one chooses among first, by what one sees: behind each stand its
// problems.
var Doors = []string{"lamp", "drop", "plug", "amount"}

// Fault is one problem, as one sees it. Of its rows the first that holds counts.
type Fault struct {
	ID, Group string
	Door      string   // one of Doors
	Top       bool     // it stands before the doors too, since it can't wait
	At        []string // steps of a job, without "step.", at which it stands on top
	Aid       bool     // first aid comes before it
	Calc      string   // the calculation that judges it more closely
	Asks      []string // ids of its questions
	Hand      []string // what may be at hand that changes the answer
	Rows      []Row
}

// Members names the problem's members.
func (f *Fault) Members(m *wire.Members) {
	m.String("id", &f.ID, wire.Required)
	m.String("group", &f.Group)
	m.String("door", &f.Door)
	m.Bool("top", &f.Top)
	wire.Texts(m, "at", &f.At)
	m.Bool("aid", &f.Aid)
	m.String("calc", &f.Calc)
	wire.Texts(m, "asks", &f.Asks)
	wire.Texts(m, "hand", &f.Hand)
	wire.List(m, "rows", &f.Rows)
}

// Row is a rule: when the answers are such and these things are at hand, that
// follows. All but Outcome are word ids; Sure is "sure", "likely" or "guess".
type Row struct {
	When    map[string]string // by question: the answers that fit, blanks between
	With    []string          // all of them are at hand
	Outcome string
	To      string // how far it may be ridden gently
	Why     string
	Now     []string
	Limits  []string
	Home    []string
	Until   []string // what has to be seen before it is ridden again
	Warns   []string
	Sure    string
	Source  string
}

// Members names the row's members.
func (r *Row) Members(m *wire.Members) {
	m.TextMap("when", &r.When)
	wire.Texts(m, "with", &r.With)
	m.String("outcome", &r.Outcome)
	m.String("to", &r.To)
	m.String("why", &r.Why)
	wire.Texts(m, "now", &r.Now)
	wire.Texts(m, "limits", &r.Limits)
	wire.Texts(m, "home", &r.Home)
	wire.Texts(m, "until", &r.Until)
	wire.Texts(m, "warns", &r.Warns)
	m.String("sure", &r.Sure)
	m.String("source", &r.Source)
}
