package calc

import (
	"strconv"
	"strings"

	"tidysump/internal/drain"
	"tidysump/internal/fault"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// What a leak is measured by.
const (
	byDrops = "drops"
	byTrail = "trail"
	byCap   = "cap"
	aStream = "stream"
)

// leakStops are the questions of the problems' table that come before any distance,
// and what is said where they stop.
var leakStops = [...]struct{ question, says string }{
	{"tyre", "leak-says.tyre"}, {"lamp", "leak-says.lamp"}, {"side", "leak-says.side"},
}

// leakFields: taps are the times in s at which drops were tapped, blanks between;
// every is the time from one drop to the next; share is how high the oil stands between its marks, band what lies between them, oil
// all that is in it at the upper one; hour is what is ridden in an hour.
var leakFields = [...]field{
	{name: "tyre", kind: Choice, words: []string{"no", "yes", fault.Other}, family: "leak-tyre.", needed: true},
	{name: "lamp", kind: Choice, words: []string{"out", "flickers", "on", fault.Other}, family: "leak-lamp.", needed: true},
	{name: "side", kind: Choice, words: []string{"pan", "pressed", fault.Other}, family: "leak-side.", needed: true},
	{name: "way", kind: Choice, words: []string{byDrops, byTrail, byCap, aStream}, family: "leak-way.", needed: true},
	{name: "taps", kind: Taps, front: true, letters: mostTapped, on: "way", when: []string{byDrops}},
	{name: "drops", kind: Number, low: 2, high: 1e5, front: true, on: "way", when: []string{byDrops, byTrail}},
	{name: "caught", kind: quantity.Volume, low: 2e-4, high: 5, front: true, on: "way", when: []string{byCap}},
	{name: "time", kind: quantity.Duration, low: 0.05, high: 7 * 24 * 60, front: true, on: "way", when: []string{byDrops, byCap}},
	{name: "every", kind: quantity.Duration, low: leastEvery, high: 24 * 60, ranged: true, on: "way", when: []string{byDrops}},
	{name: "stretch", kind: quantity.Length, low: 500, high: 1e7, front: true, on: "way", when: []string{byTrail}},
	{name: "engine", kind: Choice, words: []string{engineRuns, "off"}, family: "leak-engine.", front: true, on: "way", when: []string{byDrops, byCap}},
	{name: "share", kind: quantity.Share, low: -0.5, high: 1.5, front: true},
	{name: "band", kind: quantity.Volume, low: 0.02, high: 5, front: true},
	{name: "oil", kind: quantity.Volume, low: 0.1, high: 25, front: true},
	{name: "hour", kind: quantity.Distance, low: 1, high: 300},
	{name: "edge", kind: quantity.Length, low: 1e3 * drain.NarrowEdge, high: 1e3 * drain.WideEdge},
}

const engineRuns = "running"

// leastEvery is the shortest time in min from one drop to the next that is taken; below
// it nobody tells them apart (common practice, no source).
const leastEvery = 0.2 / 60

// mostTapped are the letters of all taps that are taken.
const mostTapped = 1500

// What a reading may be off: the share of a level, and of what was caught; and what is
// ridden gently in an hour, in km, where nobody says. Common practice, no source.
const shareTo, caughtTo, gentleHour = 0.1, 0.2, 50

// Beyond so many hours and km nothing is told of a leak: other things will be.
const mostHours, mostFar = 1000, 5000

// leak says how long the oil lasts with a leak, and how far. What keeps the bike where
// it is comes first: then no distance is said.
func leak(f *Form, a *Answer) {
	way, verdict := f.of("way").text, f.leakSays()
	if way == aStream {
		a.word("verdict", verdict)
		return
	}
	hour := 0.0 // km: no distance is said
	if way == byTrail {
		hour = f.anHour(a)
	}
	low, high := f.loss(a, way, hour)
	if f.refused() {
		return
	}
	if verdict == leakLasts && quantity.AtLeast(high, streamHour) {
		verdict = leakStream
	}
	a.word("verdict", verdict)
	runs := way == byTrail || f.of("engine").text == engineRuns
	if !runs {
		f.say(finding.Doubt, "leak-standing", "engine")
	}
	switch {
	case !runs || verdict != leakLasts:
		hour = 0
	case way != byTrail:
		hour = f.anHour(a)
	}
	if high < 1e-3 {
		a.estimate("figures", "leak-hour", "leak-rate", plain(low*1e3, high*1e3, " mL", 2))
	} else {
		a.amount("figures", "leak-hour", "leak-rate", low, high, "mL", 2)
	}
	f.lasts(a, low, high, hour)
}

// anHour is what is ridden in an hour, in km.
func (f *Form) anHour(a *Answer) float64 {
	return f.orAssume(a, "hour", "hour", "practice", gentleHour, "km", 2)
}

// leakLasts is said where nothing keeps the bike where it is, leakStream of what runs.
const leakLasts, leakStream = "leak-says.lasts", "leak-says.stream"

// From so many L in an hour on it is a stream, however it was measured: some ten drops a
// second, which nobody counts, and half of a usual band between the marks in a quarter
// of an hour. Common practice, no source.
const streamHour = 1

// leakSays is what is said first: what keeps the bike where it is, the worst of it;
// what nobody looked at does too.
func (f *Form) leakSays() string {
	verdict := leakLasts
	if f.of("way").text == aStream {
		verdict = leakStream
	}
	if f.has("share") && fault.LeakStops("level", levelWord(f.number("share")-shareTo)) {
		verdict = "leak-says.level"
	}
	for _, s := range leakStops {
		if said := f.of(s.question).text; fault.LeakStops(s.question, said) {
			if said != fault.Other {
				return s.says
			}
			verdict = "leak-says.unseen"
		}
	}
	return verdict
}

// levelWord is the answer of the problems' table that the least share of the level
// stands for that it may have been.
func levelWord(share float64) string {
	if share > 0 {
		return "right"
	}
	return "low"
}

// loss gives the least and the most that is lost in an hour, in L. hour is what is
// ridden in one, in km.
func (f *Form) loss(a *Answer, way string, hour float64) (low, high float64) {
	switch way {
	case byCap:
		f.need("caught")
		f.need("time")
		f.need("engine")
		if f.refused() {
			return 0, 0
		}
		loss := f.number("caught") / f.number("time") * 60
		return loss * (1 - caughtTo), loss * (1 + caughtTo)
	case byTrail:
		f.need("drops")
		f.need("stretch")
	default:
		f.need("engine")
		if !f.has("taps") && !f.has("every") {
			f.need("drops")
			f.need("time")
		}
	}
	if f.refused() {
		return 0, 0
	}
	least, most, list := drain.UsualEdge, drain.WideEdge, "assumed"
	if f.has("edge") {
		least, list = f.number("edge")/1e3, "figures"
		most = least
	}
	least, most = drain.Drop(least, most)
	a.estimate(list, "drop-size", "harkins-brown", plain(least*1e6, most*1e6, " mL", 2))
	d := f.drips(a, way, hour)
	const inHour = 3600 * 1e3 // of m³ in a second: L in an hour
	return least * d.Low * inHour, most * d.High * inHour
}

// drips gives how fast the drops fall.
func (f *Form) drips(a *Answer, way string, hour float64) (d drain.Drips) {
	switch {
	case way == byTrail:
		d = drain.Counted(f.number("drops"), f.number("stretch")/1e6/hour*3600)
	case f.has("taps"):
		times := f.taps()
		var ok bool
		if d, ok = drain.Tapped(times); !ok {
			f.reject("taps-few", "taps", "fewest", strconv.Itoa(drain.FewestTaps))
			return d
		}
		if d.Uneven {
			f.say(finding.Doubt, "taps-uneven", "taps")
		}
		a.estimate("figures", "tapped", "tapping", strconv.Itoa(len(times)))
	case f.has("every"):
		g := f.of("every")
		d = drain.Timed(g.number*60, max(g.number, g.upper)*60, g.half*60)
	default:
		d = drain.Counted(f.number("drops"), f.number("time")*60)
	}
	a.estimate("figures", "drop-every", "drop-count", timeRange(1/d.High, 1/d.Low))
	return d
}

// taps reads the times of the taps.
func (f *Form) taps() (times []float64) {
	const longest = 1e6 // s
	for text := range strings.FieldsSeq(quantity.Typed(f.of("taps").text)) {
		at, err := strconv.ParseFloat(text, 64)
		if err != nil || !(at >= 0 && at < longest) {
			return nil
		}
		times = append(times, at)
	}
	return times
}

// lasts adds how long the oil lasts to the lower mark and to nothing at a loss of low
// to high L in an hour, and how far at so many km in one; 0 says no distance.
func (f *Form) lasts(a *Answer, low, high, hour float64) {
	share, band, oil := f.number("share"), f.number("band"), f.number("oil")
	last := func(until, far string, least, most float64) {
		from, to := least/high, most/low
		s := a.estimate("figures", until, "leak-rate", timeRange(3600*from, 3600*to))
		if to > mostHours {
			orMore(s, timeText(3600*min(from, mostHours)))
		}
		if hour == 0 {
			return
		}
		from, to = hour*from, hour*to
		s = a.amount("figures", far, "leak-rate", from, to, "km", 2)
		if from = min(from, mostFar); to > mostFar {
			orMore(s, a.between(from, from, "km", 2)[0])
		}
	}
	known := f.has("share") && f.has("band")
	off := shareTo * band
	if !known {
		a.unknown("figures", "until-low")
	} else if over := share * band; over > off { // else the lower mark is near, and that is said
		last("until-low", "far-low", over-off, over+off)
	}
	if in := oil - (1-share)*band; known && f.has("oil") && in > off {
		last("until-dry", "far-dry", in-off, in+off)
	} else {
		a.unknown("figures", "until-dry")
	}
}

// orMore says the least alone, where the most is beyond what is told.
func orMore(s *shown.Figure, least string) {
	s.Texts, s.Values = []string{"@wait.or-more"}, finding.Values("least", least)
}
