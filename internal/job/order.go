package job

import (
	"bytes"
	"cmp"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// placed is an event with its place in the list it came in, and in the replay.
type placed struct {
	*Event
	list     string     // it came in: a JSON pointer
	at       int        // place in that
	order    int        // place in the replay
	step     *plan.Step // nil where the plan doesn't have it
	place    int        // in the job, as far as it can be: 0 to the number of events
	beyond   bool       // it says a place that no event of this job has
	timeless bool       // its time is none
	counts   bool       // an undo at the bench would take it back
	// counted and day are what is believed of its time and day: see believe.
	counted string
	day     int
}

func (e *placed) where() string { return e.list + "/" + strconv.Itoa(e.at) }

// place gives an event of a job that has so many.
func place(e *Event, list string, at, most int) *placed {
	return &placed{Event: e, list: list, at: at, place: max(0, min(e.Seq, most)), beyond: e.Seq > most, timeless: !date.Valid(e.Time)}
}

// inOrder says which of two events comes first: the one that says a lower place in
// its job. Events of earlier versions say none and come before all others, in the
// order of time. One that says a place beyond the record comes before those that
// were there honestly: whatever it says, what is written next stands behind it.
func inOrder(x, y *placed) int {
	if order := cmp.Or(cmp.Compare(x.place, y.place), boolFirst(x.beyond, y.beyond), boolFirst(y.timeless, x.timeless),
		strings.Compare(x.Time, y.Time), strings.Compare(x.ID, y.ID)); order != 0 {
		return order
	}
	return byContent(x.Event, y.Event)
}

// byContent orders the contents of two events of one id and time, so that the list they
// came in doesn't.
func byContent(x, y *Event) int {
	if order := cmp.Or(strings.Compare(string(x.Kind), string(y.Kind)), strings.Compare(x.Step, y.Step), strings.Compare(x.What, y.What),
		strings.Compare(x.About, y.About), strings.Compare(x.Value, y.Value), strings.Compare(x.Text, y.Text),
		strings.Compare(x.Until, y.Until), strings.Compare(x.Day, y.Day), strings.Compare(x.inManner(), y.inManner()), cmp.Compare(x.Seq, y.Seq)); order != 0 {
		return order
	}
	if len(x.Signs) == 0 && len(y.Signs) == 0 {
		return 0
	}
	return bytes.Compare(wire.Write(x), wire.Write(y))
}

// boolFirst orders what is so before what isn't.
func boolFirst(x, y bool) int {
	switch {
	case x == y:
		return 0
	case x:
		return -1
	}
	return 1
}

// number counts the events of a job, each id once, those that can't be read among
// them.
func number(events []Event) int {
	ids := make(map[string]bool, len(events))
	nameless := 0
	for i := range events {
		if id := events[i].ID; id == "" {
			nameless++
		} else {
			ids[id] = true
		}
	}
	return len(ids) + nameless
}

// sortEvents puts events in their order and numbers them.
func sortEvents(list []*placed) {
	slices.SortStableFunc(list, inOrder)
	for i, e := range list {
		e.order = i
	}
}
