package core_test

import (
	"encoding/json"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

type gaugeAnswer struct {
	Verdict                string
	Trusted                bool
	Scale, Edge, Low, High float64
	Ruler                  []float64
	Marks                  []struct {
		Across     float64
		Text, Size string
	}
}

func gaugeOf(t reporter, in map[string]string) gaugeAnswer {
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatalf("%v", err)
	}
	var a gaugeAnswer
	answered(t, "gauge", text, &a)
	return a
}

// Whatever the screen, a mark is as many hundredths of the card's edge across as its
// millimetres say (ISO/IEC 7810 ID-1: 53.98 mm), and never said to be true unless
// it was matched and nothing was zoomed since.
func TestGauge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := rapid.Float64Range(110, 1070).Draw(t, "edge")
		ratio := rapid.SampledFrom([]string{"1", "1.5", "2.625", "3"}).Draw(t, "ratio")
		now := rapid.SampledFrom([]string{"1", "1.5", "2.625", "3"}).Draw(t, "now")
		zoom := rapid.SampledFrom([]string{"1", "1.1", "2"}).Draw(t, "zoom")
		a := gaugeOf(t, map[string]string{"edge": strconv.FormatFloat(edge, 'f', 2, 64), "ratio": ratio, "now": now, "zoom": zoom})
		for i, mm := range []float64{0.5, 1, 2, 5, 10} {
			if want := edge / 53.98 * mm; math.Abs(a.Marks[i].Across-want) > 0.011 {
				t.Fatalf("edge %v: the mark of %v mm is %v px across, want %v", edge, mm, a.Marks[i].Across, want)
			}
		}
		for mm, place := range a.Ruler {
			if want := edge / 53.98 * float64(mm); math.Abs(place-want) > 0.011 {
				t.Fatalf("edge %v: %d mm on the ruler is at %v px, want %v", edge, mm, place, want)
			}
		}
		if a.Trusted != (a.Verdict == "gauge.true") {
			t.Fatalf("%s, and may be measured with: %v", a.Verdict, a.Trusted)
		}
		if isTrue := a.Verdict == "gauge.true"; isTrue != (ratio == now && zoom == "1") {
			t.Fatalf("ratio %s, now %s, zoom %s: %s", ratio, now, zoom, a.Verdict)
		}
	})
	if a := gaugeOf(t, map[string]string{"now": "3"}); a.Verdict != "gauge.not-set" || len(a.Marks) != 5 || math.Abs(a.Edge-204.02) > 0.01 {
		t.Errorf("not matched: %+v", a)
	}
}

// The smallest mark that covers a piece answers its size: the bounds are those of
// the words.
func TestGauge_Sizes(t *testing.T) {
	want := map[string]string{"0.5 mm": "half", "1 mm": "two", "2 mm": "two", "5 mm": "five", "10 mm": "larger"}
	for _, m := range gaugeOf(t, map[string]string{"edge": "300"}).Marks {
		if want[m.Text] != m.Size {
			t.Errorf("%s is %q, want %q", m.Text, m.Size, want[m.Text])
		}
	}
}
