package drain_test

import (
	"math"
	"testing"

	"tidysump/internal/drain"
)

// Common practice, no source: 65 to 82 °C, which is 150 to 180 °F, for five to
// ten minutes.
func TestWarm(t *testing.T) {
	for _, f := range []struct{ celsius, fahrenheit float64 }{{drain.WarmLow, 150}, {drain.WarmHigh, 180}} {
		if got := f.celsius*1.8 + 32; math.Abs(got-f.fahrenheit) > 1 {
			t.Errorf("%g °C is %g °F, want %g", f.celsius, got, f.fahrenheit)
		}
	}
	if drain.RunOutLow != 5 || drain.RunOutHigh != 10 {
		t.Errorf("run-out %d to %d min, want 5 to 10", drain.RunOutLow, drain.RunOutHigh)
	}
}
