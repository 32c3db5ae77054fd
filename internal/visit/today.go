package visit

import (
	"cmp"
	"slices"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// TodayInput are the visits of a day, to be sorted by what is most pressing.
type TodayInput struct {
	Visits []Visited
	Now    string // day and time on the phone's clock, "2026-11-30T16:20"
}

// Members names the members of the input.
func (t *TodayInput) Members(m *wire.Members) {
	wire.List(m, "visits", &t.Visits, wire.Required)
	m.String("now", &t.Now, wire.Required)
}

// Visited is a visit with the timers of its job.
type Visited struct {
	ID string // of its job
	Case
	Timers []string // when each ends, in the form of a fact's time

	unread []finding.Finding
}

// Members names the members of a visit of the list.
func (h *Visited) Members(m *wire.Members) {
	m.Lenient()
	m.String("id", &h.ID)
	h.Case.Members(m)
	wire.Texts(m, "timers", &h.Timers)
}

// Unread notes that the visit couldn't be read: it keeps no other from being listed.
func (h *Visited) Unread(found []finding.Finding) { h.unread = found }

// Today are the visits, the most pressing first.
type Today struct {
	Visits []TodayLine
	// Next is the id of the visit whose timer runs out first, and Until when; empty while
	// none counts.
	Next, Until string
}

// Members names the members of the list.
func (l *Today) Members(m *wire.Members) {
	wire.List(m, "visits", &l.Visits)
	m.String("next", &l.Next)
	m.String("until", &l.Until)
}

// TodayLine is what the list shows of a visit.
type TodayLine struct {
	ID         string
	Stage      Progress
	Promised   string // "2026-11-30T17:00"
	Late       bool   // that is over, and the bike still here
	Unanswered int
	Over       *Money
	Until      string // when its next timer runs out
	Handed     string // time
	arrived    string
}

// Members names the members of a line.
func (l *TodayLine) Members(m *wire.Members) {
	m.String("id", &l.ID, wire.Required)
	wire.Text(m, "stage", &l.Stage, wire.Required)
	m.String("promised", &l.Promised)
	m.Bool("late", &l.Late)
	m.Int("unanswered", &l.Unanswered)
	wire.Optional(m, "over", &l.Over)
	m.String("until", &l.Until)
	m.String("handed", &l.Handed)
}

// Sort sorts the visits: what was promised and is late, then where the customer has to
// be asked, then what is promised next; what was handed over today stands last, and
// what was before is left out. A visit in which nothing was told is none.
func (t *TodayInput) Sort() (*Today, []finding.Finding) {
	if !isMoment(t.Now) {
		return nil, finding.Refusal("bad-moment", "/now", "text", finding.Clip(t.Now))
	}
	l, day := &Today{}, t.Now[:len("2026-11-30")]
	for n := range t.Visits {
		h := &t.Visits[n]
		h.Adding = false
		v := Of(&h.Case)
		if h.unread != nil || v.Arrived == "" || v.Stage == Gone && v.HandedDay != day {
			continue
		}
		line := TodayLine{ID: h.ID, Stage: v.Stage, Promised: v.Promised, Unanswered: len(v.Unanswered), Over: v.Over, Handed: v.Handed, arrived: v.Arrived}
		line.Late = v.Stage != Gone && v.Promised != "" && v.Promised < t.Now
		if len(h.Timers) > 0 && v.Stage != Gone {
			line.Until = slices.Min(h.Timers)
			if l.Until == "" || line.Until < l.Until {
				l.Next, l.Until = h.ID, line.Until
			}
		}
		l.Visits = append(l.Visits, line)
	}
	slices.SortFunc(l.Visits, func(a, b TodayLine) int {
		return cmp.Or(cmp.Compare(a.group(), b.group()), strings.Compare(a.due(), b.due()), strings.Compare(a.arrived, b.arrived), strings.Compare(a.ID, b.ID))
	})
	return l, nil
}

// group is how pressing a visit is before its promise is looked at.
func (l *TodayLine) group() int {
	switch {
	case l.Stage == Gone:
		return 3
	case l.Late:
		return 0
	case l.Unanswered > 0:
		return 1
	}
	return 2
}

// due is the promise as a text that sorts: what was promised for no time comes last.
func (l *TodayLine) due() string { return cmp.Or(l.Promised, "~") }
