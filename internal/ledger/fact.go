// Package ledger holds facts: what is told of a bike, of a visit, of the workshop's own
// books. A fact is written once and never changed; one that was wrong is taken back by
// another. What is true follows from the set of them alone, so that two phones become
// one by union:
//
//	Standing(facts) -> facts that stand    pure
//
// What the facts of a book mean is the business of the room that reads it.
package ledger

import (
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Book is what a fact is told in.
type Book string

// The books.
const (
	BikeBook   Book = "bike"   // of a bike: its id
	VisitBook  Book = "visit"  // of a visit: the id of its job
	OilBook    Book = "oil"    // of a can of old oil
	ShelfBook  Book = "shelf"  // of a thing on the shelf
	WrenchBook Book = "wrench" // of a torque wrench
)

// FactKind is what a fact says. All books have Undo; the others are those of their rooms.
type FactKind string

// Undo is the kind of a fact that takes back the one that What names, in the same book
// and of the same subject. It holds unless one that holds takes it back.
const Undo FactKind = "undo"

// MostSeq is the highest number that a fact may have among those of its subject. What
// says a higher one, or one below zero, stands first, so that the next number that a
// phone gives is always behind all others.
const MostSeq = 1_000_000_000

// Letters that are offered for what is told: a word or figure, and a remark of several
// lines.
const (
	ValueLetters = 120
	TextLetters  = 4000
)

// Fact is one thing that somebody told.
type Fact struct {
	Book Book
	Of   string // the subject, an id
	ID   string // its own among those of its subject
	Kind FactKind
	Time string // RFC 3339 in UTC with milliseconds, as the phone's clock told it
	Day  string // the phone's own day, "2026-11-30"
	// Seq is one more than the highest that its subject had on the phone when it was
	// told, from 1 to MostSeq.
	Seq   int
	What  string // what it is about: a word of its kind, or an id
	Value string // as typed
	Text  string // in several lines
	Job   string // id of the job that it was told in
	Signs map[string]string

	unread string // the member for which it can't be read; empty where it was
	at     int    // place in the list that it came in
}

// Members names the fact's members. None is required: a faulty fact is told, and keeps
// no other from being used.
func (f *Fact) Members(m *wire.Members) {
	m.Lenient()
	wire.Text(m, "book", &f.Book)
	m.String("of", &f.Of)
	m.String("id", &f.ID)
	wire.Text(m, "kind", &f.Kind)
	m.String("time", &f.Time)
	m.String("day", &f.Day)
	m.Int("seq", &f.Seq)
	m.String("what", &f.What)
	m.String("value", &f.Value)
	m.String("text", &f.Text)
	m.String("job", &f.Job)
	m.TextMap("signs", &f.Signs)
}

// Unread notes that the fact couldn't be read as a whole: it is kept and told, and has
// no effect.
func (f *Fact) Unread(found []finding.Finding) {
	member, _, _ := strings.Cut(strings.TrimPrefix(found[0].Where, "/"), "/")
	f.unread = finding.Clip(member)
	if f.unread == "" {
		f.unread = "@event.whole"
	}
}

// key is what a fact is known by; of gives that of another fact of its subject.
func (f *Fact) key() string { return f.of(f.ID) }

func (f *Fact) of(id string) string { return string(f.Book) + "\n" + f.Of + "\n" + id }

// place is the fact's number among those of its subject, as far as it can be.
func (f *Fact) place() int {
	if f.Seq < 0 || f.Seq > MostSeq {
		return 0
	}
	return f.Seq
}
