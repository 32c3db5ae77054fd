package drain

import "math"

// Oil as a drop hangs by it, from hot to cold: its surface tension in N/m, mineral and
// synthetic (30 to 35 mN/m are printed for oils when cold, 29 to 31 for base oils;
// that it falls by some mN/m when hot is from memory), and its density in kg/m³.
const (
	leastTension, mostTension = 0.025, 0.033
	leastDensity, mostDensity = 800, 890
)

// The width in m of the edge that a drop hangs from: what the correction covers for
// any oil, and what is taken where nobody measured it, from the end of a thread to
// the underside of a plug (an assumption, no source).
const (
	NarrowEdge, WideEdge = 1.5e-3, 9e-3
	UsualEdge            = 3e-3
)

// The correction of Harkins and Brown covers these radii, over the cube root of the
// drop's volume.
const leastRatio, mostRatio = 0.3, 1.2

// dripFactor is F of weight = radius·tension/F, for a radius over the cube root of the
// drop's volume from leastRatio to mostRatio: Tate's law (1864), which has 1/2π, as
// Harkins and Brown (1919) corrected it for what stays hanging, in the form of
// Heertjes, de Smet and Witvoet (1971), as lecture notes quote it.
func dripFactor(ratio float64) float64 { return 0.14782 + 0.27896*ratio - 0.1662*ratio*ratio }

// dropVolume gives the volume in m³ of a drop that falls slowly from a round edge of
// the radius in m, at a surface tension in N/m and a density in kg/m³. It reports
// false where the correction doesn't reach.
func dropVolume(radius, tension, density float64) (volume float64, ok bool) {
	want := radius * radius * density * gravity / tension
	low, high := leastRatio, mostRatio
	bond := func(ratio float64) float64 { return ratio * ratio * ratio / dripFactor(ratio) }
	if !(want >= bond(low) && want <= bond(high)) {
		return math.NaN(), false
	}
	for range 50 {
		if middle := (low + high) / 2; bond(middle) < want {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Pow(radius/high, 3), true
}

// Drop gives the least and the most that a drop of oil has in m³, from an edge as wide
// as given, in m, from NarrowEdge to WideEdge.
func Drop(narrow, wide float64) (low, high float64) {
	low, _ = dropVolume(narrow/2, leastTension, mostDensity)
	high, _ = dropVolume(wide/2, mostTension, leastDensity)
	return low, high
}

// Drips is how fast drops fall, from the slowest to the fastest that was counted, in
// 1/s. Uneven says that some were missed, or that they don't come evenly.
type Drips struct {
	Low, High float64
	Uneven    bool
}

// FewestTaps are the fewest from which an interval and its spread follow.
const FewestTaps = 4

// tapTo is how far a tap may be from its drop, in s: how fast a hand is, from memory.
const tapTo = 0.2

// Tapped gives how fast drops fall from the times in s at which each was tapped: the
// mean interval, give or take twice its spread over the root of their number, and a
// late hand. It reports false unless there are FewestTaps that follow one another.
func Tapped(times []float64) (d Drips, ok bool) {
	if len(times) < FewestTaps {
		return d, false
	}
	n := float64(len(times) - 1)
	mean := (times[len(times)-1] - times[0]) / n
	var square float64
	for i := range times[1:] {
		gap := times[i+1] - times[i]
		if !(gap > 0) {
			return d, false
		}
		square += (gap - mean) * (gap - mean)
	}
	spread := math.Sqrt(square / (n - 1))
	off := 2*spread/math.Sqrt(n) + 2*tapTo/n
	return Drips{Low: 1 / (mean + off), High: 1 / max(mean-off, mean/2), Uneven: spread > mean/2}, true
}

// Counted gives how fast drops fall, when so many did in so many seconds: one more or
// less may have been on its way at either end.
func Counted(drops, seconds float64) Drips {
	return Drips{Low: (drops - 1) / seconds, High: (drops + 1) / seconds}
}

// Timed gives how fast drops fall when from one to the next it takes from so many
// seconds to so many, each give or take what rounding may have moved it, or a hand.
func Timed(least, most, half float64) Drips {
	off := max(half, tapTo)
	return Drips{Low: 1 / (most + off), High: 1 / max(least-off, least/2)}
}
