package card

import (
	"tidysump/internal/wire"
)

// Bolt is a fastener: a plug, a cap, a screw, a spin-on filter, or what closes a filter whose
// kind is not known.
type Bolt struct {
	ID      string
	Purpose Purpose
	Circuit string // id of the circuit it closes
	Holds   string // id of the filter or strainer it holds
	Behind  string // id of the fastener, filter or strainer right in front, which comes off first
	Place   string // where on the bike, in the card's own words
	Count   int    // how many alike; 0 means one
	Order   string // in which order they are tightened, and which is the longer one
	Drains  bool   // oil runs out here
	Tank    bool   // and out of the oil tank or the frame, not out of the crankcase
	Magnet  bool
	Thread  string // "M12x1.5", "3/4-16 UNF"
	Drive   Drive
	Size    *Figure
	Torque  *Figure
	Turn    *Figure // after the gasket touches
	Seal    *Seal
}

// Members names the fastener's members.
func (b *Bolt) Members(m *wire.Members) {
	m.String("id", &b.ID, wire.Required)
	wire.Text(m, "purpose", &b.Purpose, wire.Required)
	m.String("circuit", &b.Circuit)
	m.String("of", &b.Holds)
	m.String("behind", &b.Behind)
	m.String("place", &b.Place)
	m.Int("count", &b.Count)
	m.String("order", &b.Order)
	m.Bool("drains", &b.Drains)
	m.Bool("tank", &b.Tank)
	m.Bool("magnet", &b.Magnet)
	m.String("thread", &b.Thread)
	wire.Text(m, "drive", &b.Drive)
	wire.Optional(m, "size", &b.Size)
	wire.Optional(m, "torque", &b.Torque)
	wire.Optional(m, "turn", &b.Turn)
	wire.Optional(m, "seal", &b.Seal)
}

// Number is how many fasteners of this kind there are, one at least.
func (b *Bolt) Number() int { return max(b.Count, 1) }

// Seal is a washer, ring or gasket that is new at every change.
type Seal struct {
	Kind      SealKind
	Inner     *Figure
	Outer     *Figure
	Thickness *Figure
	Count     int
}

// Members names the seal's members.
func (s *Seal) Members(m *wire.Members) {
	wire.Text(m, "kind", &s.Kind, wire.Required)
	wire.Optional(m, "inner", &s.Inner)
	wire.Optional(m, "outer", &s.Outer)
	wire.Optional(m, "thickness", &s.Thickness)
	m.Int("count", &s.Count)
}

// Filter is an oil filter that is changed, or a centrifugal one.
type Filter struct {
	ID      string
	Kind    FilterKind
	Circuit string
	Mount   Mount
	// EveryNth: due at each nth oil change (1 = each).
	EveryNth int
	Interval *Interval // where it has one of its own
	Place    string
	Behind   string // id of the fastener, filter or strainer right in front, which comes off first
	// What a new one is held against: the thread that a spin-on filter is screwed onto,
	// the outer diameter of its sealing ring or of a cartridge, and how tall it is.
	Thread       string
	Ring, Height *Figure
	RingWith     RingWith // what a new ring of it gets, as the manual has it
	OwnNumber    string   // the part number that the owner goes by, as he wrote it
	Seals        []Seal
}

// Members names the filter's members.
func (f *Filter) Members(m *wire.Members) {
	m.String("id", &f.ID, wire.Required)
	wire.Text(m, "kind", &f.Kind, wire.Required)
	m.String("circuit", &f.Circuit, wire.Required)
	wire.Text(m, "mount", &f.Mount)
	wire.Text(m, "ringWith", &f.RingWith)
	m.Int("everyNth", &f.EveryNth)
	wire.Optional(m, "interval", &f.Interval)
	m.String("place", &f.Place)
	m.String("behind", &f.Behind)
	m.String("thread", &f.Thread)
	wire.Optional(m, "ring", &f.Ring)
	wire.Optional(m, "height", &f.Height)
	m.String("ownNumber", &f.OwnNumber)
	wire.List(m, "seals", &f.Seals)
}

// Strainer is a mesh that is cleaned and put back.
type Strainer struct {
	ID      string
	Circuit string
	// EveryNth: cleaned at each nth oil change (1 = each).
	EveryNth int
	Interval *Interval // where it has one of its own
	Place    string
	Behind   string // id of the fastener, filter or strainer right in front, which comes off first
	Seals    []Seal
}

// Members names the strainer's members.
func (s *Strainer) Members(m *wire.Members) {
	m.String("id", &s.ID, wire.Required)
	m.String("circuit", &s.Circuit, wire.Required)
	m.Int("everyNth", &s.EveryNth)
	wire.Optional(m, "interval", &s.Interval)
	m.String("place", &s.Place)
	m.String("behind", &s.Behind)
	wire.List(m, "seals", &s.Seals)
}
