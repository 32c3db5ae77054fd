package debris_test

import (
	"testing"

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

// everySign calls work with all that can be reported.
func everySign(work func(s debris.Sign)) {
	var s debris.Sign
	for s.Bit = range len(debris.Bits) + 1 {
		for s.Size = range len(debris.Sizes) + 1 {
			for s.Amount = range len(debris.Amounts) + 1 {
				for s.Colour = range len(debris.Colours) + 1 {
					for s.Oil = range len(debris.Oils) + 1 {
						for yes := range 16 {
							s.FirstService, s.Noise, s.Lamp, s.More = yes&1 > 0, yes&2 > 0, yes&4 > 0, yes&8 > 0
							work(s)
						}
					}
				}
			}
		}
	}
}

// Over all that can be reported: a worse sign never gives a better verdict, a stop is
// never called normal for lack of a measure, and every rule is reached.
func TestJudge_Everything(t *testing.T) {
	reached := map[string]bool{}
	everySign(func(s debris.Sign) {
		verdict, reasons := debris.Judge(&s)
		for _, r := range reasons {
			reached[r.Code] = true
		}
		louder, larger, unknown := s, s, s
		louder.Noise = true
		if got, _ := debris.Judge(&louder); got < verdict {
			t.Errorf("%+v: %v, and with a noise %v", s, verdict, got)
		}
		if larger.Size++; s.Size > 0 && s.Size < len(debris.Sizes) {
			if got, _ := debris.Judge(&larger); got < verdict {
				t.Errorf("%+v: %v, and larger %v", s, verdict, got)
			}
		}
		unknown.Size, unknown.Amount = 0, 0
		if got, _ := debris.Judge(&unknown); got == debris.Normal && verdict == debris.Stop {
			t.Errorf("%+v: %v, and unmeasured %v", s, verdict, got)
		}
	})
	const rules = 29
	if len(reached) != rules {
		t.Errorf("%d of %d rules are ever reached: %v", len(reached), rules, reached)
	}
}
