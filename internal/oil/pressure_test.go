package oil

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

var unknown = math.NaN()

// Common practice, no source, but that an engine is stopped where the gauge shows none,
// which manuals say; their figures are for 80 °C and a speed, as here.
func TestJudgePressure(t *testing.T) {
	manual := Running{80, 3000}
	for _, c := range []struct {
		name                      string
		reading, off, least, most float64
		ran                       Running
		want                      Pressed
	}{
		{"right", 400, 16, 340, math.Inf(1), manual, PressureRight},
		{"on the limit, by an exact gauge", 340, 0, 340, math.Inf(1), manual, PressureRight},
		{"on the limit, by a real one", 340, 16, 340, math.Inf(1), manual, GaugeDecides},
		{"above the range", 600, 16, 340, 540, manual, PressureAbove},
		{"at its top, by a real gauge", 530, 16, 340, 540, manual, GaugeDecides},
		{"below", 300, 16, 340, 540, manual, PressureBelow},
		{"half of it is far below", 169, 0, 340, 540, manual, PressureGone},
		{"none", 0, 0, 340, 540, manual, PressureGone},
		{"no more than the gauge is off", 20, 25, 30, 540, manual, PressureGone},
		{"cold, and enough: it reads high", 500, 16, 340, math.Inf(1), Running{20, 3000}, NotComparable},
		{"cold, and too little even so", 300, 16, 340, math.Inf(1), Running{20, 3000}, PressureBelow},
		{"cold, and far too little", 100, 16, 340, math.Inf(1), Running{20, 3000}, PressureGone},
		{"hot, and too little: it reads low", 300, 16, 340, 540, Running{110, 3000}, NotComparable},
		{"hot, and enough all the same", 400, 16, 340, math.Inf(1), Running{110, 3000}, PressureRight},
		{"hot, and more than the range", 600, 16, 340, 540, Running{110, 3000}, PressureAbove},
		{"slow, and little, as it is at idle", 110, 16, 410, math.Inf(1), Running{80, 820}, NotComparable},
		{"slow, and none", 0, 16, 410, math.Inf(1), Running{80, 820}, PressureGone},
		{"fast, and too little", 300, 16, 410, math.Inf(1), Running{80, 5000}, PressureBelow},
		{"cold and slow", 300, 0, 410, math.Inf(1), Running{20, 1000}, NotComparable},
		{"5 K and a twentieth are the same", 400, 16, 340, 540, Running{75, 3150}, PressureRight},
		{"6 K are not", 400, 16, 340, 540, Running{74, 3000}, NotComparable},
		{"not known how hot", 400, 16, 340, 540, Running{unknown, 3000}, NotComparable},
		{"not known how fast, and little", 300, 16, 340, 540, Running{80, unknown}, NotComparable},
	} {
		if got := JudgePressure(c.reading, c.off, c.least, c.most, c.ran.Beside(manual)); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// Whatever is read: the verdict is what holds for all that the pressure may be in the
// manual's state, and less pressure never has a milder one.
func TestJudgePressure_NeverMilder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kPa := rapid.Float64Range(0, 900)
		reading, off := kPa.Draw(t, "reading"), rapid.Float64Range(0, 100).Draw(t, "off")
		least := rapid.Float64Range(1, 700).Draw(t, "least")
		most := math.Inf(1)
		if rapid.Bool().Draw(t, "range") {
			most = least + rapid.Float64Range(0, 300).Draw(t, "wide")
		}
		side := rapid.SampledFrom([]float64{unknown, 20, 77, 80, 84, 110})
		speed := rapid.SampledFrom([]float64{unknown, 1000, 2900, 3000, 3100, 6000})
		bias := Running{side.Draw(t, "oil"), speed.Draw(t, "speed")}.Beside(Running{80, 3000})
		verdict := JudgePressure(reading, off, least, most, bias)
		low, high := reading-off, reading+off
		if bias.High() {
			low = 0
		}
		if bias.Low() {
			high = math.Inf(1)
		}
		const hair = 1e-6
		inside := low >= least-hair && high <= most+hair
		switch verdict {
		case PressureRight:
			if !inside {
				t.Fatalf("%v to %v is right for %v to %v", low, high, least, most)
			}
		case PressureBelow:
			if high > least+hair {
				t.Fatalf("%v to %v is below %v", low, high, least)
			}
		case PressureAbove:
			if low < most-hair {
				t.Fatalf("%v to %v is above %v", low, high, most)
			}
		case PressureGone:
			if reading >= least || !(reading < least/2 && !bias.Low() || reading <= off+hair) {
				t.Fatalf("%v of %v stops", reading, least)
			}
		default:
			if inside || high < least-hair || low > most+hair {
				t.Fatalf("%v to %v of %v to %v: %s", low, high, least, most, verdict)
			}
		}
		if reading < least/2-hair && !bias.Low() && verdict != PressureGone {
			t.Fatalf("%v of %v doesn't stop: %s", reading, least, verdict)
		}
		rank := []Pressed{PressureGone, PressureBelow, GaugeDecides, NotComparable, PressureRight}
		less := JudgePressure(reading*rapid.Float64Range(0, 1).Draw(t, "less"), off, least, math.Inf(1), bias)
		now := JudgePressure(reading, off, least, math.Inf(1), bias)
		if slices.Index(rank, less) > slices.Index(rank, now) {
			t.Fatalf("%v kPa: %s, and less: %s", reading, now, less)
		}
	})
}
