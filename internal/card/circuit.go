package card

import (
	"tidysump/internal/wire"
)

// Circuit is one oil of the bike: what it is, how much, how its level is read.
type Circuit struct {
	ID   string
	Role Role
	// WetClutch: a clutch runs in this oil.
	WetClutch bool
	Oil       OilNeed
	OilOnly   *Figure // volume when the filter stays
	WithFilt  *Figure // volume when the filter is changed too
	Dry       *Figure // volume of a stripped and dry engine: never for an oil change
	// EveryNth: the oil is due at each nth oil change of the engine (1 = each).
	EveryNth int
	Interval *Interval // of an oil that has one of its own; the engine's is the card's
	Warm     *Warming
	Level    Level
}

// Members names the circuit's members.
func (c *Circuit) Members(m *wire.Members) {
	m.String("id", &c.ID, wire.Required)
	wire.Text(m, "role", &c.Role, wire.Required)
	m.Bool("wetClutch", &c.WetClutch)
	m.Object("oil", &c.Oil)
	wire.Optional(m, "oilOnly", &c.OilOnly)
	wire.Optional(m, "withFilter", &c.WithFilt)
	wire.Optional(m, "dry", &c.Dry)
	m.Int("everyNth", &c.EveryNth)
	wire.Optional(m, "interval", &c.Interval)
	wire.Optional(m, "warm", &c.Warm)
	m.Object("level", &c.Level)
}

// Warming is how warm the manual wants the oil to be when it is let out.
type Warming struct {
	Target *Figure // a temperature
	Time   *Figure // how long the engine is run for that
}

// Members names the members.
func (w *Warming) Members(m *wire.Members) {
	wire.Optional(m, "target", &w.Target)
	wire.Optional(m, "time", &w.Time)
}

// OilNeed is the oil that the card asks for.
type OilNeed struct {
	Grades   []string // SAE J300 or SAE J306 grades, the first being the usual one
	Marks    []string // JASO T903 marks that suit, for instance MA and MA2
	Service  string   // API service category, at least
	Standing Standing
	Source   string
	Page     string
	Method   string
	Quote    string // as a figure has it
}

// Members names the members of the oil asked for.
func (o *OilNeed) Members(m *wire.Members) {
	wire.Texts(m, "grades", &o.Grades)
	wire.Texts(m, "marks", &o.Marks)
	m.String("service", &o.Service)
	wire.Text(m, "standing", &o.Standing)
	m.String("source", &o.Source)
	m.String("page", &o.Page)
	m.String("method", &o.Method)
}

// Level is how the oil level is read. State, stance, wait and device are four
// separate facts with no default: each alone can move the reading by the whole
// band, so what is empty is asked for. Few manuals say how long the engine runs first: of
// the others nothing is missing.
type Level struct {
	Device Device
	State  State
	Stance Stance
	Run    *Figure // how long the engine runs before it is stopped to read
	Wait   *Figure
	Band   *Figure // volume between the marks
	Where  string  // where on the bike, in the card's own words
}

// Members names the level's members.
func (l *Level) Members(m *wire.Members) {
	wire.Text(m, "device", &l.Device)
	wire.Text(m, "state", &l.State)
	wire.Text(m, "stance", &l.Stance)
	wire.Optional(m, "run", &l.Run)
	wire.Optional(m, "wait", &l.Wait)
	wire.Optional(m, "band", &l.Band)
	m.String("where", &l.Where)
}
