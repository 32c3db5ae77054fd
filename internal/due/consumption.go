package due

import "math"

// Use is how much oil an engine uses, in a word.
type Use string

// The uses, by litres per 1,000 km: up to 0.1, 0.3, 0.5 and more. Common
// practice, no source for motorcycles; published limits for cars lie between 0.29
// and 1.0. What became more is no use: fuel or water came in, over whatever distance.
const (
	Gained Use = "gained" // by more than measuring explains
	Risen  Use = "risen"  // by less
	Little Use = "little"
	Usual  Use = "usual"
	High   Use = "high"
	Undue  Use = "undue"
)

// ShortestSpan is the least distance in km over which a use says anything:
// common practice, no source.
const ShortestSpan = 500

// Lost gives the litres that went between two fills of oil, from what stood
// between the marks: the shares of the band after the fill and before the next,
// and its volume.
func Lost(left, found, band float64) float64 { return (left - found) * band }

// Consumption gives the litres per 1,000 km from the litres that were lost
// within a distance in km; ok is false over less than ShortestSpan.
func Consumption(lost, distance float64) (perThousand float64, ok bool) {
	if distance < ShortestSpan {
		return 0, false
	}
	// Rounded, so that 0.6 L in 6,000 km is 0.1 and not a hair more.
	return math.Round(lost/distance*1e9) / 1e6, true
}

// Rise gives the word for litres that came in, when measuring shows no less than
// shown; ok is false where nothing did, to the mL.
func Rise(litres, shown float64) (u Use, ok bool) {
	if litres < shown {
		return Risen, litres > 0.0005
	}
	return Gained, true
}

// Judge gives the word for litres per 1,000 km that are gone.
func Judge(perThousand float64) Use {
	switch {
	case perThousand <= 0.1:
		return Little
	case perThousand <= 0.3:
		return Usual
	case perThousand <= 0.5:
		return High
	}
	return Undue
}

// Trend is how a use compares with the one before.
type Trend string

// The trends.
const (
	Steady  Trend = "steady"
	More    Trend = "more"
	Less    Trend = "less"
	Doubled Trend = "doubled"
)

// noise is the difference in L per 1,000 km that measuring explains: a tenth of a
// litre over 2,000 km. Common practice, no source.
const noise = 0.05

// Compare says how a use is against the one before, in L per 1,000 km. Doubling is
// worth a look whatever the use: common practice, no source.
func Compare(before, now float64) Trend {
	switch {
	case now-before > noise && now >= 2*before:
		return Doubled
	case now-before > noise:
		return More
	case before-now > noise:
		return Less
	}
	return Steady
}
