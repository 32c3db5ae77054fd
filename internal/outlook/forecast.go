package outlook

import (
	"math"
	"strconv"

	"tidysump/internal/due"
	"tidysump/internal/finding"
)

// verdicts are the word ids of due.Grade.
var verdicts = [...]string{"due.not-yet", "due.soon", "due.likely", "due.now", "due.over", "due.far-over", "due.twice-over"}

// judge grades how urgent it is, and foresees when it will be due.
func (r *reckoner) judge(d *DueOil, last, at, now *due.Mark) {
	today := r.now[due.Time]
	most, share := due.Used(last, at, now)
	grade := due.GradeOf(share)
	middle := r.forecast(d, at, last[due.Time])
	switch {
	case grade >= due.Now:
		d.Why = "" // what comes first has come
		by := "@due.days"
		if most == due.Km {
			by = r.print.Kilometres(now[most]-at[most], 7)[0]
		}
		if most == due.Hours {
			by = hoursText(now[most] - at[most])
		}
		d.Values = finding.Values("by", by, "count", strconv.Itoa(int(today-at[due.Time])),
			"again", r.print.Between(500, 1000, "km", 1)[0])
	case middle <= today:
		grade = due.Likely
	case middle <= today+due.SoonDays:
		grade = due.Soon
	}
	d.Grade, d.Verdict = int(grade), verdicts[grade]
	r.outlook.Grade = max(r.outlook.Grade, d.Grade)
}

// forecast puts the months between which the first of all comes, and the day for a
// calendar, and gives the likeliest day, by what was read since a day. What is ridden
// never gives a day.
func (r *reckoner) forecast(d *DueOil, at *due.Mark, since float64) (middle float64) {
	const never = 50 * 365.25 // days from now; nobody plans for those
	today := r.now[due.Time]
	day := at[due.Time]
	if day == 0 {
		day = today + never
	}
	early, late, counted := day, day, false
	middle = day
	for n := range r.counters {
		c := &r.counters[n]
		if at[n] > 0 && c.known {
			e, m, l := c.pace.When(c.read(since), at[n])
			early, middle, late = min(early, e), min(middle, m), min(late, l)
		}
		counted = counted || at[n] > 0 && !c.known
	}
	switch {
	case early < day:
		d.Why = "due.use-first"
		if late == at[due.Time] {
			d.Why = "due.either-first"
		}
		if late >= today {
			d.From = monthText(max(early, today))
			if late < today+never {
				d.To = monthText(late)
			}
		}
	case counted:
		d.Why = "due.pace-unknown"
	case at[due.Time] > 0:
		d.Why = "due.time-first"
	}
	middle = min(middle, day)
	if middle < today+never {
		d.Remind = dayText(math.Floor(max(middle, today)))
		if o := &r.outlook; o.Remind == "" || d.Remind < o.Remind {
			o.Remind = d.Remind
		}
	}
	return middle
}

// monthText gives the month of a day, "2027-03".
func monthText(day float64) string { return dayText(day)[:len("0000-00")] }
