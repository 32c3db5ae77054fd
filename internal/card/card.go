// Package card holds the bike card: what is true of a bike, every figure with
// its standing. The card's JSON form is described by specs/card.schema.json.
//
// A card says nothing about today (that is the bench) and nothing about how to
// do the job (that is the plan).
package card

import (
	"tidysump/internal/wire"
)

// Format and Version mark a card's JSON text.
const (
	Format  = "tidysump-card"
	Version = 1
)

// MostBytes is how long the canonical text of a card may be that is taken in: far more
// than any real one has, and little beside what a call may have, since each job holds
// its card.
const MostBytes = 250_000

// Card is a bike's card.
type Card struct {
	Format   string
	Version  int
	ID       string
	Invented bool // an example that belongs to no real machine
	Make     string
	Model    string
	YearFrom int
	YearTo   int
	Layout   Layout
	Engine   Engine
	Sources  []Source
	Circuits []Circuit
	Charts   []ChartRow // the manual's own chart of grades over the air, of all oils
	Bolts    []Bolt
	Filters  []Filter
	Strain   []Strainer
	Interval Interval
	Notes    []string // the owner's or the manual's, in the card's own language
	NotesAt  []NoteAt // those that belong to a moment of the job
	Quotes   []Quote  // the words of a manual that parts of the card come from
}

// Members names the card's members.
func (c *Card) Members(m *wire.Members) {
	m.Lenient()
	m.String("format", &c.Format, wire.Required)
	m.Int("version", &c.Version, wire.Required)
	m.String("id", &c.ID, wire.Required)
	m.Bool("invented", &c.Invented)
	m.String("make", &c.Make, wire.Required)
	m.String("model", &c.Model, wire.Required)
	m.Int("yearFrom", &c.YearFrom)
	m.Int("yearTo", &c.YearTo)
	wire.Text(m, "layout", &c.Layout, wire.Required)
	m.Object("engine", &c.Engine)
	wire.List(m, "sources", &c.Sources)
	wire.List(m, "circuits", &c.Circuits, wire.Required)
	wire.List(m, "chart", &c.Charts)
	wire.List(m, "bolts", &c.Bolts)
	wire.List(m, "filters", &c.Filters)
	wire.List(m, "strainers", &c.Strain)
	m.Object("interval", &c.Interval)
	wire.Texts(m, "notes", &c.Notes)
	wire.List(m, "notesAt", &c.NotesAt)
	wire.List(m, "quotes", &c.Quotes)
}

// NoteAt is a note for one moment of the job, before the act.
type NoteAt struct {
	At   NotePlace
	Text string // in the card's own language
}

// Members names the note's members.
func (n *NoteAt) Members(m *wire.Members) {
	wire.Text(m, "at", &n.At, wire.Required)
	m.String("text", &n.Text)
}

// Engine is what the engine is.
type Engine struct {
	Cylinders    int
	Displacement float64 // cm³
	Cooling      Cooling
	Clutch       Clutch
	NoLamp       bool // it has no oil lamp, nor anything else that shows the pressure
	ReturnSeen   bool // oil that runs back into the tank is seen through its filler
	NoNeutral    bool // a belt drives the wheel, and nothing can be put in neutral
}

// Members names the engine's members.
func (e *Engine) Members(m *wire.Members) {
	m.Int("cylinders", &e.Cylinders)
	m.Float("displacement", &e.Displacement)
	wire.Text(m, "cooling", &e.Cooling)
	wire.Text(m, "clutch", &e.Clutch)
	m.Bool("noLamp", &e.NoLamp)
	m.Bool("returnSeen", &e.ReturnSeen)
	m.Bool("noNeutral", &e.NoNeutral)
}

// Source is a document that figures of the card come from.
type Source struct {
	ID    string
	Title string
}

// Members names the source's members.
func (s *Source) Members(m *wire.Members) {
	m.String("id", &s.ID, wire.Required)
	m.String("title", &s.Title, wire.Required)
}

// Interval is when the oil is due again, whichever comes first.
type Interval struct {
	Span
	First  *Span // of a new or rebuilt engine, counted from its beginning
	Severe *Span // in severe use; what it leaves out is as usual
}

// Span is how long an oil may stay in, whichever comes first.
type Span struct {
	Distance *Figure
	Time     *Figure
	Hours    *Figure // of running, where a manual counts those
}

// Members names the members of an interval.
func (i *Interval) Members(m *wire.Members) {
	i.Span.Members(m)
	wire.Optional(m, "first", &i.First)
	wire.Optional(m, "severe", &i.Severe)
}

// Members names the members of a span.
func (s *Span) Members(m *wire.Members) {
	wire.Optional(m, "distance", &s.Distance)
	wire.Optional(m, "time", &s.Time)
	wire.Optional(m, "hours", &s.Hours)
}

// CountsHours reports whether any of the intervals counts hours of running.
func (i *Interval) CountsHours() bool {
	return i.Hours.Known() || i.First != nil && i.First.Hours.Known() || i.Severe != nil && i.Severe.Hours.Known()
}

// Circuit gives the circuit of that id, nil when there is none.
func (c *Card) Circuit(id string) *Circuit {
	for i := range c.Circuits {
		if c.Circuits[i].ID == id {
			return &c.Circuits[i]
		}
	}
	return nil
}

// Bolt gives the fastener of that id, nil when there is none.
func (c *Card) Bolt(id string) *Bolt {
	for i := range c.Bolts {
		if c.Bolts[i].ID == id {
			return &c.Bolts[i]
		}
	}
	return nil
}
