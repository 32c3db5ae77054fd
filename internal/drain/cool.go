package drain

import (
	"math"

	"tidysump/internal/quantity"
)

// CoolingRate gives k in 1/min of Newton's law of cooling,
// T = air + (T0 − air)·e^(−k·t), from two readings so many minutes apart. It
// reports false unless the second is below the first, above the air, and later.
func CoolingRate(first, second, air, minutes float64) (k float64, ok bool) {
	if !(second < first && second > air && minutes > 0) {
		return math.NaN(), false
	}
	return math.Log((first-air)/(second-air)) / minutes, true
}

// CoolingTime gives the minutes to cool from one temperature down to another, both
// in °C; k is that of CoolingRate. It reports false for a target that is above the
// one it has, or not above the air: that is never reached by cooling.
func CoolingTime(from, target, air, k float64) (minutes float64, ok bool) {
	if !(target > air && quantity.AtLeast(from, target) && k > 0) {
		return math.NaN(), false
	}
	return math.Log((from-air)/(target-air)) / k, true
}

// Cooled gives the temperature in °C after so many minutes; k is that of
// CoolingRate.
func Cooled(from, air, k, minutes float64) float64 { return air + (from-air)*math.Exp(-k*minutes) }

// ReadTo is how far, in K, a temperature that was read may be off: a kitchen or
// workshop thermometer (common practice, no source).
const ReadTo = 1

// Readings are two of a thermometer in the oil, in °C and so many minutes apart,
// with the temperature of the air. Each may be off by ReadTo, that of the air by
// AirTo.
type Readings struct{ First, Second, Air, AirTo, Minutes float64 }

// Course is where the oil stands and goes, seen from the temperature that is waited
// for.
type Course string

// The courses.
const (
	Cooling      Course = "cooling"       // above it, and falling
	Warming      Course = "warming"       // below it, and rising
	There        Course = "already"       // it has it
	AboveRising  Course = "above-rising"  // past it on the way up
	BelowFalling Course = "below-falling" // past it on the way down
	AirTooWarm   Course = "air-too-warm"  // it would have to become colder than the air
	RoomTooCold  Course = "room-too-cold" // the air warms it, and isn't that warm
	Unmoved      Course = "unmoved"       // elsewhere, and two equal readings say nothing
)

// Courses lists those that say something.
var Courses = []Course{Cooling, Warming, There, AboveRising, BelowFalling, AirTooWarm, RoomTooCold}

// Toward says where the oil stands to what is wanted, from low to high in °C. It has
// a single temperature as far as it was read, unless Judge says something else of
// the two.
func (r *Readings) Toward(low, high float64) Course {
	to := 0.0
	if low == high && Judge(low) == Judge(r.Second) {
		to = ReadTo
	}
	above, below := !quantity.AtMost(r.Second, high+to), !quantity.AtLeast(r.Second, low-to)
	switch rise := r.Second - r.First; {
	case rise < 0 && r.Second > high && !quantity.Near(r.Second, high):
		if high <= r.Air-r.AirTo {
			return AirTooWarm
		}
		return Cooling
	case rise > 0 && r.Second < low && !quantity.Near(r.Second, low):
		if r.Second < r.Air-r.AirTo-ReadTo && low > r.Air+r.AirTo {
			return RoomTooCold
		}
		return Warming
	case !above && !below:
		return There
	case rise == 0:
		return Unmoved
	case above:
		return AboveRising
	}
	return BelowFalling
}

// Wait gives the least and the most minutes, from the second reading, until the oil
// has a temperature in °C that it goes toward, by what the readings may be off; high
// is infinite where they can't tell that it gets there at all. It cools by Newton's
// law. How warming goes on is not known: a straight line is the least it takes.
func (r *Readings) Wait(target float64) (low, high float64) {
	quick := float64(ReadTo)
	if r.Second > r.First {
		quick = -ReadTo
	}
	low, high = math.Inf(1), 0
	for _, air := range [...]float64{r.Air - r.AirTo, r.Air + r.AirTo} {
		low = min(low, r.off(quick).wait(target, air, quick < 0))
		high = max(high, r.off(-quick).wait(target, air, quick < 0))
	}
	return low, high
}

// off gives the readings if the first is too low by so many K, and the second too
// high.
func (r *Readings) off(by float64) *Readings {
	return &Readings{First: r.First + by, Second: r.Second - by, Minutes: r.Minutes}
}

// wait gives the minutes until the readings' oil has the temperature, 0 where it is
// past it; infinite where it never has.
func (r *Readings) wait(target, air float64, warming bool) float64 {
	slope := (r.Second - r.First) / r.Minutes
	switch {
	case warming && r.Second >= target || !warming && r.Second <= target:
		return 0
	case warming && slope > 0:
		return (target - r.Second) / slope
	case warming:
		return math.Inf(1)
	}
	k, _ := CoolingRate(r.First, r.Second, air, r.Minutes)
	if minutes, ok := CoolingTime(r.Second, target, air, k); ok {
		return minutes
	}
	return math.Inf(1)
}

// At gives the lowest and the highest temperature in °C that the oil may have so
// many minutes after the second reading.
func (r *Readings) At(minutes float64) (low, high float64) {
	return r.off(ReadTo).at(r.Air-r.AirTo, minutes, r.Second < r.First), r.off(-ReadTo).at(r.Air+r.AirTo, minutes, r.Second < r.First)
}

func (r *Readings) at(air, minutes float64, cooling bool) float64 {
	slope := (r.Second - r.First) / r.Minutes
	if !cooling {
		return r.Second + max(slope, 0)*minutes
	}
	if k, ok := CoolingRate(r.First, r.Second, air, r.Minutes); ok {
		return Cooled(r.Second, air, k, minutes)
	}
	return r.Second
}
