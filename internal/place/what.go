// Package place says to which place of a card a reading of a manual's page goes, and
// takes readings into a card:
//
//	Take(card, readings) -> card, where each went    pure
//
// It reads no page: what a figure is of was found by whoever hands it in.
package place

import (
	"sync"

	"tidysump/internal/card"
)

// What names a figure or word that a manual may give, such as "bolt.drain.torque".
type What = string

// part is what a fastener of the list is on a card.
type part struct {
	name    string
	role    card.Role
	purpose card.Purpose
	tank    bool
}

// filterBolt is the fastener that is the filter itself, or goes through its housing.
const filterBolt = "filter"

// parts are the fasteners, in the order in which they are put into a card: a strainer
// before a drain plug that may be it, what a level is read at before what oil is filled
// through, since either may be both.
var parts = [...]part{
	{"strainer", card.EngineOil, card.StrainerCap, false},
	{"drain", card.EngineOil, card.DrainPlug, false},
	{"tank-drain", card.EngineOil, card.DrainPlug, true},
	{"filter-cover", card.EngineOil, card.FilterCover, false},
	{filterBolt, card.EngineOil, card.FilterCanned, false},
	{"level", card.EngineOil, card.LevelScrew, false},
	{"filler", card.EngineOil, card.FillerCap, false},
	{"gearbox-drain", card.GearboxOil, card.DrainPlug, false},
	{"gearbox-level", card.GearboxOil, card.LevelScrew, false},
	{"gearbox-filler", card.GearboxOil, card.FillerCap, false},
	{"primary-drain", card.PrimaryOil, card.DrainPlug, false},
	{"primary-level", card.PrimaryOil, card.LevelScrew, false},
	{"primary-filler", card.PrimaryOil, card.FillerCap, false},
	{"final-drain", card.FinalDrive, card.DrainPlug, false},
	{"final-level", card.FinalDrive, card.LevelScrew, false},
	{"final-filler", card.FinalDrive, card.FillerCap, false},
}

// others are the oils besides the engine's.
var others = [...]struct {
	name string
	role card.Role
}{{"gearbox", card.GearboxOil}, {"primary", card.PrimaryOil}, {"final", card.FinalDrive}}

// member is the last word of a name, and the members of a card below its part.
type member struct{ name, at string }

var (
	engineMembers = [...]member{{"with-filter", "withFilter"}, {"oil-only", "oilOnly"}, {"dry", "dry"}}
	otherMembers  = [...]member{{"volume", "oilOnly"}, {"dry", "dry"}}
	oilMembers    = [...]member{{"grades", "oil/grades"}, {"marks", "oil/marks"}, {"service", "oil/service"}}
	levelMembers  = [...]member{{"device", "level/device"}, {"state", "level/state"}, {"stance", "level/stance"},
		{"run", "level/run"}, {"wait", "level/wait"}, {"band", "level/band"}}
	warmMembers = [...]member{{"target", "warm/target"}, {"time", "warm/time"}}
	boltMembers = [...]member{{"torque", "torque"}, {"turn", "turn"}, {"thread", "thread"}, {"drive", "drive"}, {"size", "size"},
		{"seal", "seal/kind"}, {"count", "count"}}
	wholeIntervals = [...]member{{"distance", "interval/distance"}, {"months", "interval/time"}, {"hours", "interval/hours"},
		{"first", "interval/first/distance"}, {"first-months", "interval/first/time"}, {"first-hours", "interval/first/hours"},
		{"severe", "interval/severe/distance"}, {"severe-months", "interval/severe/time"}, {"severe-hours", "interval/severe/hours"}}
	ownIntervals = [...]member{{"", "interval/distance"}, {"-months", "interval/time"}, {"-hours", "interval/hours"},
		{"-first", "interval/first/distance"}}
	bikeMembers = [...]member{{"make", "make"}, {"model", "model"}, {"years", "yearFrom"},
		{"displacement", "engine/displacement"}, {"cooling", "engine/cooling"}}
)

// kind of the thing that a name is of.
type of int

const (
	ofBike of = iota
	ofOil
	ofFilter
	ofStrainer
	ofBolt
)

// entry is a line of the list: a name, of what it is, and the members below that.
type entry struct {
	what What
	of   of
	role card.Role // of an oil
	part *part     // of a fastener
	at   string
}

// entries is the list, in the order in which readings are put into a card: a filter's kind
// before its fastener.
var entries = listed()

func listed() []entry {
	var list []entry
	oil := func(stem string, role card.Role, members ...member) {
		for _, m := range members {
			list = append(list, entry{what: What(stem + m.name), of: ofOil, role: role, at: m.at})
		}
	}
	bike := func(stem string, members ...member) {
		for _, m := range members {
			list = append(list, entry{what: What(stem + m.name), of: ofBike, at: m.at})
		}
	}
	oil("oil.engine.", card.EngineOil, engineMembers[:]...)
	oil("oil.engine.", card.EngineOil, oilMembers[:]...)
	for _, o := range others {
		oil("oil."+o.name+".", o.role, otherMembers[:]...)
		oil("oil."+o.name+".", o.role, oilMembers[:]...)
	}
	oil("level.", card.EngineOil, levelMembers[:]...)
	for _, o := range others {
		oil("level."+o.name+".", o.role, levelMembers[:]...)
	}
	list = append(list, entry{what: "filter.kind", of: ofFilter, at: "kind"}, entry{what: "filter.every", of: ofFilter, at: "everyNth"})
	for i := range parts {
		for _, m := range boltMembers {
			if m.name == "count" && parts[i].purpose != card.FilterCover {
				continue // of the others there is one
			}
			list = append(list, entry{what: What("bolt." + parts[i].name + "." + m.name), of: ofBolt, part: &parts[i], at: m.at})
		}
	}
	list = append(list, entry{what: "strainer.every", of: ofStrainer, at: "everyNth"})
	oil("warm.", card.EngineOil, warmMembers[:]...)
	bike("interval.", wholeIntervals[:]...)
	for _, m := range ownIntervals {
		list = append(list, entry{what: What("interval.filter" + m.name), of: ofFilter, at: m.at},
			entry{what: What("interval.strainer" + m.name), of: ofStrainer, at: m.at})
		for _, o := range others {
			oil("interval."+o.name, o.role, m)
		}
	}
	bike("", bikeMembers[:]...)
	return list
}

// Whats lists the names, in the order of a plan: oils, levels, fasteners, intervals, and
// what the bike is.
func Whats() []What {
	list := make([]What, len(entries))
	for i := range entries {
		list[i] = entries[i].what
	}
	return list
}

// Known reports whether the list has a name.
func Known(what What) bool { return rank(what) >= 0 }

// rank is the place of a name in the list, -1 where there is none of it.
func rank(what What) int {
	if n, is := ranks()[what]; is {
		return n
	}
	return -1
}

var ranks = sync.OnceValue(func() map[What]int {
	all := make(map[What]int, len(entries))
	for i := range entries {
		all[entries[i].what] = i
	}
	return all
})
