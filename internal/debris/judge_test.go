package debris_test

import (
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/debris"
)

// Cases as a mechanic would decide them: common practice, no source, but where one
// is named.
var cases = []struct {
	what string
	sign debris.Sign
	want debris.Verdict
}{
	{"nothing told", debris.Sign{}, debris.Unsaid},
	{"only a size told", debris.Sign{Size: debris.TwoMillimetres}, debris.Unsaid},
	{"first service, and no more told", debris.Sign{FirstService: true}, debris.Unsaid},
	{"nothing found, dark oil", debris.Sign{Bit: debris.Nothing, Oil: debris.Dark}, debris.Normal},
	{"nothing found, but it knocks", debris.Sign{Bit: debris.Nothing, Noise: true}, debris.Watch},
	{"paste", debris.Sign{Bit: debris.Paste}, debris.Normal},
	{"paste, more than last time", debris.Sign{Bit: debris.Paste, More: true}, debris.Watch},
	{"paste and the lamp", debris.Sign{Bit: debris.Paste, Lamp: true}, debris.Watch},
	{"fuzz", debris.Sign{Bit: debris.Fuzz, Size: debris.HalfMillimetre}, debris.Normal},
	{"glitter", debris.Sign{Bit: debris.Glitter}, debris.Watch},
	{"glitter at the first service", debris.Sign{Bit: debris.Glitter, FirstService: true}, debris.Normal},
	{"glitter at the first service, and a noise", debris.Sign{Bit: debris.Glitter, FirstService: true, Noise: true}, debris.Stop},
	{"few small flakes", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few}, debris.Watch},
	{"few small flakes at the first service", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, FirstService: true}, debris.Normal},
	{"few small flakes and a knock", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few, Noise: true}, debris.Stop},
	{"few small flakes, more than last time", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few, More: true}, debris.Stop},
	{"flakes nobody measured", debris.Sign{Bit: debris.Flakes, Amount: debris.Few}, debris.Watch},
	{"flakes nobody measured, first service", debris.Sign{Bit: debris.Flakes, Amount: debris.Few, FirstService: true}, debris.Watch},
	{"flakes nobody counted", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres}, debris.Watch},
	{"many flakes (TM 1-1520-238-23: more than ten of 1.6 mm)", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Many}, debris.Stop},
	{"many flakes at the first service", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Many, FirstService: true}, debris.Stop},
	{"flakes of 3 mm (TM 1-1520-238-23: 1.6 × 4.8 mm)", debris.Sign{Bit: debris.Flakes, Size: debris.FiveMillimetres, Amount: debris.Few}, debris.Stop},
	{"flakes of 3 mm at the first service", debris.Sign{Bit: debris.Flakes, Size: debris.FiveMillimetres, Amount: debris.Few, FirstService: true}, debris.Stop},
	{"few bronze flakes", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Reddish}, debris.Watch},
	{"soft grey flakes", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Dull}, debris.Watch},
	{"soft grey flakes and the lamp", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Dull, Lamp: true}, debris.Stop},
	{"sand (TM 1-1500-204-23-1: any amount greater than a trace)", debris.Sign{Bit: debris.Sand, Size: debris.HalfMillimetre, Amount: debris.Few}, debris.Stop},
	{"sand at the first service", debris.Sign{Bit: debris.Sand, Size: debris.HalfMillimetre, FirstService: true}, debris.Stop},
	{"one small chip", debris.Sign{Bit: debris.Chip, Size: debris.TwoMillimetres, Amount: debris.Few}, debris.Watch},
	{"a chip nobody measured", debris.Sign{Bit: debris.Chip}, debris.Watch},
	{"a chip of 4 mm", debris.Sign{Bit: debris.Chip, Size: debris.FiveMillimetres}, debris.Stop},
	{"a chip of 8 mm", debris.Sign{Bit: debris.Chip, Size: debris.Larger}, debris.Stop},
	{"a ball", debris.Sign{Bit: debris.Part, Size: debris.TwoMillimetres}, debris.Stop},
	{"a clip nobody measured", debris.Sign{Bit: debris.Part}, debris.Stop},
	{"a coil on the plug", debris.Sign{Bit: debris.Coil}, debris.Stop},
	{"clutch crumbs", debris.Sign{Bit: debris.Clutch}, debris.Watch},
	{"plastic shavings", debris.Sign{Bit: debris.Plastic, Size: debris.TwoMillimetres}, debris.Watch},
	{"a piece of a guide", debris.Sign{Bit: debris.Plastic, Size: debris.Larger}, debris.Stop},
	{"plastic and a rattle", debris.Sign{Bit: debris.Plastic, Size: debris.TwoMillimetres, Noise: true}, debris.Stop},
	{"sealant", debris.Sign{Bit: debris.Sealant}, debris.Watch},
	{"foam under the cap", debris.Sign{Bit: debris.Nothing, Oil: debris.Foam}, debris.Watch},
	{"milky oil", debris.Sign{Bit: debris.Nothing, Oil: debris.Milky}, debris.Stop},
	{"milky oil at the first service", debris.Sign{Oil: debris.Milky, FirstService: true}, debris.Stop},
	{"water first", debris.Sign{Oil: debris.Water}, debris.Stop},
	{"fuel", debris.Sign{Oil: debris.Fuel}, debris.Watch},
	{"burnt", debris.Sign{Oil: debris.Burnt}, debris.Watch},
	{"burnt, and the lamp", debris.Sign{Oil: debris.Burnt, Lamp: true}, debris.Stop},
	{"paste, but milky", debris.Sign{Bit: debris.Paste, Oil: debris.Milky}, debris.Stop},
	{"only a noise", debris.Sign{Noise: true}, debris.Watch},
}

