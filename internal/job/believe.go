package job

import (
	"slices"
	"strings"

	"tidysump/internal/date"
	"tidysump/internal/finding"
)

// believe says of each event what counts as its time and its day. A phone's clock can
// jump, and the order of the events doesn't: the longest run of events whose times
// don't fall is believed, of two equally long ones that with the earlier times. What
// lies outside of it counts at the time before it, or after it where there is none,
// and is told once for each stretch.
func (r *replayer) believe(started string, list []*placed) {
	times := make([]string, 0, len(list)+1)
	days := make([]int, 0, len(list)+1)
	from := make([]*placed, 0, len(list)+1)
	if date.Valid(started) {
		times, days, from = append(times, started), append(days, date.DayOf(started)), append(from, nil)
	}
	for _, e := range list {
		if !e.timeless {
			times, days, from = append(times, e.Time), append(days, dayOf(e.Event)), append(from, e)
		}
	}
	believed := longestRun(times)
	last := slices.Index(believed, true)
	jumped := false
	for i, e := range from {
		if believed[i] {
			last = i
		}
		if e == nil {
			continue
		}
		e.counted, e.day = times[last], days[last]
		if !believed[i] && !jumped {
			r.fault(e, "clock-jumped", "/time", finding.Note, "told", date.DayText(dayOf(e.Event)), "counted", date.DayText(e.day))
		}
		jumped = !believed[i]
	}
}

// dayOf gives the phone's own day of an event. One that no clock on Earth can have
// shown at that time is none.
func dayOf(e *Event) int {
	utc := date.DayOf(e.Time)
	if day, ok := date.ReadDay(e.Day); ok && day >= utc-1 && day <= utc+1 {
		return day
	}
	return utc
}

// longestRun marks the longest subsequence that doesn't fall (by patience sorting:
// C. Schensted, Longest increasing and decreasing subsequences, 1961), of several the
// one with the earliest end.
func longestRun(times []string) []bool {
	var ends []int // by length less one: where the run with the earliest end ends
	before := make([]int, len(times))
	for i, t := range times {
		n, _ := slices.BinarySearchFunc(ends, t, func(end int, t string) int {
			if strings.Compare(times[end], t) <= 0 {
				return -1
			}
			return 1
		})
		before[i] = -1
		if n > 0 {
			before[i] = ends[n-1]
		}
		if n == len(ends) {
			ends = append(ends, i)
		} else {
			ends[n] = i
		}
	}
	run := make([]bool, len(times))
	if len(ends) == 0 {
		return run
	}
	for i := ends[len(ends)-1]; i >= 0; i = before[i] {
		run[i] = true
	}
	return run
}
