package drain

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/oil"
)

// TestWarmthGain: the film of the typical oil against that at 20 °C; 50 °C
// brings about 70 % of what 82 °C brings (worked out apart).
func TestWarmthGain(t *testing.T) {
	line, _ := oil.LineThrough(40, TypicalAt40, 100, TypicalAt100)
	film := func(c float64) float64 { return FilmDepth(line.At(c), 0.25, 600) }
	for _, row := range [][2]float64{{40, 0.61}, {50, 0.49}, {65, 0.38}, {82, 0.29}} {
		near(t, "film against 20 °C", film(row[0])/film(20), row[1], 0.005)
	}
	for _, row := range [][2]float64{{WarmLow, 0.72}, {WarmHigh, 0.83}} {
		near(t, "gain against the habit's", (film(20)-film(row[0]))/(film(20)-film(HabitHigh)), row[1], 0.01)
	}
}

// TestCooling: published examples of Newton's law, temperatures in °F unless
// said; the page's rounded figures.
func TestCooling(t *testing.T) {
	for _, row := range []struct {
		first, second, air, minutes, k, within, target, time, timeWithin float64
	}{
		{300, 200, 60, 10, 0.0539, 5e-5, 75, 51.44, 0.005},
		{375, 215, 72, 15, 0.05006, 5e-6, 120, 36.8, 0.05},
		{207, 138, 69, 20, 0.03465, 1e-5, 110.03, 35, 0.005},
		{300, 200, 70, 3, 0.19018, 5e-6, 70.5, 32.24, 0.005},
		{95, 61, 20, 30, 0.02, 2e-4, 61, 30, 1e-9},           // °C; the page rounds k to 0.02
		{75, 60, 38, 30, math.NaN(), 0, 55, 44.88, 0.005},    // worked out apart from the page's formula
		{210, 140, 70, 30, math.NaN(), 0, 100, 66.67, 0.005}, // worked out apart
		{300, 200, 30, 3, 0.154208, 5e-7, 40, 21.37, 0.005},  // worked out apart
	} {
		k, ok := CoolingRate(row.first, row.second, row.air, row.minutes)
		if !ok {
			t.Fatalf("%v: no rate", row)
		}
		if !math.IsNaN(row.k) {
			near(t, "k", k, row.k, row.within)
		}
		time, ok := CoolingTime(row.first, row.target, row.air, k)
		if !ok {
			t.Fatalf("%v: no time", row)
		}
		near(t, "time", time, row.time, row.timeWithin)
	}
	k, _ := CoolingRate(207, 138, 69, 20)
	near(t, "temperature after 35 min", Cooled(207, 69, k, 35), 110.03, 0.005)
}

// TestCoolingMisprints: one page says that a cake at 300 °F in a room of 70 is
// at room temperature after 30 minutes; it never is. Another prints
// 38 + 75·(22/75)^(t/30), and says that it is wrong: it gives 36.3 min.
func TestCoolingMisprints(t *testing.T) {
	k, _ := CoolingRate(300, 200, 70, 3)
	near(t, "after 30 min", Cooled(300, 70, k, 30), 70.77, 0.005)
	if _, ok := CoolingTime(300, 70, 70, k); ok {
		t.Error("the air's own temperature is said to be reached")
	}
	k, _ = CoolingRate(75, 60, 38, 30)
	if time, _ := CoolingTime(75, 55, 38, k); math.Abs(time-36.3) < 5 {
		t.Errorf("the wrong form's %v", time)
	}
}

func TestCoolingRefusals(t *testing.T) {
	for _, bad := range [][4]float64{{80, 80, 20, 10}, {80, 90, 20, 10}, {80, 20, 20, 10}, {80, 60, 70, 10}, {80, 60, 20, 0}} {
		if k, ok := CoolingRate(bad[0], bad[1], bad[2], bad[3]); ok || !math.IsNaN(k) {
			t.Errorf("CoolingRate%v = %v, %v", bad, k, ok)
		}
	}
}

func TestCoolingIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		air := rapid.Float64Range(-30, 45).Draw(t, "air")
		second := air + rapid.Float64Range(0.5, 80).Draw(t, "above air")
		first := second + rapid.Float64Range(0.1, 60).Draw(t, "fallen")
		k, ok := CoolingRate(first, second, air, rapid.Float64Range(0.1, 600).Draw(t, "minutes"))
		if !ok {
			t.Fatal("no rate")
		}
		at := rapid.Float64Range(0, 600).Draw(t, "at")
		later := at + rapid.Float64Range(0, 600).Draw(t, "more")
		if Cooled(second, air, k, later) > Cooled(second, air, k, at) {
			t.Fatal("warmer later")
		}
		target := Cooled(second, air, k, at)
		if target-air < 1e-6 {
			return
		}
		back, ok := CoolingTime(second, target, air, k)
		if !ok || math.Abs(back-at) > 1e-6*(1+at) {
			t.Fatalf("%v minutes come back as %v", at, back)
		}
	})
}

// TestBands: ISO 13732-1 as quoted by others; the lowest figure counts.
func TestBands(t *testing.T) {
	for _, row := range []struct {
		surface          Surface
		seconds, celsius float64
		want             Touch
	}{
		{Metal, 1, 62, MayBurn}, {Metal, 1, 61.9, NoBurn}, {Metal, 1, 65.1, Burns},
		{Metal, 5, 57, MayBurn}, {Metal, 5, 61.5, Burns}, {Metal, 10, 55, MayBurn},
		{Metal, 60, 50, NoBurn}, {Metal, 600, 50, Burns}, {Metal, 8 * 3600, 42.9, NoBurn}, {Metal, 8 * 3600, 43, MayBurn},
		{Coated, 5, 57, MayBurn}, {Coated, 60, 52, Burns},
		{Plastic, 1, 84, NoBurn}, {Plastic, 5, 74, MayBurn}, {Plastic, 5, 83, Burns}, {Plastic, 10, 70, MayBurn},
		{Plastic, 60, 59, NoBurn}, {Plastic, 60, 61, Burns}, {Plastic, 600, 49, Burns},
	} {
		for _, b := range row.surface.Bands() {
			if got := b.At(row.celsius); b.Seconds == row.seconds && got != row.want {
				t.Errorf("%s, %v s at %v °C: %s, want %s", row.surface, row.seconds, row.celsius, got, row.want)
			}
		}
	}
	for c := float64(HabitLow); c <= HabitHigh; c++ {
		if seconds, ok := Metal.BurnsIn(c); !ok || seconds != 1 {
			t.Errorf("oil as warm as is usual, at %v °C: %v s, %v", c, seconds, ok)
		}
	}
	for c := float64(WarmLow); c <= WarmHigh; c++ {
		if seconds, ok := Metal.BurnsIn(c); !ok || seconds < 2 {
			t.Errorf("oil to be drained, at %v °C: %v s, %v", c, seconds, ok)
		}
	}
}

// TestScald: published times for water, adults; the row at or above, the shortest.
func TestScald(t *testing.T) {
	for _, row := range []struct{ celsius, seconds float64 }{
		{43.9, 6 * 3600}, // the row above, 44 °C in 6 h
		{48, 600},        // quoting ISO 13732-1, 10 min; second degree 15 min
		{51, 60},         // quoting ISO 13732-1, 1 min; second degree 2 min
		{53, 10},         // the row above, 54 °C in 10 s; CPSC's 54.4 says 30 s
		{55, 10},         // no more than at 54 °C; second degree 17 s
		{58, 3},          // the row above, never between
		{60, 3},          // second degree, 3 s; other lists say 5 and 6
		{63, 1},          // the row above, 64 °C in 1 s; hospitals' 62.8 says under 3 s
		{66, 0.5},        // the row above, 67 °C in 0.5 s
		{72.2, 0},        // NIST as quoted: 162 °F, on contact
		{82, 0},          // 180 °F
	} {
		if got, ok := Scald(row.celsius); !ok || got != row.seconds {
			t.Errorf("Scald(%v) = %v, %v, want %v", row.celsius, got, ok, row.seconds)
		}
	}
	for _, c := range []float64{42.9, -10, math.NaN()} {
		if _, ok := Scald(c); ok {
			t.Errorf("Scald(%v) has a time; none was found", c)
		}
	}
}