func TestJudge(t *testing.T) {
	for _, c := range cases {
		got, reasons := debris.Judge(&c.sign)
		if got != c.want {
			t.Errorf("%s: %v %v, want %v", c.what, got, reasons, c.want)
		}
		if got > debris.Unsaid && len(reasons) == 0 {
			t.Errorf("%s: a verdict without a reason", c.what)
		}
	}
}

func drawSign(t *rapid.T) debris.Sign {
	pick := func(name string, words []string) int { return rapid.IntRange(0, len(words)).Draw(t, name) }
	yes := func(name string) bool { return rapid.Bool().Draw(t, name) }
	return debris.Sign{Bit: pick("bit", debris.Bits), Size: pick("size", debris.Sizes), Amount: pick("amount", debris.Amounts),
		Colour: pick("colour", debris.Colours), Oil: pick("oil", debris.Oils),
		FirstService: yes("first"), Noise: yes("noise"), Lamp: yes("lamp"), More: yes("more")}
}

// A worse sign never gives a better verdict, and a stop is never called normal for
// lack of an answer.
func TestJudge_WorseIsNeverBetter(t *testing.T) {
	reached := map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		s := drawSign(t)
		verdict, reasons := debris.Judge(&s)
		for _, r := range reasons {
			reached[r.Code] = true
		}
		worse := s
		worse.Noise = true
		if got, _ := debris.Judge(&worse); got < verdict {
			t.Errorf("%+v: %v, and with a noise %v", s, verdict, got)
		}
		if s.Size > 0 && s.Size < debris.Larger {
			worse = s
			worse.Size++
			if got, _ := debris.Judge(&worse); got < verdict {
				t.Errorf("%+v: %v, and larger %v", s, verdict, got)
			}
		}
		unknown := s
		unknown.Size, unknown.Amount = 0, 0
		if got, _ := debris.Judge(&unknown); got == debris.Normal && verdict == debris.Stop && !s.Noise && !s.Lamp {
			t.Errorf("%+v: %v, and unmeasured %v", s, verdict, got)
		}
	})
	if len(reached) < 28 {
		t.Errorf("only %d rules were ever reached", len(reached))
	}
}
