package job

import (
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/plan"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Phase is how far a job has come.
type Phase string

// The phases.
const (
	PhaseOpen    Phase = "open"    // the work is under way
	PhaseWaiting Phase = "waiting" // finished; the second look after the first ride is to come
	PhaseClosed  Phase = "closed"  // the second look has closed it
)

// Phases lists the phases in order.
var Phases = []Phase{PhaseOpen, PhaseWaiting, PhaseClosed}

// State is where a job stands: a replay of its events over its plan.
type State struct {
	Phase Phase
	// Next is the id of the first step not done; empty when all are done.
	Next     string
	Done     []string // ids of the steps done, in the order of the plan
	ToDo     []string // ids of the steps not done that have their turn: what comes after the job only once it is finished
	Steps    int      // how many steps the plan has
	Stages   []StageCount
	Oils     []Balance
	Readings []Read
	Notes    []Remark
	Photos   []Picture
	// Missing are the steps that must be done before the job can be finished.
	Missing  []string
	Warmth   *Warmth // what the oil's temperature means; nil while not read
	Finished string  // time of the finish; empty while the work is under way
	Closed   string  // time at which the second look closed the job
	// Timers are those that count, or have rung and were not answered.
	Timers   []Timer
	DueAgain *shown.Figure // odometer reading at which the oil is due again
	Change   NextChange
	Papers   []Event    // that wrote estimates and bills: the last of each
	Costs    string     // id of the one of them that says what the job cost; empty when there is none
	Helps    []StepHelp // what the job knows of a calculation beyond what its step gives
	Summary  Summary
	Face     []Deed      // what a finished job shows first; empty while it is open
	parts    []plan.Item // of the plan, for BillLines
	// LastID is the id of the last event that still counts: what an undo
	// would cancel.
	LastID   string
	Findings []finding.Finding
	Problems []Trouble // that stand, the earliest first
	// Looks are what was seen, and Verdict the word id of the worst of it; empty
	// when nobody said. Actions are word ids of what to do, in the order of doing.
	Looks   []Look
	Verdict string
	Actions []string
	// Warns stand at the steps that fill, start and ride: what came out says stop.
	Warns []StepWarn
	// Open is what was opened and not closed, in the order of opening; OpenAt are the
	// cautions at the steps at which something of it must not be open: oil is poured where
	// it would run out again, or the engine runs.
	Open   []OpenPlace
	OpenAt []StepWarn
	// Disputed are the events of which there are other contents, Elsewhere the steps
	// done that the plan doesn't have, in the order of doing.
	Disputed  []Dispute
	Elsewhere []StepElsewhere
	// Redo is the id of the undo that was the last thing to happen, and can be undone;
	// empty otherwise.
	Redo   string
	Unread int // events that can't be read
	// Gates are the steps not done at which something is to be looked at, touched or read
	// before one goes on, and was not: ids. Afterwards counts the steps told afterwards.
	Gates []string
	// Passed are those done at which somebody went on without that, and said so: ids.
	Passed     []string
	Afterwards int

	Odometer float64 // km; zero while not read
}

// Members names the state's members.
func (s *State) Members(m *wire.Members) {
	wire.Text(m, "phase", &s.Phase, wire.Required)
	m.String("next", &s.Next)
	wire.Texts(m, "done", &s.Done)
	wire.Texts(m, "toDo", &s.ToDo)
	m.Int("steps", &s.Steps)
	wire.List(m, "stages", &s.Stages)
	wire.List(m, "oils", &s.Oils)
	wire.List(m, "readings", &s.Readings)
	wire.List(m, "notes", &s.Notes)
	wire.List(m, "photos", &s.Photos)
	wire.Texts(m, "missing", &s.Missing)
	wire.Optional(m, "warmth", &s.Warmth)
	m.String("finished", &s.Finished)
	m.String("closed", &s.Closed)
	wire.List(m, "timers", &s.Timers)
	wire.Optional(m, "dueAgain", &s.DueAgain)
	m.Object("change", &s.Change)
	wire.List(m, "papers", &s.Papers)
	m.String("costs", &s.Costs)
	wire.List(m, "helps", &s.Helps)
	m.String("lastID", &s.LastID)
	m.Float("odometer", &s.Odometer)
	wire.List(m, "looks", &s.Looks)
	m.String("verdict", &s.Verdict)
	wire.Texts(m, "actions", &s.Actions)
	wire.List(m, "warns", &s.Warns)
	wire.List(m, "open", &s.Open)
	wire.List(m, "openAt", &s.OpenAt)
	wire.List(m, "disputed", &s.Disputed)
	wire.List(m, "elsewhere", &s.Elsewhere)
	m.String("redo", &s.Redo)
	m.Int("unread", &s.Unread)
	wire.Texts(m, "gates", &s.Gates)
	wire.Texts(m, "passed", &s.Passed)
	m.Int("afterwards", &s.Afterwards)
	wire.Findings(m, "findings", &s.Findings)
	wire.List(m, "problems", &s.Problems)
	m.Object("summary", &s.Summary)
	wire.List(m, "face", &s.Face)
}

// StageCount is how far a stage has got.
type StageCount struct {
	Stage plan.Stage
	Done  int
	Steps int
}

// Members names the members of a stage's count.
func (c *StageCount) Members(m *wire.Members) {
	wire.Text(m, "stage", &c.Stage, wire.Required)
	m.Int("done", &c.Done)
	m.Int("steps", &c.Steps)
}

// Balance is a circuit's oil out and in.
type Balance struct {
	Circuit string
	Role    string   // word id
	Due     []string // as the card has it, empty when not known
	Drained []string // sum of what was measured, empty when nothing was
	Poured  []string // sum of what was poured
	Level   string   // word id of the last level read
	Verdict string   // word id: what the poured volume means
	Caught  string   // word id: what the drained volume means
	Left    []string // what is still to be poured of what is due; empty when nothing or not known
	Pouring string   // word id: how far the pouring has come; empty before it has begun
	Amend   string   // word id: what to do about a level read between the marks
	Change  []string // how much to pour or take out for it
	// Since is what was used since the last job on the same bike; nil where that
	// is not known.
	Since   *Use
	Out, In float64 // what was drained and poured, in L
	// Full is how full its space is, from 0 to 1: it goes out and comes in again.
	Full float64
	// Waste is the kind of old oil that it is once it is drained; empty when nothing was.
	Waste oil.Waste
}

// Members names the members of a balance.
func (b *Balance) Members(m *wire.Members) {
	m.String("circuit", &b.Circuit, wire.Required)
	m.String("role", &b.Role, wire.Required)
	wire.Texts(m, "due", &b.Due)
	wire.Texts(m, "drained", &b.Drained)
	wire.Texts(m, "poured", &b.Poured)
	m.String("level", &b.Level)
	m.String("verdict", &b.Verdict)
	m.String("caught", &b.Caught)
	wire.Texts(m, "left", &b.Left)
	m.String("pouring", &b.Pouring)
	m.String("amend", &b.Amend)
	wire.Texts(m, "change", &b.Change)
	wire.Optional(m, "since", &b.Since)
	m.Float("out", &b.Out)
	m.Float("in", &b.In)
	m.Float("full", &b.Full)
	wire.Text(m, "waste", &b.Waste)
}

// Read is a reading that counts, ready to be shown.
type Read struct {
	ID    string // of the event
	Time  string
	Step  string
	What  string
	About string
	Name  string   // word id of the circuit's role, or the fastener's place
	Texts []string // in the person's units, or a word id after "@"
	Card  []string // the card's figure beside it, where there is one
	// Choice is the answer that was chosen, or that a level in percent comes to;
	// Share is that level.
	Choice, Share string
	// Verdict is what a temperature means before the oil is drained, a word id.
	Verdict string
	// Manners are word ids of how it was told; empty for what was typed as it was done.
	Manners []string
	// Stands: nothing later says otherwise about the same thing.
	Stands bool
}

// Members names the members of a reading.
func (r *Read) Members(m *wire.Members) {
	m.String("id", &r.ID, wire.Required)
	m.String("time", &r.Time, wire.Required)
	m.String("step", &r.Step)
	m.String("what", &r.What, wire.Required)
	m.String("of", &r.About)
	m.String("name", &r.Name)
	wire.Texts(m, "texts", &r.Texts)
	wire.Texts(m, "card", &r.Card)
	m.String("choice", &r.Choice)
	m.String("share", &r.Share)
	m.String("verdict", &r.Verdict)
	wire.Texts(m, "manners", &r.Manners)
	m.Bool("stands", &r.Stands)
}

// Remark is a note that counts.
type Remark struct {
	ID   string
	Time string
	Step string
	Text string
}

// Members names the members of a note.
func (r *Remark) Members(m *wire.Members) {
	m.String("id", &r.ID, wire.Required)
	m.String("time", &r.Time, wire.Required)
	m.String("step", &r.Step)
	m.String("text", &r.Text)
}
