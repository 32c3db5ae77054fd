package card

// The words of a card that come from a fixed list. What is empty is not known.

// Layout is how the bike keeps its oil.
type Layout string

// The layouts known so far.
const (
	WetSump         Layout = "wet-sump"         // one oil for engine, gearbox and clutch
	WetSumpShaft    Layout = "wet-sump-shaft"   // as wet-sump, with a shaft and its final drive
	SeparateGearbox Layout = "separate-gearbox" // wet sump, dry clutch, gearbox with an oil of its own
	SmallStrainer   Layout = "small-strainer"   // as wet-sump, with a strainer and no filter
	TwoStrainers    Layout = "v-twin-strainers" // V-twin, as wet-sump, with two strainers and a filter
	TwoCompartments Layout = "two-compartment"  // crank side and clutch side with an oil each
	DrySump         Layout = "dry-sump"         // engine oil in a tank of its own
	DrySumpFrame    Layout = "dry-sump-frame"   // engine oil in the frame
	SeparateOils    Layout = "separate-oils"    // tank and engine, primary case, gearbox: three oils
	FlatTwin        Layout = "flat-twin"        // wet sump, dry clutch, gearbox and shaft
	Scooter         Layout = "scooter"          // engine oil and final-drive oil, belt between
)

// Layouts lists the layouts.
var Layouts = []Layout{WetSump, WetSumpShaft, SeparateGearbox, SmallStrainer, TwoStrainers, TwoCompartments,
	DrySump, DrySumpFrame, SeparateOils, FlatTwin, Scooter}

// InTank reports whether the engine oil lies in a tank or the frame, from where
// it creeps into the crankcase while the bike stands.
func (l Layout) InTank() bool { return l == DrySump || l == DrySumpFrame || l == SeparateOils }

// Cooling is what takes the engine's heat away.
type Cooling string

// The ways of cooling.
const (
	AirCooled    Cooling = "air"
	OilCooled    Cooling = "oil"
	LiquidCooled Cooling = "liquid"
)

// Coolings lists the ways of cooling.
var Coolings = []Cooling{AirCooled, OilCooled, LiquidCooled}

// Clutch says whether the clutch runs in oil.
type Clutch string

// The clutches.
const (
	WetClutch Clutch = "wet"
	DryClutch Clutch = "dry"
)

// Clutches lists the clutches.
var Clutches = []Clutch{WetClutch, DryClutch}

// Role is what a circuit's oil serves first of all.
type Role string

// The roles.
const (
	EngineOil  Role = "engine"
	GearboxOil Role = "gearbox"
	PrimaryOil Role = "primary"
	FinalDrive Role = "final-drive"
)

// Roles lists the roles.
var Roles = []Role{EngineOil, GearboxOil, PrimaryOil, FinalDrive}

// Device is what an oil level is read on.
type Device string

// The devices.
const (
	Window       Device = "window"
	StickResting Device = "stick-resting" // laid on its thread
	StickScrewed Device = "stick-screwed" // screwed in
	StickPushed  Device = "stick-pushed"  // pushed home
	Hole         Device = "hole"          // oil runs out or stands at its edge; there are no marks
	Gaugeless    Device = "measured"      // nothing is read: the volume is measured when it is poured
)

// Devices lists the devices.
var Devices = []Device{Window, StickResting, StickScrewed, StickPushed, Hole, Gaugeless}

// Stick reports whether a level is read on a dipstick.
func (d Device) Stick() bool { return d == StickResting || d == StickScrewed || d == StickPushed }

// State is how hot the oil is when its level is read.
type State string

// The states.
const (
	Cold State = "cold"
	Warm State = "warm"
	Hot  State = "hot"
)

// States lists the states.
var States = []State{Cold, Warm, Hot}

// Stance is how the bike stands when a level is read.
type Stance string

// The stances.
const (
	Upright     Stance = "upright"
	SideStand   Stance = "side-stand"
	CentreStand Stance = "centre-stand"
)

// Stances lists the stances.
var Stances = []Stance{Upright, SideStand, CentreStand}

// Purpose is what a fastener is for.
type Purpose string

// The purposes of the fasteners an oil change meets.
const (
	DrainPlug    Purpose = "drain-plug"
	StrainerCap  Purpose = "strainer-cap" // also the drain when Drains is set
	FilterCover  Purpose = "filter-cover-screw"
	FilterCanned Purpose = "filter-can"      // a spin-on filter itself
	FilterClosed Purpose = "filter-or-cover" // either of the two, of a filter whose kind is not known
	FillerCap    Purpose = "filler-cap"
	LevelScrew   Purpose = "level-screw"
	Panel        Purpose = "panel"       // holds a panel or guard that is in the way
	LeaveAlone   Purpose = "leave-alone" // looks like a drain and is not one
)

