package outlook

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// reckoner works out when the oils of a bike are due, from its jobs.
type reckoner struct {
	card     *card.Card    // of the newest job
	plan     *plan.Plan    // of the newest job: as the bike is used
	print    shown.Printer // of that card's figures
	past     []*job.Trace
	told     []due.OdometerReading // what the odometer showed between the jobs
	now      due.Mark              // the last readings, and today
	counters [due.Counters]counter
	engine   string // id of the engine's oil
	outlook  Outlook
}

// counter is an odometer or a counter of hours over the record of a bike.
type counter struct {
	list  []due.Reading
	pace  due.Pace
	known bool // the pace
}

// Foresee says when the oils of a bike are due again, from its jobs, the newest
// last, whose card and bench hold, and from what its odometer showed between them. Jobs
// that can't be used are left out and reported, with their place in the list.
func Foresee(jobs []job.Past, told []due.OdometerReading, today int, system quantity.System) *Outlook {
	r := &reckoner{told: told}
	for n := range jobs {
		p, list := jobs[n].Recall()
		if p != nil {
			r.past = append(r.past, p)
			list = disbelieve(p, float64(today))
		}
		r.outlook.Findings = append(r.outlook.Findings, finding.Below("/jobs/"+strconv.Itoa(n), list)...)
	}
	r.print.System, r.now[due.Time] = system, float64(today)
	if len(r.past) == 0 {
		r.count()
		return &r.outlook
	}
	newest := r.past[len(r.past)-1]
	r.plan = newest.Plan
	r.card, r.outlook.Severe = r.plan.Card(), r.plan.Severe()
	r.print.Sources = r.card.Sources
	r.count()
	for n := range r.card.Circuits {
		if c := &r.card.Circuits[n]; c.Role == card.EngineOil {
			r.engine = c.ID
		}
	}
	r.outlook.Oils = make([]DueOil, len(r.card.Circuits))
	for n := range r.outlook.Oils {
		r.oil(&r.outlook.Oils[n], &r.card.Circuits[n])
	}
	r.rank()
	r.uses()
	return &r.outlook
}

// count reads the counters over all jobs.
func (r *reckoner) count() {
	for n := range r.counters {
		c := &r.counters[n]
		for _, p := range r.past {
			if p.Read[n].Count > 0 {
				c.list = append(c.list, p.Read[n])
			}
		}
		if n == due.Km {
			r.between(c)
		}
		slices.SortStableFunc(c.list, func(a, b due.Reading) int {
			return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.At, b.At))
		})
		c.pace, c.known = due.PaceOf(c.list)
		r.backwards(n)
	}
	if c := &r.counters[due.Km]; c.known {
		const days = 365.25 / 12
		r.outlook.Readings, r.outlook.Since = len(c.list), dayText(c.list[0].Day)
		pace := shown.Estimate("pace", "pace", r.print.Between(c.pace.Low*days, c.pace.High*days, "km", 2)...)
		r.outlook.Pace = &pace
	}
	r.last()
}

// between takes in what the odometer showed between the jobs, but for what is dated
// after today.
func (r *reckoner) between(c *counter) {
	for i := range r.told {
		t := &r.told[i]
		day, ok := date.ReadDay(t.Day)
		switch {
		case !ok || !(t.Km > 0):
		case float64(day) > r.now[due.Time]:
			r.outlook.Findings = append(r.outlook.Findings, ahead(float64(day))...)
		default:
			c.list = append(c.list, due.Reading{Day: float64(day), Count: t.Km, At: t.At})
		}
	}
}

// last tells what the odometer showed last, and which fact says so, if one does.
func (r *reckoner) last() {
	list := r.counters[due.Km].list
	if len(list) == 0 {
		return
	}
	read := list[len(list)-1]
	r.outlook.Last = &LastReading{Day: dayText(read.Day), Texts: r.print.Kilometres(read.Count, 7)}
	for i := range r.told {
		if t := &r.told[i]; t.At == read.At && t.Day == r.outlook.Last.Day && t.Km == read.Count {
			r.outlook.Last.ID = t.ID
		}
	}
}

// backwards says where a counter shows less than before; of what the odometer showed
// last, at "/last".
func (r *reckoner) backwards(n int) {
	list := r.counters[n].list
	for i := 1; i < len(list); i++ {
		if before, now := list[i-1].Count, list[i].Count; now < before {
			text := func(count float64) string {
				if n == due.Hours {
					return hoursText(count)
				}
				return r.print.Kilometres(count, 7)[0]
			}
			where := ""
			if n == due.Km && i == len(list)-1 {
				where = "/last"
			}
			r.outlook.Findings = append(r.outlook.Findings, finding.Finding{Code: "counter-back", Where: where, Grade: finding.Doubt,
				Values: finding.Values("from", text(before), "to", text(now))})
		}
	}
}

// read gives the last reading of a counter that counts since a day: the highest, since
// one that went backwards may be a slip and hides nothing that was ridden.
func (c *counter) read(since float64) (last due.Reading) {
	for _, r := range c.list {
		if r.Count >= last.Count || last.Day < since {
			last = r
		}
	}
	return last
}

// held reports whether what a counter showed at a change can be held against what it
// shows since: it went on from there.
func (c *counter) held(at, since float64) bool {
	last := len(c.list) - 1
	return last < 0 || c.list[last].Day < since || c.list[last].Count >= at
}

