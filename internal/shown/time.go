package shown

import (
	"math"

	"tidysump/internal/quantity"
)

// timeSteps are the units in which a span of time is told, in seconds, the longest
// first, and from how many of it on: "90 s" and "110 min" read better than "1.5 min"
// and "1.8 h" (common practice, no source).
var timeSteps = [...]struct {
	unit          string
	seconds, from float64
}{{" days", 86400, 2}, {" h", 3600, 2}, {" min", 60, 2}, {" s", 1, 0}}

// leastTime is the least that is told of any unit of time, and so 0.1 s the shortest
// span: nobody lets go or reads a watch faster.
const leastTime = 0.1

// Time gives an estimated span of time in seconds, from low to high, in one unit and
// with two digits at most: "90–150 min". The unit is that of the middle, by ratio.
func Time(low, high float64) string {
	middle := high
	if low > 0 {
		middle = math.Sqrt(max(low, high/100) * high)
	}
	n := 0
	for timeSteps[n].from*timeSteps[n].seconds > middle {
		n++
	}
	s := &timeSteps[n]
	low, high = low/s.seconds, high/s.seconds
	under := low > 0 && low < leastTime
	if under {
		low = leastTime
	}
	text := quantity.Number(max(high, low), 2)
	if lower := quantity.Number(low, 2); lower != text {
		text = lower + "–" + text
	} else {
		under = high < leastTime && under
	}
	if under {
		text = "<" + text
	}
	return text + s.unit
}
