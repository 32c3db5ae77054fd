package job

import (
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/debris"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// saidLetters is how much of a job's notes a search looks at: what somebody looks
// for stands at their beginning, and 10,000 jobs are searched at each key.
const saidLetters = 400

// Summary is what lists show and find of a job without replaying it. The phone
// keeps it beside the job.
type Summary struct {
	Phase         Phase
	Done, Steps   int
	Finished      string // time
	Odometer      string // as it was read last
	Oils          []SummaryOil
	Verdict       string // word id of the worst that was seen; empty when nobody looked
	Watch         bool   // that is a reason to watch or to stop
	Stop          bool   // that, or a problem that was met, says not to start or ride it
	Notes, Photos int
	Said          string // the beginning of the notes
	// Events is how many the job has, each id counted once, Disputed and Unread how
	// many of them are.
	Events, Disputed, Unread int
	Day                      string  // of the finish, the phone's own
	Home                     bool    // it was only to get home, and no oil change
	Timers                   []Timer // started and not answered: other screens show and ring them
	// Of an open job: the step that has its turn, and its stage.
	Next  string
	Stage plan.Stage
}

// Members names the members of a summary.
func (s *Summary) Members(m *wire.Members) {
	wire.Text(m, "phase", &s.Phase, wire.Required)
	m.Int("done", &s.Done)
	m.Int("steps", &s.Steps)
	m.String("finished", &s.Finished)
	m.String("odometer", &s.Odometer)
	wire.List(m, "oils", &s.Oils)
	m.String("verdict", &s.Verdict)
	m.Bool("watch", &s.Watch)
	m.Bool("stop", &s.Stop)
	m.Int("notes", &s.Notes)
	m.Int("photos", &s.Photos)
	m.String("said", &s.Said)
	m.Int("events", &s.Events)
	m.Int("disputed", &s.Disputed)
	m.Int("unread", &s.Unread)
	m.String("day", &s.Day)
	m.Bool("home", &s.Home)
	m.String("next", &s.Next)
	wire.Text(m, "stage", &s.Stage)
	wire.List(m, "timers", &s.Timers)
}

// SummaryOil is an oil that was poured.
type SummaryOil struct {
	Role   string // word id
	Poured string
	Grade  string // the usual one of the card's
}

// Members names the members of a poured oil.
func (o *SummaryOil) Members(m *wire.Members) {
	m.String("role", &o.Role, wire.Required)
	m.String("poured", &o.Poured)
	m.String("grade", &o.Grade)
}

// summarize picks what lists show, once all else is known.
func (r *replayer) summarize() {
	s := r.state
	sum := &s.Summary
	*sum = Summary{Events: sum.Events, Disputed: len(s.Disputed), Unread: s.Unread, Phase: s.Phase, Done: len(s.Done), Steps: s.Steps, Finished: s.Finished, Verdict: s.Verdict,
		Notes: len(s.Notes), Photos: len(s.Photos), Home: r.plan.GetHome()}
	if s.Finished != "" {
		sum.Day = date.DayText(r.finished)
	}
	for i := range s.Readings {
		if read := &s.Readings[i]; read.What == plan.AskOdometer && read.Stands {
			sum.Odometer = first(read.Texts)
		}
	}
	for i := range s.Oils {
		if o := &s.Oils[i]; len(o.Poured) > 0 {
			c := r.plan.Card().Circuit(o.Circuit)
			sum.Oils = append(sum.Oils, SummaryOil{o.Role, o.Poured[0], first(c.Oil.Grades)})
		}
	}
	sum.Timers = s.Timers
	if s.Phase == PhaseOpen {
		sum.Next = s.Next
		if next := r.plan.Step(s.Next); next != nil {
			sum.Stage = next.Stage
		}
	}
	sum.Stop = len(s.Warns) > 0 || r.stopping > 0
	for i := range s.Looks {
		v := s.Looks[i].verdict
		sum.Watch = sum.Watch || v == debris.Watch || v == debris.Stop
	}
	var notes []string
	for i := range s.Notes {
		notes = append(notes, s.Notes[i].Text)
	}
	sum.Said = finding.Cut(strings.Join(notes, " "), saidLetters)
}
