package fill

import "tidysump/internal/quantity"

// Span is a range of volumes in litres.
type Span struct{ Low, High float64 }

// Filter is what kind of filter the engine has.
type Filter string

// The filters.
const (
	SpinOn    Filter = "spin-on"
	Cartridge Filter = "cartridge"
	Mesh      Filter = "strainer" // a strainer and no filter
	Stays     Filter = "stays"    // the old filter stays on, full
)

// Mount is where a filter's open end points.
type Mount string

// The mountings.
const (
	OpenUp       Mount = "up"
	OpenSideways Mount = "sideways"
	OpenDown     Mount = "down"
)

// Shares of the volume due that go in before the first start: common practice,
// no source.
const firstLow, firstHigh = 0.85, 0.90

// oldInCase is the old oil that a dry-sump engine keeps in its crankcase when
// only the tank was drained: from memory.
var oldInCase = Span{0.2, 0.6}

// LeastTank is the least volume in litres for which Begin can reckon with old
// oil in the crankcase; with less, as much might stay as goes in.
const LeastTank = 1.2

// LeastSplit is the least volume in litres of which some is kept back: of less, that
// would be less than the 20 mL that the marks of a jug are apart (common practice, no
// source).
const LeastSplit = 0.2

// Start is what goes in before the first start and what after it, in litres; a
// range that is not known or not there is zero.
type Start struct {
	Before  Span // in all, with what goes into the filter
	Prefill Span // of that, into the filter
	Holds   Span // what the filter takes
	Old     Span // old oil that stays in the crankcase
	After   Span // kept back for the level
	Drop    Span // by how much the oil is expected to fall when the engine has run
	// TooLarge is what a filter of that kind usually takes, where that doesn't fit the
	// volume: then nothing is said of it.
	TooLarge Span
}

// kinds gives, for each filter, what it takes and by how much the oil falls
// after the first start when it was empty: from memory. For the spin-on a
// general web page says that it takes 0.2 to 0.4 L. By how much the oil falls
// with a strainer alone, or a filter that stays on, was not found.
var kinds = [...]struct {
	filter      Filter
	holds, drop Span
}{
	{SpinOn, Span{0.15, 0.35}, Span{0.2, 0.4}},
	{Cartridge, Span{0.08, 0.2}, Span{0.05, 0.15}},
	{Mesh, Span{0, 0.02}, Span{}},
}

// withCooler is the fall when the cooler was emptied too: from memory.
var withCooler = Span{0.3, 0.8}

// fits reports whether a usual range can be part of a volume: half of it at the most
// (common practice, no source).
func (s Span) fits(due float64) bool { return quantity.AtMost(s.High, due/2) }

// Begin works that out from the volume due with filter, in litres. cooler: the
// oil cooler was emptied; tankOnly: of a dry sump only the tank was drained; due
// must then be LeastTank at least. What is usual elsewhere is not said of a volume that
// it doesn't fit.
func Begin(due float64, filter Filter, mount Mount, cooler, tankOnly bool) *Start {
	s := &Start{}
	for i := range kinds {
		if kinds[i].filter == filter {
			s.Holds, s.Drop = kinds[i].holds, kinds[i].drop
		}
	}
	if cooler {
		s.Drop = withCooler
	}
	if !s.Holds.fits(due) {
		s.TooLarge, s.Holds = s.Holds, Span{}
	}
	if !s.Drop.fits(due) {
		s.Drop = Span{}
	}
	if tankOnly {
		s.Old = oldInCase
	}
	room := due - s.Old.High
	s.Before = Span{firstLow * room, firstHigh * room}
	s.After = Span{room - s.Before.High, due - s.Before.Low - s.Old.Low}
	if !quantity.AtLeast(due, LeastSplit) {
		s.Before, s.After = Span{due, due}, Span{}
	}
	if filter == SpinOn && s.Holds.High > 0 {
		s.Prefill = prefill(mount, s.Holds)
	}
	s.Drop.Low = max(s.Drop.Low-s.Prefill.High, 0)
	s.Drop.High = max(s.Drop.High-s.Prefill.Low, 0)
	return s
}

// prefill gives what goes into a spin-on filter before it is mounted: half to
// three quarters of it when it hangs open end up, a little soaked into the
// paper when it lies, nothing when it would run out again. Common practice, no
// source.
func prefill(m Mount, holds Span) Span {
	switch m {
	case OpenUp:
		return Span{holds.Low / 2, holds.High * 3 / 4}
	case OpenSideways:
		return Span{0.03, 0.06}
	}
	return Span{}
}