func dayText(day float64) string { return date.DayText(int(day)) }

// disbelieve takes out of a job what is dated after today: nothing is counted from a
// day that is still to come, and the person hears of it.
func disbelieve(p *job.Trace, today float64) []finding.Finding {
	late := 0.0
	for circuit, day := range p.Changed {
		if day > today {
			late = max(late, day)
			delete(p.Changed, circuit)
		}
	}
	for n := range p.Read {
		if read := &p.Read[n]; read.Count > 0 && read.Day > today {
			late = max(late, read.Day)
			*read = due.Reading{}
		}
	}
	if late == 0 {
		return nil
	}
	return ahead(late)
}

// ahead says that something is dated after today.
func ahead(day float64) []finding.Finding {
	return []finding.Finding{{Code: "dated-ahead", Grade: finding.Doubt, Values: finding.Values("day", dayText(day))}}
}

// changes lists the changes of a circuit's oil after a day, the oldest first.
func (r *reckoner) changes(circuit string, after float64) []due.Mark {
	var list []due.Mark
	for _, p := range r.past {
		if day := p.Changed[circuit]; day > after {
			list = append(list, due.Mark{p.Read[due.Km].Count, p.Read[due.Hours].Count, day})
			// A job that was begun by a wrong clock may stand behind later ones.
			for n := len(list) - 1; n > 0 && list[n-1][due.Time] > day; n-- {
				list[n-1], list[n] = list[n], list[n-1]
			}
		}
	}
	return list
}

// oil says when a circuit's oil is due.
func (r *reckoner) oil(d *DueOil, c *card.Circuit) {
	d.Circuit, d.Role, d.Verdict = c.ID, "role."+string(c.Role), "due.no-record"
	interval, alone := r.plan.IntervalOf(c)
	for _, i := range [...]struct {
		name   string
		figure *card.Figure
	}{{"interval-distance", interval.Distance}, {"interval-time", interval.Time}, {"interval-hours", interval.Hours}} {
		if s := r.print.Card(i.name, i.figure, "interval"); s.Standing != card.Unknown {
			d.Intervals = append(d.Intervals, s)
		}
	}
	var last, at due.Mark
	span := job.SpanFrom(interval)
	if own := r.changes(c.ID, 0); len(own) > 0 {
		last = own[len(own)-1]
		at = r.nth(c, &span, last, alone)
		d.Verdict, d.Changed = "due.unknown", dayText(last[due.Time])
		if last[due.Km] > 0 {
			d.ChangedAt = r.print.Kilometres(last[due.Km], 7)
		}
	}
	r.first(c, &last, &at)
	now, back := r.now, false
	for n := range r.counters {
		now[n] = r.counters[n].read(last[due.Time]).Count
		if !r.counters[n].held(last[n], last[due.Time]) {
			at[n], back = 0, true
		}
	}
	if at[due.Km] > 0 {
		d.At = r.print.Kilometres(at[due.Km], 7)
		if left := at[due.Km] - now[due.Km]; left > 0 {
			d.Left = r.print.Kilometres(left, 7)
		}
	}
	if at[due.Hours] > 0 {
		d.Hours = hoursText(at[due.Hours])
	}
	if at[due.Time] > 0 {
		d.Day = dayText(at[due.Time])
	}
	if len(d.At) > 0 || d.Hours != "" || d.Day != "" {
		r.judge(d, &last, &at, &now)
		r.plot(d, &last, &at)
	}
	switch {
	case back:
		d.Why = "due.counter-back"
	case d.Why == "due.time-first" && span[due.Km] > 0 && len(d.At) == 0:
		d.Why = "due.no-odometer"
	}
}

// hoursText prints an hour meter's reading to its tenths, or what is less.
func hoursText(h float64) string {
	if h >= 0.1 {
		h = math.Round(h*10) / 10
	}
	return quantity.Number(h, 7) + " h"
}

// nth gives where an oil is due that isn't changed each time: the changes of the
// engine's oil since its own count, and those to come are an interval apart. One with an
// interval of its own counts alone.
func (r *reckoner) nth(c *card.Circuit, span *due.Span, from due.Mark, alone bool) due.Mark {
	left := max(c.EveryNth, 1)
	if alone {
		left = 1
	}
	if left > 1 {
		for _, change := range r.changes(r.engine, from[due.Time]) {
			if left--; left == 0 {
				return change
			}
			from = change
		}
	}
	return span.After(&from, float64(left))
}

// first puts the first service of a new machine, if that is still to come: that of the oil
// itself, where it has one.
func (r *reckoner) first(c *card.Circuit, last, at *due.Mark) {
	interval := r.card.Interval.First
	if c.Interval != nil && c.Interval.First != nil {
		interval = c.Interval.First
	}
	if interval == nil {
		return
	}
	entry := r.now
	for n := range r.counters {
		if list := r.counters[n].list; len(list) > 0 {
			entry[due.Time] = min(entry[due.Time], list[0].Day)
		}
	}
	reached := last
	if last[due.Time] == 0 {
		reached = &r.now
	}
	span := job.SpanFrom(*interval)
	if f, ok := span.FirstAt(&entry, reached); ok {
		at.First(&f)
	}
}
