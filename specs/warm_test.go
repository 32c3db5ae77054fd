package specs_test

import (
	"strings"
	"testing"

	"tidysump/internal/drain"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
)

// Temperatures that stand in sentences are those of the rule, in both units.
func TestWords_TemperaturesOfTheRule(t *testing.T) {
	words := catalogue(t)
	print := shown.Printer{System: quantity.Metric}
	for id, celsius := range map[string][]float64{
		"warmth.cold":          {drain.WarmLow},
		"warmth.too-hot":       {drain.WarmHigh},
		"caution.hot-oil.more": {drain.WarmHigh},
		"method.warm-target":   {drain.HabitHigh},
		"figure.warm-scald":    {drain.ComparedWarm},
		"figure.habit-scald":   {drain.ComparedHabit},
		"figure.habit-less":    {drain.ComparedWarm, drain.ComparedHabit},
		"figure.habit-sooner":  {drain.ComparedWarm, drain.ComparedHabit},
	} {
		for _, c := range celsius {
			texts := print.Texts(c, "°C", 3)
			if want := texts[0] + " (" + texts[1] + ")"; !strings.Contains(words[id], want) {
				t.Errorf("%s does not say %s: %s", id, want, words[id])
			}
		}
	}
	// The step says "at once" of the one, and "within seconds" is said of the other.
	if seconds, ok := drain.Scald(drain.ComparedHabit); !ok || seconds != 0 || !strings.Contains(words["step.warm-up.why"], "{hot} scalds at once") {
		t.Errorf("water of %v °C scalds after %v s: %s", drain.ComparedHabit, seconds, words["step.warm-up.why"])
	}
	if seconds, ok := drain.Scald(drain.WarmHigh); !ok || seconds < 1 || seconds > 10 || !strings.Contains(words["caution.hot-oil.more"], "within seconds") {
		t.Errorf("water of %v °C scalds after %v s: %s", drain.WarmHigh, seconds, words["caution.hot-oil.more"])
	}
}

// What sentences say that a reading may be off, how wide the edge of a drop is and how
// much more real walls hold are the figures that are reckoned with.
func TestWords_FiguresOfLeaksAndReadings(t *testing.T) {
	words := catalogue(t)
	off := quantity.Number(drain.ReadTo, 2) + " °C (" + quantity.Number(drain.ReadTo*1.8, 1) + " °F) off"
	edges := quantity.Number(drain.UsualEdge*1e3, 2) + " to " + quantity.Number(drain.WideEdge*1e3, 2) + " mm"
	for id, want := range map[string]string{
		"method.newton": off, "method.straight-line": off, "finding.readings-close": off, "job.warmth.wait": off,
		"method.harkins-brown": edges,
		"method.rough-walls":   []string{3: "three times as much"}[drain.Rough],
	} {
		if want == "" || !strings.Contains(words[id], want) {
			t.Errorf("%s does not say %q: %s", id, want, words[id])
		}
	}
}
