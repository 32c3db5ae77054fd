package drain

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Where oil stands and goes: what its sign says is never hidden.
func TestReadings_Toward(t *testing.T) {
	for _, row := range []struct {
		first, second, air, low, high float64
		want                          Course
	}{
		{60, 70, 20, 50, 50, AboveRising}, {65, 70, 20, 50, 60, AboveRising}, {75, 61, 20, 62, 62, There},
		{40, 30, 20, 50, 50, BelowFalling}, {95, 80, 20, 90, 90, BelowFalling}, {60, 45, 20, 50, 60, BelowFalling},
		{95, 80, 20, 60, 60, Cooling}, {20, 35, 18, 60, 60, Warming}, {70, 57, 20, 50, 60, There}, {40, 55, 20, 50, 60, There},
		{60, 55, 30, 25, 25, AirTooWarm}, {60, 55, 18, 18, 18, Cooling}, // the air may be at 17
		{5, 8, 15, 50, 50, RoomTooCold}, {5, 8, 15, 12, 12, Warming}, {20, 30, 15, 50, 60, Warming},
		{70, 60.5, 20, 60, 60, Cooling}, {50, 60.5, 20, 60, 60, AboveRising}, // too hot, however near
		{45, 49.5, 20, 50, 50, Warming}, {55, 49.5, 20, 50, 50, BelowFalling}, // too cold, however near
		{50, 49, 20, 49.5, 49.5, There},
		{60, 60, 20, 50, 60, There}, {70, 70, 20, 50, 60, Unmoved}, {55, 55, 20, 56, 56, There},
	} {
		r := &Readings{row.first, row.second, row.air, ReadTo, 10}
		if got := r.Toward(row.low, row.high); got != row.want {
			t.Errorf("%v → %v °C in air of %v, %v to %v wanted: %s, want %s", row.first, row.second, row.air, row.low, row.high, got, row.want)
		}
	}
}

// The course is never milder than the readings: what is said to be there is, as far
// as it was read; what is waited for lies ahead; and what is too hot by Judge is
// never said to be there where less is wanted.
func TestReadings_TowardTellsTheSign(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := func(low, high int, name string) float64 {
			return float64(rapid.IntRange(2*low, 2*high).Draw(t, name)) / 2
		}
		r := &Readings{half(-40, 150, "first"), half(-40, 150, "second"), half(-40, 60, "air"), ReadTo, 10}
		low := half(-40, 150, "low")
		high := low + half(0, 10, "wider")
		rises := r.Second > r.First
		switch got := r.Toward(low, high); got {
		case There:
			if r.Second < low-ReadTo || r.Second > high+ReadTo || low == high && Judge(r.Second) != Judge(low) {
				t.Fatalf("%v is said to be %v to %v", r.Second, low, high)
			}
		case Cooling, AirTooWarm, BelowFalling:
			if rises || got != BelowFalling && r.Second <= high || got == BelowFalling && r.Second >= low || got == AirTooWarm && high > r.Air {
				t.Fatalf("%+v, %v to %v wanted: %s", r, low, high, got)
			}
		case Warming, RoomTooCold, AboveRising:
			if !rises || got != AboveRising && r.Second >= low || got == AboveRising && r.Second <= high || got == RoomTooCold && low < r.Air {
				t.Fatalf("%+v, %v to %v wanted: %s", r, low, high, got)
			}
		case Unmoved:
			if r.First != r.Second || r.Second >= low && r.Second <= high {
				t.Fatalf("%+v, %v to %v wanted: %s", r, low, high, got)
			}
		default:
			t.Fatalf("a course of its own: %s", got)
		}
	})
}

// Whatever the thermometer was off, within what it may be, the wait lies in the range
// that was told.
func TestReadings_WaitHoldsWhatMayBe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := &Readings{
			rapid.Float64Range(-20, 120).Draw(t, "first"), rapid.Float64Range(-20, 120).Draw(t, "second"),
			rapid.Float64Range(-20, 40).Draw(t, "air"), ReadTo, rapid.Float64Range(0.5, 120).Draw(t, "minutes"),
		}
		target := rapid.Float64Range(-20, 120).Draw(t, "target")
		course := r.Toward(target, target)
		if course != Cooling && course != Warming {
			return
		}
		low, high := r.Wait(target)
		if !(low >= 0 && low <= high) {
			t.Fatalf("%+v to %v: %v to %v min", r, target, low, high)
		}
		off := func(name string) float64 { return rapid.Float64Range(-ReadTo, ReadTo).Draw(t, name) }
		real := &Readings{First: r.First + off("of first"), Second: r.Second + off("of second"), Minutes: r.Minutes}
		got := real.wait(target, r.Air+off("of air"), course == Warming)
		if got < low*(1-1e-9)-1e-9 || got > high*(1+1e-9)+1e-9 {
			t.Fatalf("%+v to %v: %v to %v min, and %v if it was %+v", r, target, low, high, got, real)
		}
		at := rapid.Float64Range(0, 600).Draw(t, "at")
		if least, most := r.At(at); least > most {
			t.Fatalf("%+v after %v min: %v to %v °C", r, at, least, most)
		}
	})
}

// 95 to 80 °C in ten minutes in air of 18 °C, 57 wanted: 21.4 min by Newton's law
// ; a degree more or less on each makes 18.1 to 25.7 (worked out apart). 60 and 58 °C
// can't tell that it cools at all.
func TestReadings_Wait(t *testing.T) {
	low, high := (&Readings{95, 80, 18, ReadTo, 10}).Wait(57)
	near(t, "least", low, 18.09, 0.005)
	near(t, "most", high, 25.72, 0.005)
	if low, high := (&Readings{60, 58, 18, ReadTo, 3}).Wait(50); low < 3 || !math.IsInf(high, 1) {
		t.Errorf("60 and 58 °C: %v to %v min", low, high)
	}
	low, high = (&Readings{20, 35, 18, ReadTo, 3}).Wait(60)
	near(t, "warming, least", low, 24.0/17*3, 1e-9)
	near(t, "warming, most", high, 26.0/13*3, 1e-9)
}
