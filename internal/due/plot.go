package due

import (
	"math"

	"tidysump/internal/date"
)

// PlotPoint is a place in a picture, in thousandths of its width from where it begins and
// of its height from below.
type PlotPoint struct{ X, Y int }

// Whole is the width and the height of a picture.
const Whole = 1000

// Plot is a counter over time, from a change of oil to both of the limits at which the
// next is due: time across, distance or hours up.
type Plot struct {
	Read  []PlotPoint // what was read since the change, which is the first
	Limit PlotPoint   // where the day is, across, and the count, up, at which the oil is due
	Today int         // where today is, across
	// Middle is an estimate: the way from the last reading to the limit that it meets
	// first. Spread is the field in which it lies in 9 of 10 cases. Both are empty where
	// no pace is known, or a limit is passed.
	Middle, Spread []PlotPoint
	Days           []DayTick
	Counts         []CountTick
}

// DayTick is the first of a month, on the side of time.
type DayTick struct {
	X   int
	Day string
}

// CountTick is a round count.
type CountTick struct {
	Y     int
	Count float64 // km or hours
}

// mostTicks is how many a side of the picture has at most.
const mostTicks = 5

// room is the part of a side that is left free beyond what is shown last, so that a limit
// can be told from the edge.
const room = 0.08

// PlotOf draws a counter from a change to where the oil is due by the counter n and by
// time; per is a unit of the counter, of which round numbers are marked. ok is false
// where one of the limits isn't known, or what was read at the change.
func PlotOf(list []Reading, pace Pace, known bool, n int, change, limit *Mark, today, per float64) (p Plot, ok bool) {
	from, to := Reading{Day: change[Time], Count: change[n]}, Reading{Day: limit[Time], Count: limit[n]}
	if from.Count <= 0 || to.Count <= from.Count || to.Day <= from.Day || today < from.Day || per <= 0 {
		return p, false
	}
	read, last, most := []Reading{from}, from, to.Count
	for _, r := range list {
		if r.Day < from.Day || r.Day > today || r.Count < from.Count || r == from || r.Day == from.Day && r.Count == from.Count {
			continue // of before, still to come, or a slip
		}
		read = append(read, r)
		if r.Count >= last.Count {
			last = r
		}
		most = max(most, r.Count)
	}
	wide, high := (max(to.Day, today)-from.Day)*(1+room), (most-from.Count)*(1+room)
	at := func(r Reading) PlotPoint {
		share := func(v float64) int { return int(math.Round(min(max(v, 0), 1) * Whole)) }
		return PlotPoint{share((r.Day - from.Day) / wide), share((r.Count - from.Count) / high)}
	}
	for _, r := range read {
		p.Read = append(p.Read, at(r))
	}
	p.Limit, p.Today = at(to), at(Reading{Day: today, Count: from.Count}).X
	if known && last.Count < to.Count && today < to.Day {
		meets := func(daily float64) Reading {
			if there := last.Day + (to.Count-last.Count)/daily; daily > 0 && there < to.Day {
				return Reading{Day: there, Count: to.Count}
			}
			return Reading{Day: to.Day, Count: last.Count + max(daily, 0)*(to.Day-last.Day)}
		}
		early, late := meets(pace.High), meets(pace.Low)
		p.Middle = []PlotPoint{at(last), at(meets(pace.Middle))}
		p.Spread = []PlotPoint{at(last), at(early)}
		if early.Day < to.Day && late.Day == to.Day {
			p.Spread = append(p.Spread, at(to)) // round the corner
		}
		p.Spread = append(p.Spread, at(late))
	}
	p.Days, p.Counts = dayTicks(from.Day, wide, at), countTicks(from.Count, high, per, at)
	return p, true
}

// monthSteps are the months between two ticks.
var monthSteps = [...]int{1, 2, 3, 6, 12, 24, 60, 120, 240, 600}

// dayTicks marks the first days of months, as many months apart as makes few of them.
func dayTicks(from, wide float64, at func(Reading) PlotPoint) []DayTick {
	year, month, _ := date.Date(int(from))
	for _, step := range monthSteps {
		var list []DayTick
		first := date.Day(year, (month-1)/step%12*step+1, 1)
		if step > 12 {
			first = date.Day(year, 1, 1)
		}
		for day := first; float64(day) <= from+wide && len(list) <= mostTicks; day = date.AddMonths(day, step) {
			if float64(day) >= from {
				list = append(list, DayTick{at(Reading{Day: float64(day)}).X, date.DayText(day)})
			}
		}
		if len(list) <= mostTicks {
			return list
		}
	}
	return nil
}

// countTicks marks round counts: ones, twos or fives of some power of ten.
func countTicks(from, high, per float64, at func(Reading) PlotPoint) (list []CountTick) {
	step := math.Pow(10, math.Floor(math.Log10(high/per/mostTicks)))
	for _, times := range [...]float64{1, 2, 5, 10} {
		if high/per/(step*times) < mostTicks {
			step *= times
			break
		}
	}
	for n := math.Ceil(from / per / step); n*step*per <= from+high; n++ {
		list = append(list, CountTick{at(Reading{Day: 0, Count: n * step * per}).Y, n * step * per})
	}
	return list
}
