package due

import (
	"math"
	"slices"
)

// Reading is what a counter showed on a day: an odometer in km, or hours.
type Reading struct {
	Day, Count float64
	At         string // time, which puts those of one day in order; may be empty
}

// Pace is how much is ridden in a day, in km or hours: the likeliest, and the
// spread about it.
type Pace struct{ Low, Middle, High float64 }

// Ninety is the normal deviate for a spread that holds in 9 of 10 cases.
const Ninety = 1.645

// Slope gives the median of the slopes between each two readings, and the spread
// of it for the normal deviate z: P. K. Sen, Estimates of the regression
// coefficient based on Kendall's tau, J. Am. Stat. Assoc. 63 (1968) 1379-1389,
// after H. Theil (1950). One wrong reading among several moves it little. Ties are
// not allowed for; with fewer than five readings the spread is all of the slopes.
// ok is false when no two readings are of different days.
func Slope(list []Reading, z float64) (p Pace, ok bool) {
	var slopes []float64
	for i := range list {
		for _, b := range list[i+1:] {
			if days := b.Day - list[i].Day; days != 0 {
				slopes = append(slopes, (b.Count-list[i].Count)/days)
			}
		}
	}
	if len(slopes) == 0 {
		return p, false
	}
	slices.Sort(slopes)
	n, pairs, last := float64(len(list)), float64(len(slopes)), len(slopes)-1
	half := z * math.Sqrt(n*(n-1)*(2*n+5)/18)
	low := max(int(math.RoundToEven((pairs-half)/2))-1, 0)
	high := min(int(math.RoundToEven((pairs+half)/2)), last)
	return Pace{slopes[low], (slopes[last/2] + slopes[(last+1)/2]) / 2, slopes[high]}, true
}

// Common practice, no source: what readings must span before they say how much
// is ridden, and how far at least a season may differ from the others, where the
// readings span a year and where they don't.
const (
	LeastDays  = 30
	MostRecent = 40 // readings; older ones are of other years
	wholeYear  = 365
	yearSpread = 0.2
	partSpread = 0.5
)

// PaceOf gives how much is ridden in a day, from readings in the order of time; ok is
// false with fewer than two readings, over fewer days than LeastDays, and when the
// counter went backwards.
func PaceOf(list []Reading) (p Pace, ok bool) {
	if len(list) > MostRecent {
		list = list[len(list)-MostRecent:]
	}
	if len(list) < 2 {
		return p, false
	}
	days := list[len(list)-1].Day - list[0].Day
	p, ok = Slope(list, Ninety)
	if !ok || days < LeastDays || p.Middle <= 0 {
		return Pace{}, false
	}
	spread := partSpread
	if days >= wholeYear {
		spread = yearSpread
	}
	p.Low = max(min(p.Low, p.Middle*(1-spread)), 0)
	p.High = max(p.High, p.Middle*(1+spread))
	return p, true
}

// When gives the days, counted from 1970-01-01, between which a counter reaches a count, and the likeliest.
// The last may be infinite. What the counter has passed was reached on the day of
// the last reading at the latest.
func (p Pace) When(last Reading, count float64) (early, middle, late float64) {
	left := max(count-last.Count, 0)
	if left == 0 {
		return last.Day, last.Day, last.Day
	}
	return last.Day + left/p.High, last.Day + left/p.Middle, last.Day + left/p.Low
}