// Purposes lists the purposes.
var Purposes = []Purpose{DrainPlug, StrainerCap, FilterCover, FilterCanned, FilterClosed, FillerCap, LevelScrew, Panel, LeaveAlone}

// Drive is what a fastener is turned with.
type Drive string

// The drives.
const (
	Hexagon    Drive = "hexagon"
	HexagonKey Drive = "hexagon-key"
	SixLobe    Drive = "six-lobe"
	Hand       Drive = "hand"
	Strap      Drive = "strap"
)

// Drives lists the drives.
var Drives = []Drive{Hexagon, HexagonKey, SixLobe, Hand, Strap}

// SealKind is a kind of washer, ring or gasket.
type SealKind string

// The kinds of seals: the names of bolt.Seals.
const (
	FlatAluminium SealKind = "flat-aluminium"
	FlatCopper    SealKind = "flat-copper"
	Folded        SealKind = "folded"
	Bonded        SealKind = "bonded"
	Fibre         SealKind = "fibre"
	ORing         SealKind = "o-ring"
	SquareRing    SealKind = "square-ring"
	Paper         SealKind = "paper"
)

// SealKinds lists the kinds of seals, in the order of bolt.Seals.
var SealKinds = []SealKind{FlatAluminium, FlatCopper, Folded, Bonded, Fibre, ORing, SquareRing, Paper}

// FilterKind is a kind of oil filter.
type FilterKind string

// The kinds of filters. A centrifugal one throws the dirt out: it is cleaned and
// put back, and doesn't count as a filter that is changed. One of which nobody said
// whether it is screwed on or lies under a cover is of no kind until somebody looked.
const (
	SpinOn      FilterKind = "spin-on"
	Cartridge   FilterKind = "cartridge"
	Centrifugal FilterKind = "centrifugal"
	KindUnknown FilterKind = "unknown"
)

// FilterKinds lists the kinds of filters.
var FilterKinds = []FilterKind{SpinOn, Cartridge, Centrifugal, KindUnknown}

// HeldBy is what a fastener is for that a filter of that kind is closed with.
func (k FilterKind) HeldBy() Purpose {
	switch k {
	case SpinOn:
		return FilterCanned
	case KindUnknown:
		return FilterClosed
	}
	return FilterCover
}

// Mount is where the open end of a mounted filter points.
type Mount string

// The mountings.
const (
	OpenUp       Mount = "up"
	OpenSideways Mount = "sideways"
	OpenDown     Mount = "down"
)

// Mounts lists the mountings.
var Mounts = []Mount{OpenUp, OpenSideways, OpenDown}

// RingWith is what is put on a filter's new ring before it is mounted.
type RingWith string

// What a ring gets.
const (
	RingOil    RingWith = "oil"
	RingGrease RingWith = "grease"
	RingDry    RingWith = "dry" // nothing
)

// RingsWith lists what a ring gets.
var RingsWith = []RingWith{RingOil, RingGrease, RingDry}

// NotePlace is the moment of the job that a note belongs to.
type NotePlace string

// The moments, in the order of the job.
const (
	AtReady      NotePlace = "ready"       // before the engine runs: what is laid out, what is looked at
	AtWarm       NotePlace = "warm"        // the engine is warmed up
	AtDrain      NotePlace = "drain"       // what the oil runs out of is opened
	AtStrainer   NotePlace = "strainer"    // a strainer is taken out, cleaned, put back
	AtFilterOff  NotePlace = "filter-off"  // the filter comes off
	AtLook       NotePlace = "look"        // what came out is looked at
	AtClose      NotePlace = "close"       // what the oil ran out of is closed
	AtFilterOn   NotePlace = "filter-on"   // the filter goes on, or its cover
	AtFill       NotePlace = "fill"        // oil is poured in
	AtFirstStart NotePlace = "first-start" // the engine runs for the first time
	AtLevel      NotePlace = "level"       // the level is read
	AtLeak       NotePlace = "leak"        // it is looked for leaks
	AtRide       NotePlace = "ride"        // the bike is ridden
	AtPanel      NotePlace = "panel"       // a panel comes off, or goes on
	AtWaste      NotePlace = "waste"       // the old oil is taken away
)

// NotePlaces lists the moments.
var NotePlaces = []NotePlace{AtReady, AtWarm, AtDrain, AtStrainer, AtFilterOff, AtLook, AtClose, AtFilterOn,
	AtFill, AtFirstStart, AtLevel, AtLeak, AtRide, AtPanel, AtWaste}
