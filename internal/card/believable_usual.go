package card

import (
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// What oils and fasteners of motorcycles have, common practice, no source: wide enough for
// odd bikes, and narrow enough that a lost point or the unit beside it falls out.

// usualVolumes are the volumes of an oil at a change, in litres.
var usualVolumes = [...]struct {
	role      Role
	low, high float64
}{
	{EngineOil, 0.3, 8}, {GearboxOil, 0.1, 4}, {PrimaryOil, 0.1, 3}, {FinalDrive, 0.04, 1.5},
}

// usualTorques are the torques of fasteners in N·m, for those of which no thread is known.
var usualTorques = [...]struct {
	purpose   Purpose
	low, high float64
}{
	{DrainPlug, 4, 70}, {StrainerCap, 4, 70}, {FilterCanned, 5, 40}, {FilterCover, 2.5, 45}, {FilterClosed, 2.5, 45}, {LevelScrew, 1, 70}, {FillerCap, 1, 70},
}

// mostDry is how many times as much as at a change an engine may take that is dry.
const mostDry = 2

// mostWithFilter is how many times as much as without it an engine may take with its filter.
const mostWithFilter = 1.6

// volumes holds the volumes of an oil against what such oils have and against each other.
func (c *checker) volumes(at string, r *Circuit, displacement float64) {
	only, hasOnly := r.OilOnly.Amount()
	with, hasWith := r.WithFilt.Amount()
	for _, u := range usualVolumes {
		if r.Role != u.role || r.Role == EngineOil && displacement > 0 {
			continue // of a known displacement more is known
		}
		for _, v := range [...]struct {
			at   string
			f    *Figure
			high float64
		}{{"/oilOnly", r.OilOnly, u.high}, {"/withFilter", r.WithFilt, u.high}, {"/dry", r.Dry, mostDry * u.high}} {
			if a, odd := outside(v.f, u.low, v.high); odd {
				c.add(finding.Doubt, "volume-unusual", at+v.at, "value", a.Print(a.Unit), "of", "@role."+string(r.Role))
			}
		}
	}
	if hasOnly && hasWith && with.Base > mostWithFilter*only.Base {
		c.add(finding.Doubt, "filter-volume-much", at+"/withFilter", "with", with.Print(with.Unit), "without", only.Print(only.Unit))
	}
	if !hasOnly || hasWith && with.Base > only.Base {
		only, hasOnly = with, hasWith
	}
	if dry, ok := r.Dry.Amount(); ok && hasOnly && (dry.Base > mostDry*only.Base || !quantity.AtLeast(dry.Base, 0.95*only.Base)) {
		c.add(finding.Doubt, "dry-odd", at+"/dry", "dry", dry.Print(dry.Unit), "volume", only.Print(only.Unit))
	}
}

// usualTorque holds a torque against what such fasteners have.
func (c *checker) usualTorque(at string, b *Bolt) {
	for _, u := range usualTorques {
		if a, odd := outside(b.Torque, u.low, u.high); odd && u.purpose == b.Purpose {
			c.add(finding.Doubt, "torque-unusual", at, "value", a.Print(a.Unit), "of", "@purpose."+string(b.Purpose))
		}
	}
}

// outside reports whether a figure is known and beyond what is usual.
func outside(f *Figure, low, high float64) (quantity.Amount, bool) {
	a, ok := f.Amount()
	upper, ranged := f.Upper()
	if !ranged {
		upper = a
	}
	return a, ok && !(quantity.AtLeast(a.Base, low) && quantity.AtMost(upper.Base, high))
}

// nthLate doubts an oil that is changed with every so many changes of the engine's, where
// its own interval is over before: by more than a tenth, since both are rounded.
func (c *checker) nthLate(at string, r *Circuit, usual *Interval) {
	if r.Interval == nil || r.EveryNth <= 1 {
		return
	}
	own, known := r.Interval.Distance.Amount()
	each, ok := usual.Distance.Amount()
	if late := each.Base * float64(r.EveryNth); known && ok && late > 1.1*own.Base {
		each.Base, each.Rough = late, true
		c.add(finding.Doubt, "nth-late", at+"/everyNth", "own", own.Print(own.Unit), "late", each.Print(each.Unit))
	}
}
