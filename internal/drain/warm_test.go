package drain_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/drain"
)

// Common practice, no source: the habit is 65 to 82 °C, which is 150 to 180 °F, and
// warm oil is left to run for five to ten minutes.
func TestHabit(t *testing.T) {
	for _, f := range []struct{ celsius, fahrenheit float64 }{{drain.HabitLow, 150}, {drain.HabitHigh, 180}} {
		if got := f.celsius*1.8 + 32; math.Abs(got-f.fahrenheit) > 1 {
			t.Errorf("%g °C is %g °F, want %g", f.celsius, got, f.fahrenheit)
		}
	}
	if drain.RunOutLow != 5 || drain.RunOutHigh != 10 {
		t.Errorf("run-out %d to %d min, want 5 to 10", drain.RunOutLow, drain.RunOutHigh)
	}
}

// What is advised lies below the habit, and burns slower by every figure that is
// published here for metal and for water.
func TestWarm_BurnsSlowerThanTheHabit(t *testing.T) {
	for _, row := range []struct{ warm, habit float64 }{
		{drain.WarmLow, drain.HabitLow}, {drain.WarmHigh, drain.HabitLow}, {drain.ComparedWarm, drain.ComparedHabit},
	} {
		if row.warm >= row.habit {
			t.Errorf("%v °C is not below the habit's %v", row.warm, row.habit)
		}
		warm, _ := drain.Metal.BurnsIn(row.warm)
		habit, _ := drain.Metal.BurnsIn(row.habit)
		if warm <= habit {
			t.Errorf("metal of %v °C burns in %v s, of %v °C in %v s", row.warm, warm, row.habit, habit)
		}
		water, _ := drain.Scald(row.warm)
		hot, _ := drain.Scald(row.habit)
		if water <= hot {
			t.Errorf("water of %v °C scalds in %v s, of %v °C in %v s", row.warm, water, row.habit, hot)
		}
	}
	if drain.ComparedWarm != (drain.WarmLow+drain.WarmHigh)/2 || drain.Judge(drain.ComparedHabit) != drain.TooHot ||
		drain.ComparedHabit < drain.HabitLow || drain.ComparedHabit > drain.HabitHigh {
		t.Errorf("%v and %v °C do not stand for the two ranges", drain.ComparedWarm, drain.ComparedHabit)
	}
}

// The rule at its edges, and that it never falls.
func TestJudge(t *testing.T) {
	for _, f := range []struct {
		celsius float64
		want    drain.Warmth
	}{
		{-40, drain.Cold}, {49.9, drain.Cold}, {50, drain.Good}, {55, drain.Good}, {60, drain.Good}, {60.1, drain.TooHot}, {200, drain.TooHot},
	} {
		if got := drain.Judge(f.celsius); got != f.want {
			t.Errorf("%v °C is %s, want %s", f.celsius, got, f.want)
		}
	}
	rank := map[drain.Warmth]int{}
	for n, w := range drain.Warmths {
		rank[w] = n
	}
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(-40, 200).Draw(t, "celsius")
		more := rapid.Float64Range(0, 100).Draw(t, "more")
		if rank[drain.Judge(c+more)] < rank[drain.Judge(c)] {
			t.Fatalf("%v °C is %s and %v °C is %s", c, drain.Judge(c), c+more, drain.Judge(c+more))
		}
	})
}
