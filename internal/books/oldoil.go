package books

import (
	"cmp"
	"slices"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// What the facts of old oil say; their subject is a can.
const (
	canTold  ledger.FactKind = "can"       // what: one of oil.Wastes; value: its size, empty where nobody knows; text: its name
	drained  ledger.FactKind = "drained"   // what: one of oil.Wastes; value: the volume; job and the sign "circuit": where it came from
	handedIn ledger.FactKind = "handed-in" // text: where; value: the day, where it isn't the one it was told on
)

// What is believable of old oil, in L: cans hold up to what a barrel does, and no bike
// lets out more than a job may read (common practice, no source).
const (
	leastCan, mostCan         = 0.5, 1000
	leastDrained, mostDrained = 0.001, 200
)

// nearlyFull is the share of its size from which a can is nearly full: oil grows by about
// a hundredth for each 14 °C, and a can filled to the brim can't be carried or poured
// (common practice, no source).
const nearlyFull = 0.9

// OldOilInput is the book of old oil, and what jobs drained.
type OldOilInput struct {
	ledger.Input
	System quantity.System
	Today  string
	Jobs   []DrainedJob
}

// Members names the members.
func (i *OldOilInput) Members(m *wire.Members) {
	i.Input.Members(m)
	wire.Text(m, "system", &i.System)
	m.String("today", &i.Today)
	wire.List(m, "jobs", &i.Jobs)
}

// DrainedJob is what a job's balance says was drained of one of its oils.
type DrainedJob struct {
	Job, Circuit, Role string
	Waste              oil.Waste
	Out                float64 // L
}

// Members names the members.
func (j *DrainedJob) Members(m *wire.Members) {
	m.String("job", &j.Job, wire.Required)
	m.String("circuit", &j.Circuit, wire.Required)
	m.String("role", &j.Role)
	wire.Text(m, "waste", &j.Waste)
	m.Float("out", &j.Out)
}

// OldOilAnswer is the book of old oil as it stands.
type OldOilAnswer struct {
	Cans     []Can
	Proposed []DrainedOil
	Years    []OilYear // the newest first
	Findings []finding.Finding
}

// Members names the members.
func (a *OldOilAnswer) Members(m *wire.Members) {
	wire.List(m, "cans", &a.Cans)
	wire.List(m, "proposed", &a.Proposed)
	wire.List(m, "years", &a.Years)
	wire.Findings(m, "findings", &a.Findings)
}

// Can is a can of old oil.
type Can struct {
	ID, Name string
	Kind     string   // word id: what may go in
	Size     []string // empty where nobody knows
	Holds    []string // empty when nothing is in it
	Room     []string // what still fits; empty where the size isn't known, and when nothing does
	State    string   // word id: how full it is
	Filled   float64  // percent of its size, at most 100
	Mixed    bool     // oils that are kept apart are together in it
	Gone     bool
	Typed    string // its size, as it was typed
	Entries  []CanEntry

	waste    oil.Waste
	size, in int // µL
	proposed int // µL that may go in next
	told     bool
	kinds    []oil.Waste // in it
}

// Members names the members.
func (c *Can) Members(m *wire.Members) {
	m.String("id", &c.ID, wire.Required)
	m.String("name", &c.Name)
	m.String("kind", &c.Kind, wire.Required)
	wire.Text(m, "waste", &c.waste)
	wire.Texts(m, "size", &c.Size)
	m.String("typed", &c.Typed)
	wire.Texts(m, "holds", &c.Holds)
	wire.Texts(m, "room", &c.Room)
	m.String("state", &c.State, wire.Required)
	m.Float("filled", &c.Filled)
	m.Bool("mixed", &c.Mixed)
	m.Bool("gone", &c.Gone)
	wire.List(m, "entries", &c.Entries)
}

// CanEntry is what happened with a can.
type CanEntry struct {
	ID     string // of the fact
	Kind   ledger.FactKind
	Day    string
	Volume []string // what came in, or went
	Waste  string   // word id of what came in
	Job    string
	Place  string // where it was handed in
	Again  bool   // the same of the job is in the book already, and doesn't count here
}

// Members names the members.
func (e *CanEntry) Members(m *wire.Members) {
	m.String("id", &e.ID, wire.Required)
	wire.Text(m, "kind", &e.Kind, wire.Required)
	m.String("day", &e.Day, wire.Required)
	wire.Texts(m, "volume", &e.Volume)
	m.String("waste", &e.Waste)
	m.String("job", &e.Job)
	m.String("place", &e.Place)
	m.Bool("again", &e.Again)
}

// DrainedOil is a volume that a job drained and no can has yet.
type DrainedOil struct {
	Job, Circuit, Role string
	Waste              oil.Waste
	Kind               string // word id of Waste
	Volume             []string
	Typed              string   // the volume, as it would be typed
	Can                string   // id of the one proposed; empty where there is none of its kind
	Over               []string // what wouldn't fit there
}

// Members names the members.
func (d *DrainedOil) Members(m *wire.Members) {
	m.String("job", &d.Job, wire.Required)
	m.String("circuit", &d.Circuit, wire.Required)
	m.String("role", &d.Role)
	wire.Text(m, "waste", &d.Waste)
	m.String("kind", &d.Kind, wire.Required)
	wire.Texts(m, "volume", &d.Volume)
	m.String("typed", &d.Typed)
	m.String("can", &d.Can)
	wire.Texts(m, "over", &d.Over)
}

// OilYear is what was handed in in a year.
type OilYear struct {
	Year int
	Sums []OilSum
	Rows []HandedIn // the earliest first
}

// Members names the members.
func (y *OilYear) Members(m *wire.Members) {
	m.Int("year", &y.Year)
	wire.List(m, "sums", &y.Sums)
	wire.List(m, "rows", &y.Rows)
}

// OilSum is how much of a kind was handed in in a year.
type OilSum struct {
	Kind   string // word id
	Volume []string
	Litres float64
	sum    int // µL
}

// Members names the members.
func (s *OilSum) Members(m *wire.Members) {
	m.String("kind", &s.Kind, wire.Required)
	wire.Texts(m, "volume", &s.Volume)
	m.Float("litres", &s.Litres)
}

// HandedIn is one handing in of old oil.
type HandedIn struct {
	ID, Can string // of the fact, and of the can
	Name    string // the can's
	Day     string
	Kind    string // word id
	Volume  []string
	Litres  float64
	Place   string
}

// Members names the members.
func (h *HandedIn) Members(m *wire.Members) {
	m.String("id", &h.ID, wire.Required)
	m.String("can", &h.Can, wire.Required)
	m.String("name", &h.Name)
	m.String("day", &h.Day, wire.Required)
	m.String("kind", &h.Kind, wire.Required)
	wire.Texts(m, "volume", &h.Volume)
	m.Float("litres", &h.Litres)
	m.String("place", &h.Place)
}

// oilBook is the book while it is read.
type oilBook struct {
	*book
	cans    []*Can
	counted map[string]bool // jobs and circuits that a can has
	years   map[int]*OilYear
}

// OldOil says what is in each can, what may go into which, and what was handed in.
func OldOil(i *OldOilInput) *OldOilAnswer {
	b := &oilBook{book: open(&i.Input, ledger.OilBook, i.System, i.Today), counted: map[string]bool{}, years: map[int]*OilYear{}}
	for _, f := range b.Standing {
		b.take(f)
	}
	a := &OldOilAnswer{Findings: b.Findings}
	slices.SortFunc(b.cans, func(x, y *Can) int {
		return cmp.Or(cmp.Compare(kindPlace(x.waste), kindPlace(y.waste)), strings.Compare(x.Name, y.Name), strings.Compare(x.ID, y.ID))
	})
	for n := range i.Jobs {
		b.propose(a, &i.Jobs[n])
	}
	for _, c := range b.cans {
		b.show(c)
		a.Cans = append(a.Cans, *c)
	}
	for _, y := range b.years {
		b.sumUp(y)
		a.Years = append(a.Years, *y)
	}
	slices.SortFunc(a.Years, func(x, y OilYear) int { return cmp.Compare(y.Year, x.Year) })
	return a
}

func kindPlace(w oil.Waste) int {
	n := slices.Index(oil.Wastes, w)
	if n < 0 {
		return len(oil.Wastes)
	}
	return n
}

// kindOf is the word id of a kind of old oil.
func kindOf(w oil.Waste) string {
	if !slices.Contains(oil.Wastes, w) {
		return "not-known"
	}
	return "waste." + string(w)
}

// canOf gives the can of a fact, which may be told of before it is described.
func (b *oilBook) canOf(f *ledger.Fact) *Can {
	for _, c := range b.cans {
		if c.ID == f.Of {
			return c
		}
	}
	c := &Can{ID: f.Of}
	b.cans = append(b.cans, c)
	return c
}

func (b *oilBook) take(f *ledger.Fact) {
	switch f.Kind {
	case canTold, drained, handedIn, Gone:
	default:
		b.Unknown(f)
		return
	}
	c := b.canOf(f)
	if f == b.New && f.Kind != canTold && !c.told {
		b.refuse(f, "can-unknown", "/of")
	}
	switch f.Kind {
	case canTold:
		b.describe(c, f)
	case drained:
		b.pourIn(c, f)
	case handedIn:
		b.handIn(c, f)
	case Gone:
		if c.in > 0 {
			b.refuse(f, "can-not-empty", "/of")
		}
		c.Gone = true
	}
}

// waste reads the kind of old oil that a fact names.
func (b *oilBook) waste(f *ledger.Fact) oil.Waste {
	w := oil.Waste(f.What)
	if !slices.Contains(oil.Wastes, w) {
		b.refuse(f, "unknown-word", "/what", "text", finding.Clip(f.What))
	}
	return w
}

func (b *oilBook) describe(c *Can, f *ledger.Fact) {
	w := b.waste(f)
	if c.told && w != c.waste && c.in > 0 && f == b.New {
		b.refuse(f, "can-not-empty", "/what")
	}
	c.waste, c.Name, c.told, c.Gone, c.size, c.Typed = w, b.named(f), true, false, 0, f.Value
	if strings.TrimSpace(f.Value) != "" {
		if size, ok := b.volume(f, "/value", f.Value, leastCan, mostCan); ok {
			c.size = size
		}
	}
}

// pourIn takes in what was drained. What a record holds counts; what is new goes to no
// can of another kind.
func (b *oilBook) pourIn(c *Can, f *ledger.Fact) {
	e := CanEntry{ID: f.ID, Kind: f.Kind, Day: date.DayText(b.dayOf(f, "/day", "")), Job: f.Job, Waste: kindOf(oil.Waste(f.What))}
	w := b.waste(f)
	volume, ok := b.volume(f, "/value", f.Value, leastDrained, mostDrained)
	if !ok {
		return // told, and in the store as it was typed
	}
	e.Volume = b.litres(volume)
	if key := f.Job + "\n" + f.Signs["circuit"]; f.Job != "" {
		e.Again = b.counted[key]
		b.counted[key] = true
	}
	if e.Again {
		b.refuse(f, "drained-again", "/job")
	} else {
		if c.told && w != c.waste {
			b.refuse(f, "can-of-other-kind", "/what", "kind", "@"+kindOf(c.waste), "oil", "@"+kindOf(w))
		}
		if over := c.in + volume - c.size; f == b.New && c.size > 0 && over > 0 {
			b.Fault(f, "can-too-small", "/value", finding.Doubt, "over", b.litres(over)[0])
		}
		c.in += volume
		if !slices.Contains(c.kinds, w) {
			c.kinds = append(c.kinds, w)
		}
	}
	c.Entries = append(c.Entries, e)
}

// contents is the kind of what is in a can: of oils that are kept apart the worst.
func (c *Can) contents() (w oil.Waste, mixed bool) {
	for _, k := range c.kinds {
		if w == "" || kindPlace(k) > kindPlace(w) {
			w = k
		}
	}
	return cmp.Or(w, c.waste), len(c.kinds) > 1
}

func (b *oilBook) handIn(c *Can, f *ledger.Fact) {
	day := b.dayOf(f, "/value", f.Value)
	b.Told(f, "/text", f.Text, "@books.oil.place")
	if c.in == 0 {
		b.refuse(f, "can-empty", "/of")
	}
	w, _ := c.contents()
	row := HandedIn{ID: f.ID, Can: c.ID, Name: c.Name, Day: date.DayText(day), Kind: kindOf(w), Litres: float64(c.in) / perLitre, Place: f.Text}
	if c.in > 0 {
		row.Volume = b.litres(c.in)
		number, _, _ := date.Date(day)
		if b.years[number] == nil {
			b.years[number] = &OilYear{Year: number}
		}
		y := b.years[number]
		y.Rows = append(y.Rows, row)
		y.add(row.Kind, c.in)
	}
	c.Entries = append(c.Entries, CanEntry{ID: f.ID, Kind: f.Kind, Day: row.Day, Volume: row.Volume, Waste: row.Kind, Place: f.Text})
	c.in, c.kinds = 0, nil
}

func (y *OilYear) add(kind string, volume int) {
	for n := range y.Sums {
		if y.Sums[n].Kind == kind {
			y.Sums[n].sum += volume
			return
		}
	}
	y.Sums = append(y.Sums, OilSum{Kind: kind, sum: volume})
}

func (b *oilBook) sumUp(y *OilYear) {
	slices.SortFunc(y.Sums, func(x, y OilSum) int { return strings.Compare(x.Kind, y.Kind) })
	for n := range y.Sums {
		s := &y.Sums[n]
		s.Volume, s.Litres = b.litres(s.sum), float64(s.sum)/perLitre
	}
	slices.SortFunc(y.Rows, func(x, y HandedIn) int {
		return cmp.Or(strings.Compare(x.Day, y.Day), strings.Compare(x.ID, y.ID), strings.Compare(x.Can, y.Can))
	})
}

// show makes a can ready to be read.
func (b *oilBook) show(c *Can) {
	c.Kind = kindOf(c.waste)
	w, mixed := c.contents()
	c.Mixed = c.in > 0 && (mixed || c.told && w != c.waste)
	if c.in > 0 {
		c.Holds = b.litres(c.in)
	}
	if c.size > 0 {
		c.Size = b.litres(c.size)
		c.Filled = min(100, float64(100*c.in/c.size))
		if c.in < c.size {
			c.Room = b.litres(c.size - c.in)
		}
	}
	c.State = "can." + string(c.state())
}

// CanState is how full a can is: the last part of a word id.
type CanState string

// The states of a can.
const (
	CanEmpty       CanState = "empty"
	CanRoom        CanState = "room"
	CanNearlyFull  CanState = "nearly-full"
	CanTooMuch     CanState = "too-much" // more is told than it holds
	CanSizeUnknown CanState = "size-unknown"
)

// CanStates lists them.
var CanStates = []CanState{CanEmpty, CanRoom, CanNearlyFull, CanTooMuch, CanSizeUnknown}

func (c *Can) state() CanState {
	switch {
	case c.in == 0:
		return CanEmpty
	case c.size == 0:
		return CanSizeUnknown
	case c.in > c.size:
		return CanTooMuch
	case float64(c.in) >= nearlyFull*float64(c.size):
		return CanNearlyFull
	}
	return CanRoom
}

// propose proposes a can for what a job drained, unless one has it: of its kind the
// fullest that takes it whole, else the one with the most room. Oil of another kind never
// comes in.
func (b *oilBook) propose(a *OldOilAnswer, j *DrainedJob) {
	volume := micro(j.Out)
	if volume <= 0 || b.counted[j.Job+"\n"+j.Circuit] {
		return
	}
	d := DrainedOil{Job: j.Job, Circuit: j.Circuit, Role: j.Role, Waste: j.Waste, Kind: kindOf(j.Waste), Volume: b.litres(volume)}
	d.Typed = d.Volume[0]
	var best *Can
	for _, c := range b.cans {
		if _, mixed := c.contents(); c.told && !c.Gone && !mixed && c.waste == j.Waste && (best == nil || c.before(best, volume)) {
			best = c
		}
	}
	if best != nil {
		d.Can = best.ID
		if rest := best.rest(volume); best.size > 0 && rest < 0 {
			d.Over = b.litres(-rest)
		}
		best.proposed += volume // what is proposed next goes beside it
	}
	a.Proposed = append(a.Proposed, d)
}

// rest is the room in µL that a volume leaves in a can of known size; below zero where
// it doesn't fit.
func (c *Can) rest(volume int) int { return c.size - c.in - c.proposed - volume }

// before reports whether a volume goes rather into c than into another can.
func (c *Can) before(than *Can, volume int) bool {
	if x, y := c.fit(volume), than.fit(volume); x != y {
		return x < y
	}
	if c.fit(volume) == fits {
		return c.rest(volume) < than.rest(volume)
	}
	return c.rest(volume) > than.rest(volume)
}

// How a volume fits into a can, the best first.
const (
	fits = iota
	mayFit
	fitsNot
)

func (c *Can) fit(volume int) int {
	switch {
	case c.size == 0:
		return mayFit
	case c.rest(volume) >= 0:
		return fits
	}
	return fitsNot
}
