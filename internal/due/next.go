// Package due says when an oil is due again, and how much of it an engine uses
// in the meantime.
//
// An oil is due by distance, by hours of running or by time, whichever comes
// first. When its distance will be ridden follows from what was ridden so far,
// with a spread: never as one day.
package due

import (
	"math"

	"tidysump/internal/date"
)

// What is counted: km, hours of running, and time.
const (
	Km = iota
	Hours
	Time
)

// Counters is how many of these are read on a counter: Km and Hours.
const Counters = 2

// Span is how long an oil may stay in: km, hours of running, months. What is zero
// isn't counted.
type Span [3]float64

// Mark is a moment in the life of a bike: its odometer in km, its counter of hours,
// and the day counted from 1970-01-01. What is zero is not known.
type Mark [3]float64

// After gives where an oil changed then is due again, after so many such spans.
func (s *Span) After(c *Mark, times float64) (p Mark) {
	for n, span := range s {
		switch {
		case span == 0 || c[n] == 0:
		case n == Time:
			p[n] = laterBy(c[n], span*times)
		default:
			p[n] = c[n] + span*times
		}
	}
	return p
}

// laterBy adds months by the calendar where they are whole ones.
func laterBy(day, months float64) float64 {
	if whole := math.Round(months); math.Abs(months-whole) < 1e-9 {
		return float64(date.AddMonths(int(day), int(whole)))
	}
	return math.Round(day + months*365.25/12)
}

// tooEarly is the share of the first-service interval up to which a change does
// not stand for the first service: common practice, no source.
const tooEarly = 0.5

// FirstAt gives where the first service of a new machine is due, from the first
// entry of its record; ok is false when the last change of oil was that service or
// came after it. The months count from the first entry, since nobody wrote down
// when the machine was new.
func (s *Span) FirstAt(entry, last *Mark) (p Mark, ok bool) {
	for n, span := range s[:Counters] {
		if span == 0 {
			continue
		}
		p[n], ok = span, ok || last[n] > 0
		if last[n] > span*tooEarly {
			return p, false
		}
	}
	if s[Time] > 0 {
		p[Time] = laterBy(entry[Time], s[Time])
	}
	return p, ok
}

// First takes over what comes first, of what is known.
func (p *Mark) First(q *Mark) {
	for n, at := range q {
		if p[n] == 0 || at > 0 && at < p[n] {
			p[n] = at
		}
	}
}

// Used gives which of the three has been used most of an interval, from the change
// to where the oil is due, and that share.
func Used(change, at, now *Mark) (most int, share float64) {
	for n := range at {
		if whole := at[n] - change[n]; at[n] > 0 && whole > 0 && (now[n]-change[n])/whole > share {
			most, share = n, (now[n]-change[n])/whole
		}
	}
	return most, share
}
