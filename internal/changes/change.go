// Package changes says where two texts of one card differ, in the names by which a
// person knows the things of a bike:
//
//	Between(from, to) -> changes    pure
//
// Whatever a card can say differently is told; a card that says the same in another way
// (nothing, and a figure that is not known) is the same.
package changes

import (
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Word names what differs: "differs." and it is a word id.
type Word string

// The words.
const (
	Added    Word = "added"   // the whole part; there is neither a Before nor an After
	Removed  Word = "removed" // likewise
	Sequence Word = "sequence"

	Key          Word = "key"
	Invented     Word = "invented"
	Make         Word = "make"
	Model        Word = "model"
	YearFrom     Word = "year-from"
	YearTo       Word = "year-to"
	Layout       Word = "layout"
	Cylinders    Word = "cylinders"
	Displacement Word = "displacement"
	Cooling      Word = "cooling"
	Clutch       Word = "clutch"
	NoLamp       Word = "no-lamp"
	ReturnSeen   Word = "return-seen"
	NoNeutral    Word = "no-neutral"
	Manual       Word = "manual"

	Role       Word = "role"
	WetClutch  Word = "wet-clutch"
	Grades     Word = "grades"
	Marks      Word = "marks"
	Service    Word = "service"
	OilOnly    Word = "oil-only"
	WithFilter Word = "with-filter"
	Dry        Word = "dry"
	EveryNth   Word = "every-nth"
	Device     Word = "device"
	State      Word = "state"
	Stance     Word = "stance"
	Run        Word = "run"
	Wait       Word = "wait"
	Band       Word = "band"
	Where      Word = "where"
	WarmTarget Word = "warm-target"
	WarmTime   Word = "warm-time"
	AirFrom    Word = "air-from"
	AirTo      Word = "air-to"

	Purpose   Word = "purpose"
	Circuit   Word = "circuit"
	Holds     Word = "holds"
	Behind    Word = "behind"
	Place     Word = "place"
	Count     Word = "count"
	Order     Word = "order"
	Drains    Word = "drains"
	Tank      Word = "tank"
	Magnet    Word = "magnet"
	Thread    Word = "thread"
	Drive     Word = "drive"
	Size      Word = "size"
	Torque    Word = "torque"
	Turn      Word = "turn"
	Seal      Word = "seal"
	Inner     Word = "inner"
	Outer     Word = "outer"
	Thickness Word = "thickness"
	Seals     Word = "seals"
	Kind      Word = "kind"
	Mount     Word = "mount"
	Ring      Word = "ring"
	Height    Word = "height"
	RingsWith Word = "ring-with"
	Number    Word = "number"

	Distance Word = "distance"
	Time     Word = "time"
	Hours    Word = "hours"
	Note     Word = "note"
	Quote    Word = "quote"

	// Of the intervals that a part has of its own.
	OwnDistance    Word = "own-distance"
	OwnTime        Word = "own-time"
	OwnHours       Word = "own-hours"
	FirstDistance  Word = "first-distance"
	FirstTime      Word = "first-time"
	FirstHours     Word = "first-hours"
	SevereDistance Word = "severe-distance"
	SevereTime     Word = "severe-time"
	SevereHours    Word = "severe-hours"
)

// Words lists the words.
var Words = []Word{Added, Removed, Sequence, Key, Invented, Make, Model, YearFrom, YearTo, Layout, Cylinders, Displacement, Cooling, Clutch,
	NoLamp, ReturnSeen, NoNeutral, Manual, Role, WetClutch, Grades, Marks, Service, OilOnly, WithFilter, Dry, EveryNth, Device, State, Stance,
	Run, Wait, Band, Where, WarmTarget, WarmTime, AirFrom, AirTo, Purpose, Circuit, Holds, Behind, Place, Count, Order, Drains, Tank, Magnet, Thread, Drive, Size, Torque, Turn,
	Seal, Inner, Outer, Thickness, Seals, Kind, Mount, Ring, Height, RingsWith, Number, Distance, Time, Hours, Note, Quote,
	OwnDistance, OwnTime, OwnHours, FirstDistance, FirstTime, FirstHours, SevereDistance, SevereTime, SevereHours}

// Parts lists the word ids of what a change is of, after "differs-of.", besides the roles
// of oils, the purposes of fasteners and the moments of notes.
var Parts = []string{"spin-on", "cartridge", "centrifugal", "unknown", "strainer", "interval", "interval-first", "interval-severe"}

// Change is one thing that differs.
type Change struct {
	Part  string // of what: a word id; empty for the bike as a whole
	Place string // where that is, in the card's own words
	Word  string // word id of what differs
	// Before and After are what the cards say; nil where one says nothing.
	Before, After *shown.Figure
	// Origin: both say the same, and it differs where they have it from.
	Origin bool
}

// Members names the members of a change.
func (c *Change) Members(m *wire.Members) {
	m.String("part", &c.Part)
	m.String("place", &c.Place)
	m.String("word", &c.Word, wire.Required)
	wire.Optional(m, "before", &c.Before)
	wire.Optional(m, "after", &c.After)
	m.Bool("origin", &c.Origin)
}
