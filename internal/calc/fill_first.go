package calc

import (
	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// firstFields: volume is the one due today, with the filter when that is new.
// cooler: it was emptied; tankOnly: of a dry sump only the tank was drained.
var firstFields = [...]field{
	{name: "volume", kind: quantity.Volume, low: 0.05, high: 25, needed: true},
	{name: "filter", kind: Choice, words: texts(fill.SpinOn, fill.Cartridge, fill.Mesh, fill.Stays), family: "filter.", needed: true},
	{name: "layout", kind: Choice, words: texts(card.WetSump, card.SmallStrainer, card.DrySump), family: "layout.", needed: true},
	{name: "mount", kind: Choice, words: texts(card.Mounts...), family: "mount."},
	{name: "cooler", kind: Yes},
	{name: "tankOnly", kind: Yes},
}

// firstFill says what to pour when, and by how much the level is expected to
// fall.
func firstFill(f *Form, a *Answer) {
	volume, filter, mount := f.number("volume"), fill.Filter(f.of("filter").text), fill.Mount(f.of("mount").text)
	tankOnly, dry := f.number("tankOnly") > 0, f.of("layout").text == string(card.DrySump)
	if tankOnly && !dry {
		f.reject("no-tank", "tankOnly")
	}
	if tankOnly && volume < fill.LeastTank {
		f.reject("old-oil-unknown", "volume")
	}
	s := fill.Begin(volume, filter, mount, f.number("cooler") > 0, tankOnly)
	a.word("prefill", prefillWord(filter, mount))
	if h := s.TooLarge; h.High > 0 {
		f.say(finding.Doubt, "filter-too-large", "filter", "holds", a.between(h.Low, h.High, "mL", 2)[0])
		if filter == fill.SpinOn {
			a.word("prefill", "prefill.unfit")
		}
	}
	a.word("read", "read-level.as-card")
	if dry {
		a.word("read", "read-level.hot")
	}
	a.span("before", "first-pour", "first-range", s.Before)
	a.span("before", "prefill", "practice", s.Prefill)
	a.span("before", "filter-holds", "memory", s.Holds)
	a.span("before", "old-in-case", "memory", s.Old)
	a.span("after", "kept-back", "first-range", s.After)
	a.span("after", "drop", "memory", s.Drop)

	if filter == fill.SpinOn && mount == "" {
		f.say(finding.Note, "mount-unknown", "mount")
	}
	if s.Drop.High == 0 {
		a.unknown("after", "drop")
	} else if mount != fill.OpenUp {
		f.say(finding.Note, "no-drop", "filter")
	}
	if s.After.High == 0 {
		f.say(finding.Note, "all-at-once", "volume")
	}
	if tankOnly {
		f.say(finding.Doubt, "old-oil-stays", "tankOnly")
	}
}

// span adds a range of volumes to the tenth of a decilitre; one that is not
// there is left out.
func (a *Answer) span(list, name string, by method, v fill.Span) {
	if v.High > 0 {
		a.amount(list, name, by, round(v.Low, 100), round(v.High, 100), "mL", 3)
	}
}

// prefillWord says whether the filter is filled before it is mounted.
func prefillWord(filter fill.Filter, mount fill.Mount) string {
	switch {
	case filter == fill.Cartridge:
		return "prefill.wet-paper"
	case filter != fill.SpinOn:
		return "prefill.none"
	case mount == "":
		return "prefill.not-known"
	}
	return "prefill." + string(mount)
}
