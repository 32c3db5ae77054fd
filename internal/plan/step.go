package plan

import (
	"tidysump/internal/card"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Stage is one of the seven stages of the job.
type Stage string

// The stages, in order.
const (
	Ready  Stage = "ready"
	Warm   Stage = "warm"
	Drain  Stage = "drain"
	Look   Stage = "look"
	Close  Stage = "close"
	Fill   Stage = "fill"
	Settle Stage = "settle"
)

// Stages lists the stages in order.
var Stages = []Stage{Ready, Warm, Drain, Look, Close, Fill, Settle}

// Signal is a signal word in the sense of ANSI Z535.4 and ISO 3864-2.
type Signal string

// The signal words: Danger will, Warning could kill or injure seriously,
// Caution could injure slightly, Notice is about things and not about people.
const (
	Danger  Signal = "DANGER"
	Warning Signal = "WARNING"
	Caution Signal = "CAUTION"
	Notice  Signal = "NOTICE"
)

// Warn is a caution of a step: its signal word and the word id of its text, which is
// one sentence of the hazard and how to avoid it; with ".more" behind it, what happens
// otherwise and what else helps.
type Warn struct {
	Signal Signal
	Word   string
	// Short: an earlier step of the job says it whole. Here the one sentence stands, and
	// the rest opens from it.
	Short bool
}

// CautionOf gives the caution of that word, a word id without "caution.".
func CautionOf(word string) Warn {
	return Warn{Signal: signalOf(word), Word: "caution." + word}
}

// Members names the members of a caution.
func (w *Warn) Members(m *wire.Members) {
	wire.Text(m, "signal", &w.Signal, wire.Required)
	m.String("word", &w.Word, wire.Required)
	m.Bool("short", &w.Short)
}

// What a step may ask to be written down.
const (
	AskOdometer = "odometer"
	AskLevel    = "level"
	AskDrained  = "drained"
	AskPoured   = "poured"
	AskTorque   = "torque"
	AskLeak     = "leak"

	AskTemperature = "temperature" // of the oil
	AskHours       = "hours"       // of running, where the card counts those
)

// Readings lists what a step may ask for.
var Readings = []string{AskOdometer, AskLevel, AskDrained, AskPoured, AskTorque, AskLeak, AskTemperature, AskHours}

// Ask is a reading that a step asks for.
type Ask struct {
	What   string
	About  string // id of the circuit or fastener it belongs to
	Unit   string // taken when none is typed
	Choice []string
	// Gauge: a level that may also be read as a share of the band between the
	// marks.
	Gauge *Gauge
	// Card is what the card gives, as it would be typed: it can be taken over in one tap.
	// Empty where the card doesn't know it, gives a range or only estimates it.
	Card string
	// Amends: oil can be poured or taken out here to mend the level. A level read
	// before anything is drained changes nothing.
	Amends bool
}

// Members names the members of a reading asked for.
func (a *Ask) Members(m *wire.Members) {
	m.String("what", &a.What, wire.Required)
	m.String("of", &a.About)
	m.String("unit", &a.Unit)
	wire.Texts(m, "choice", &a.Choice)
	wire.Optional(m, "gauge", &a.Gauge)
	m.String("card", &a.Card)
	m.Bool("amends", &a.Amends)
}

// leaks are the answers to "is it dry".
var leaks = []string{"dry", "residue", "drop"}

// Leaking is the one that keeps a job open.
const Leaking = "drop"

// levels are the answers to "where does the oil stand", from the top as on the
// gauge.
var levels = []string{"above", "high", "middle", "low", "below"}

// holeLevels are the answers at a level hole, which has no marks.
var holeLevels = []string{"runs-out", "at-edge", "under-edge"}

// Step is one step of the job. Word names its texts in the catalogue: the
// title, what to do (".do") and why (".why"); Values fill their placeholders,
// and a value that begins with "@" is itself a word id.
type Step struct {
	ID      string
	Stage   Stage
	Word    string
	Values  map[string]string
	Warns   []Warn
	Figures []shown.Figure
	Asks    []Ask
	Helps   []Help
	Timers  []Timer
	// Signs are the names of the signs that the step asks for, where it looks at
	// what came out; Sums says that it sums up what was seen.
	Signs []string
	Sums  bool
	// Photo is what a photo taken at the step shows most likely.
	Photo Motif
	// Must: the job should not go on without it, and the record says so when it
	// was finished without it.
	Must bool
	// After: it comes when the job is finished and the bike was ridden.
	After bool
	// Takes is what the step wants in the hand: tools in their size, and new parts.
	Takes []Item
	// Tally is what is to be touched and counted at the step: each with its place
	// and its pieces.
	Tally []Item
	// Notes are the card's for this moment, read before the act.
	Notes []string

	// What a replay has to know of it, and nobody has to read.

	Pours string // id of the circuit whose oil goes in for the first time
	Finds bool   // a level asked for is the one before anything was drained
	Runs  bool   // the engine runs or the bike is ridden
	// Interim: a level asked for is read too early to count.
	Interim bool
	// Subject is the id of the circuit, fastener, filter or strainer that it is about;
	// empty where it is about none, or about several.
	Subject string
	// Opens and Closes are the ids of the fasteners that the step opens and closes.
	Opens, Closes []string

	at card.NotePlace // the moment whose notes stand at it; "" for none
}

// Members names the step's members.
func (s *Step) Members(m *wire.Members) {
	m.String("id", &s.ID, wire.Required)
	wire.Text(m, "stage", &s.Stage, wire.Required)
	m.String("word", &s.Word, wire.Required)
	m.TextMap("values", &s.Values)
	wire.List(m, "warns", &s.Warns)
	wire.List(m, "figures", &s.Figures)
	wire.List(m, "asks", &s.Asks)
	wire.List(m, "helps", &s.Helps)
	wire.List(m, "timers", &s.Timers)
	m.Bool("must", &s.Must)
	wire.Texts(m, "look", &s.Signs)
	m.Bool("sums", &s.Sums)
	wire.Text(m, "photo", &s.Photo)
	m.Bool("after", &s.After)
	wire.List(m, "takes", &s.Takes)
	wire.List(m, "tally", &s.Tally)
	wire.Texts(m, "notes", &s.Notes)
}
