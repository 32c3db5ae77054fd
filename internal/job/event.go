// Package job replays the events of an oil change over its plan into its state:
//
//	replay(plan, events) -> state    pure
//
// What a job leaves for later ones on the same bike is its trace. It holds no
// sentence: states and findings name entries of the word catalogue.
package job

import (
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// EventKind is what an event says happened.
type EventKind string

// The kinds of events.
const (
	Done    EventKind = "done"    // the step was done
	Reading EventKind = "reading" // a figure was read: What, Of and Value
	Note    EventKind = "note"    // somebody wrote something down: Text
	Undo    EventKind = "undo"    // the event named by Of never happened
	Finish  EventKind = "finish"  // the work was ended
	Timed   EventKind = "timer"   // the timer What of the step was started, and ends at Until
	Problem EventKind = "problem" // something was wrong: What, with the outcome as Value, and Signs
	Saw     EventKind = "look"    // somebody looked at what came out: Signs
	Billed  EventKind = "bill"    // money was written down: What is Estimate or Bill, Text what was typed
	Choose  EventKind = "choose"  // of the contents of the event About, the one of the digest Value counts
)

// kinds says of each kind whether it belongs to a step.
var kinds = [...]struct {
	kind   EventKind
	ofStep bool
}{
	{Done, true},
	{Reading, true},
	{Note, false},
	{Undo, false},
	{Finish, false},
	{Problem, false},
	{Photo, false},
	{Saw, true},
	{Timed, true},
	{Billed, false},
	{Choose, false},
}

// Letters that are offered for what is typed in a job: a note, and a reading with
// its unit.
const (
	NoteLetters    = 4000
	ReadingLetters = 40
)

// known reports whether there is such a kind, and whether it belongs to a step.
func (k EventKind) known() (known, ofStep bool) {
	for _, row := range kinds {
		if row.kind == k {
			return true, row.ofStep
		}
	}
	return false, false
}

// Event is one thing that happened during a job. Events are never changed and
// never removed; a mistake is mended by an Undo event.
type Event struct {
	ID   string
	Time string // RFC 3339 in UTC with milliseconds, "2026-11-25T10:09:01.000Z", as the phone's clock told it
	// Seq is the place of the event in its job, from 1: how many events the job had
	// before it, and one. Zero in events of earlier versions.
	Seq  int
	Day  string // the phone's own day, "2026-11-25"; empty in events of earlier versions
	Kind EventKind
	Step string // id of the step
	What string // of a reading: one of the Ask words; of a photo: what it shows
	// About is the circuit or fastener of a reading, or the event that an undo
	// cancels or a choice is about.
	About string
	Value string // as typed
	Text  string
	Until string // of a timer: when it ends, in the form of Time
	// Signs are answers by question: of a problem, and of a look by the names of
	// debris.Asks.
	Signs map[string]string
	// Manner says how it was told, in words of Manners parted by blanks; nil for what
	// was told as it was done. Most events have none, and a call may hold thousands.
	Manner *string

	unread *string // the member for which it can't be read, as a value of a sentence; nil where it was
}

// Unread notes that the event couldn't be read as a whole: it is kept and told, and
// keeps no other from being used.
func (e *Event) Unread(found []finding.Finding) {
	member, _, _ := strings.Cut(strings.TrimPrefix(found[0].Where, "/"), "/")
	if member = finding.Clip(member); member == "" {
		member = "@event.whole"
	}
	e.unread = &member
}

// Members names the event's members. None is required: a faulty event is reported
// by the replay and must not keep the others from being used.
func (e *Event) Members(m *wire.Members) {
	m.Lenient()
	m.String("id", &e.ID)
	m.String("time", &e.Time)
	m.Int("seq", &e.Seq)
	m.String("day", &e.Day)
	wire.Text(m, "kind", &e.Kind)
	m.String("step", &e.Step)
	m.String("what", &e.What)
	m.String("of", &e.About)
	m.String("value", &e.Value)
	m.String("text", &e.Text)
	m.String("until", &e.Until)
	m.TextMap("signs", &e.Signs)
	manner := e.inManner()
	m.String("manner", &manner)
	e.Manner = In(manner)
}
