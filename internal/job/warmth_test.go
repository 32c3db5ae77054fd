package job_test

import (
	"testing"

	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// What a temperature means, by the one rule, and how long metal of it may be touched
// by ISO 13732-1 as quoted (of 60 °C it may burn within 2 s, of 62 °C within 1). The record says
// the same beside the reading.
func TestReplay_Warmth(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	for _, f := range []struct{ value, word, burns string }{
		{"-5 °C", "warmth.cold", ""}, {"20 °C", "warmth.cold", ""}, {"49 °C", "warmth.cold", "10 min"},
		{"50 °C", "warmth.good", "10 min"}, {"60 °C", "warmth.good", "2 s"}, {"61 °C", "warmth.too-hot", "2 s"},
		{"62 °C", "warmth.too-hot", "1 s"}, {"120 °C", "warmth.too-hot", "1 s"}, {"140 °F", "warmth.good", "2 s"}, {"55 °C", "warmth.good", "10 s"},
	} {
		s, _ := replayed(c, plan.Bench{}, []job.Event{read("key-out", "temperature", "", f.value)})
		w := s.Warmth
		if w == nil || w.Word != f.word || len(w.Burns) > 0 != (f.burns != "") || f.burns != "" && w.Burns[0] != f.burns {
			t.Errorf("%s: %+v, want %+v", f.value, w, f)
		}
		if got := s.Readings[0].Verdict; got != f.word {
			t.Errorf("%s: the record says %q, want %q", f.value, got, f.word)
		}
	}
	if s, _ := replayed(c, plan.Bench{}, []job.Event{read("key-out", "temperature", "", "250 °C")}); s.Warmth != nil || len(s.Findings) != 1 {
		t.Errorf("250 °C is taken: %+v, %+v", s.Warmth, s.Findings)
	}
}

// Newton's law of cooling: from 120 to 105 °C in air of 20 °C is a factor 0.85 of
// the difference; to 60 °C is 0.4 of the first and 40/85 of the second, so
// ten minutes between the readings make ln(85/40)/ln(100/85)·10 = 46.4 more. A degree
// more or less on each, and ten on the air, make 38.0 to 58.9 of it (worked out apart).
func TestReplay_WaitUntilCool(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	first, second := read("key-out", "temperature", "", "120 °C"), read("key-out", "temperature", "", "105 °C")
	first.ID, second.ID = "a", "b"
	first.Time, second.Time = "2026-11-25T23:55:00.000Z", "2026-11-26T00:05:00.000Z"
	s, _ := replayed(c, plan.Bench{}, []job.Event{first, second})
	if len(s.Warmth.Wait) == 0 || s.Warmth.Wait[0] != "38–59 min" {
		t.Errorf("120 and 105 °C ten minutes apart: wait %v, want 38–59 min", s.Warmth.Wait)
	}
	for _, f := range []struct{ name, value, at string }{
		{"warming", "125 °C", "2026-11-26T00:05:00.000Z"},
		{"at once", "105 °C", "2026-11-25T23:55:30.000Z"},
		{"cool enough", "60 °C", "2026-11-26T00:05:00.000Z"},
		{"too close to tell", "119 °C", "2026-11-26T00:05:00.000Z"},
	} {
		second.Value, second.Time = f.value, f.at
		if s, _ := replayed(c, plan.Bench{}, []job.Event{first, second}); len(s.Warmth.Wait) > 0 {
			t.Errorf("%s: wait %v", f.name, s.Warmth.Wait)
		}
	}
}

// Minutes that a clock jumped over are none: it takes two times that are believed to
// say how fast oil cools.
func TestReplay_WaitClockJumped(t *testing.T) {
	c := plantest.Sample(t, "tessaly-corda-570")
	const day, later = "2026-11-25T10:00:00.000Z", "2026-11-25T13:00:00.000Z"
	hot, cooler := read("key-out", "temperature", "", "120 °C"), read("key-out", "temperature", "", "105 °C")
	note := job.Event{Kind: job.Note, Text: "n"}
	if s, _ := replayed(c, plan.Bench{}, told([]string{day, later, later}, hot, cooler, note)); len(s.Warmth.Wait) == 0 {
		t.Errorf("three hours apart: no wait")
	}
	if s, _ := replayed(c, plan.Bench{}, told([]string{day, later, day}, hot, cooler, note)); len(s.Warmth.Wait) > 0 {
		t.Errorf("by a clock that jumped: wait %v", s.Warmth.Wait)
	}
}
