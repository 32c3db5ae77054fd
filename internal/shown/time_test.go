package shown

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// How spans of time are told. The first column is what they are, in seconds.
func TestTime(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      string
	}{
		{5400, 9000, "90–150 min"},
		{5400, 5400, "90 min"},
		{50, 120, "50–120 s"},
		{90, 90, "90 s"},
		{30, 30, "30 s"},
		{3601, 10000, "60–170 min"},
		{4 * 3600, 9.5 * 3600, "4–9.5 h"},
		{0, 300, "0–5 min"},
		{0, 0, "0 s"},
		{0.0021, 0.0021, "<0.1 s"},
		{0.0021, 3.14159, "<0.1–3.1 s"},
		{0.7, 0.7, "0.7 s"},
		{0.1, 3600, "<0.1–60 min"},
		{1234.5, 1234.5, "21 min"},
		{110 * 3600, 110 * 3600, "4.6 days"},
		{47 * 3600, 47 * 3600, "47 h"},
	} {
		if got := Time(c.low, c.high); got != c.want {
			t.Errorf("%g to %g s is told as %q, want %q", c.low, c.high, got, c.want)
		}
	}
}

// Whatever the times: one unit, two digits at most, the ends in order and right to
// what two digits can say, and nothing but nothing is 0.
func TestTime_TellsWhatItClaims(t *testing.T) {
	units := map[string]float64{"s": 1, "min": 60, "h": 3600, "days": 86400}
	rapid.Check(t, func(t *rapid.T) {
		low := math.Pow(10, rapid.Float64Range(-4, 8).Draw(t, "low"))
		high := low * math.Pow(10, rapid.Float64Range(0, 4).Draw(t, "by"))
		if rapid.IntRange(0, 5).Draw(t, "from nothing") == 0 {
			low = 0
		}
		text := Time(low, high)
		ends, unit, _ := strings.Cut(text, " ")
		scale, known := units[unit]
		if !known {
			t.Fatalf("%g to %g s is told as %q, in more than one unit", low, high, text)
		}
		parts := strings.Split(ends, "–")
		for n, part := range parts {
			want := []float64{low, high}[n]
			if len(parts) == 1 {
				want = high
			}
			bare, under := strings.CutPrefix(part, "<")
			got, err := strconv.ParseFloat(bare, 64)
			digits := len(strings.Trim(strings.Replace(bare, ".", "", 1), "0"))
			switch {
			case err != nil || digits > 2:
				t.Fatalf("%g to %g s is told as %q, an estimate of more than two digits", low, high, text)
			case under && want >= got*scale:
				t.Fatalf("%g to %g s is told as %q", low, high, text)
			case got == 0 && want != 0:
				t.Fatalf("%g to %g s is told as %q, and is not nothing", low, high, text)
			case !under && math.Abs(got*scale-want) > 0.0501*want:
				t.Fatalf("%g to %g s is told as %q", low, high, text)
			}
		}
		if len(parts) == 1 && high > 1.11*low && high/scale > 1.1*leastTime {
			t.Fatalf("%g to %g s is told as %q, one figure", low, high, text)
		}
	})
}
