// Package outlook says from the record of a bike when its oils are due again, and
// what its engine used between the changes.
package outlook

import (
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// MostJobs is how many jobs of a bike are worth looking at: more are of other years.
const MostJobs = 16

// Outlook is what the record of a bike says about its next change of oil.
type Outlook struct {
	Oils []DueOil
	// Grade is that of the most urgent oil (due.Grade), Remind the first day of
	// them all, for lists and the first screen.
	Grade  int
	Remind string
	First  string        // circuit of the most urgent oil of which something is known
	Severe bool          // the bike is used hard, as the newest job has it
	Pace   *shown.Figure // what is ridden in a month; nil while not known
	// Readings are the odometer readings that the pace comes from, Since the day
	// of the first.
	Readings int
	Since    string
	Last     *LastReading // of the odometer; nil where it was never read
	Uses     []job.Use    // the oldest first
	Findings []finding.Finding
}

// Members names the members of an outlook.
func (o *Outlook) Members(m *wire.Members) {
	wire.List(m, "oils", &o.Oils)
	m.Int("grade", &o.Grade)
	m.String("remind", &o.Remind)
	m.String("first", &o.First)
	m.Bool("severe", &o.Severe)
	wire.Optional(m, "pace", &o.Pace)
	m.Int("readings", &o.Readings)
	m.String("since", &o.Since)
	wire.Optional(m, "last", &o.Last)
	wire.List(m, "uses", &o.Uses)
	wire.Findings(m, "findings", &o.Findings)
}

// LastReading is what the odometer showed last.
type LastReading struct {
	ID    string // of the fact that tells it; empty where a job does
	Day   string
	Texts []string
}

// Members names the members.
func (l *LastReading) Members(m *wire.Members) {
	m.String("id", &l.ID)
	m.String("day", &l.Day, wire.Required)
	wire.Texts(m, "texts", &l.Texts, wire.Required)
}

// DueOil is when an oil is due. Days are full-dates, months "2027-03".
type DueOil struct {
	Circuit   string
	Role      string // word id
	Verdict   string // word id
	Values    map[string]string
	Grade     int      // due.Grade
	Order     string   // sorts the oils of many bikes, the most urgent first
	Known     bool     // something is known of it: when it was changed, or when it is due
	Changed   string   // day of the last change; empty when the record has none
	ChangedAt []string // odometer then
	At        []string // odometer at which it is due
	Hours     string   // counter of hours at which it is due
	Day       string   // by time
	// From and To are the months between which the first of both comes, by what
	// is ridden. Without To it can't be said, without From time comes first or
	// nothing is known.
	From, To string
	Why      string   // word id: what comes first
	Left     []string // distance from the last reading to At
	Remind   string   // day for a calendar; empty when nothing is known
	Plot     *Plot    // nil where one of two limits isn't known
	// Intervals are the card's figures, as the bike is used.
	Intervals []shown.Figure
}

// Members names the members of a due oil.
func (d *DueOil) Members(m *wire.Members) {
	m.String("circuit", &d.Circuit, wire.Required)
	m.String("role", &d.Role, wire.Required)
	m.String("verdict", &d.Verdict, wire.Required)
	m.TextMap("values", &d.Values)
	m.Int("grade", &d.Grade)
	m.String("order", &d.Order)
	m.Bool("known", &d.Known)
	m.String("changed", &d.Changed)
	wire.Texts(m, "changedAt", &d.ChangedAt)
	wire.Texts(m, "at", &d.At)
	m.String("hours", &d.Hours)
	m.String("day", &d.Day)
	m.String("from", &d.From)
	m.String("to", &d.To)
	m.String("why", &d.Why)
	wire.Texts(m, "left", &d.Left)
	m.String("remind", &d.Remind)
	wire.Optional(m, "plot", &d.Plot)
	wire.List(m, "intervals", &d.Intervals)
}
