package plan

import (
	"tidysump/internal/drain"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/shown"
)

// habit are the values that say what the usual habit, to drain hotter, gains by
// the calculation of running out and costs by the burn data: in the day's engine
// as far as its volume and drain hole are known, else in a typical one; with the
// typical oil, since a card doesn't say its viscosities.
func (d *day) habit() map[string]string {
	volume, hole := drain.TypicalVolume, drain.TypicalHole
	for _, c := range d.circuits {
		if due, known := d.volume(c).Amount(); known && isEngineOil(c) {
			volume = due.Base * 1e-3
			if mm := d.drainHole(c); mm > 0 {
				hole = mm * 1e-3
			}
		}
	}
	line, _ := oil.LineThrough(40, drain.TypicalAt40, 100, drain.TypicalAt100)
	less, sooner := drain.Guess(volume, hole).Gain(line.At(drain.ComparedWarm)*1e-6, line.At(drain.ComparedHabit)*1e-6, drain.RunOutHigh*60)
	water, _ := drain.Scald(drain.ComparedWarm)
	text := func(base float64, unit string) string { return d.print.Texts(base, unit, 2)[0] }
	return finding.Values(
		"habit", d.print.Between(drain.HabitLow, drain.HabitHigh, "°C", 2)[0],
		"warm", text(drain.ComparedWarm, "°C"),
		"hot", text(drain.ComparedHabit, "°C"),
		"gain", text(less*1e3, "mL"),
		"sooner", shown.Time(sooner, sooner),
		"after", shown.Time(water, water),
	)
}
