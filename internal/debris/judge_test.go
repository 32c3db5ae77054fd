package debris_test

import (
	"testing"

	"tidysump/internal/debris"
)

// Cases as a mechanic would decide them: common practice, no source, but where one
// is named. What a case doesn't tell of oil or bits, nobody was asked for.
var cases = []struct {
	what string
	sign debris.Sign
	want debris.Verdict
}{
	{"nothing told", debris.Sign{}, debris.Unsaid},
	{"first service, and no more told", debris.Sign{FirstService: true}, debris.Unsaid},
	{"no noise, and no more told", debris.Sign{Noise: debris.NoNoise}, debris.Unsaid},
	{"more than last time, and not of what", debris.Sign{More: true}, debris.Unsaid},
	{"only a size told", debris.Sign{Size: debris.TwoMillimetres}, debris.Watch},
	{"more than ten, and not of what", debris.Sign{Amount: debris.Many}, debris.Stop},
	{"nothing found, dark oil", debris.Sign{Bit: debris.Nothing, Oil: debris.Dark}, debris.Normal},
	{"nothing found, but it knocks", debris.Sign{Bit: debris.Nothing, Noise: debris.Stays}, debris.Stop},
	{"nothing found, a rattle that fades after the start", debris.Sign{Bit: debris.Nothing, Noise: debris.Fades}, debris.Watch},
	{"a thin coat of paste", debris.Sign{Bit: debris.Paste, Depth: debris.HalfMillimetre}, debris.Normal},
	{"paste, nobody says how deep", debris.Sign{Bit: debris.Paste}, debris.Partly},
	{"paste of 3 mm", debris.Sign{Bit: debris.Paste, Depth: debris.FiveMillimetres}, debris.Watch},
	{"paste of 3 mm at the first service", debris.Sign{Bit: debris.Paste, Depth: debris.FiveMillimetres, FirstService: true}, debris.Watch},
	{"paste, more than last time", debris.Sign{Bit: debris.Paste, More: true}, debris.Watch},
	{"paste and the lamp", debris.Sign{Bit: debris.Paste, Lamp: true}, debris.Stop},
	{"fuzz of up to 2 mm", debris.Sign{Bit: debris.Fuzz, Depth: debris.TwoMillimetres}, debris.Normal},
	{"fur of 6 mm", debris.Sign{Bit: debris.Fuzz, Depth: debris.Larger}, debris.Stop},
	{"a heap on the magnet", debris.Sign{Bit: debris.Heap}, debris.Stop},
	{"a heap at the first service", debris.Sign{Bit: debris.Heap, FirstService: true}, debris.Stop},
	{"glitter", debris.Sign{Bit: debris.Glitter}, debris.Watch},
	{"bright glitter at the first service", debris.Sign{Bit: debris.Glitter, Colour: debris.Bright, FirstService: true}, debris.Normal},
	{"glitter at the first service, and nobody says of what colour", debris.Sign{Bit: debris.Glitter, FirstService: true}, debris.Watch},
	{"red glitter at the first service", debris.Sign{Bit: debris.Glitter, Colour: debris.Reddish, FirstService: true}, debris.Watch},
	{"bright glitter at the first service, and a rattle that fades", debris.Sign{Bit: debris.Glitter, Colour: debris.Bright, FirstService: true, Noise: debris.Fades}, debris.Stop},
	{"few small flakes", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few}, debris.Watch},
	{"few small bright flakes at the first service", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Bright, FirstService: true}, debris.Normal},
	{"the same, of no told colour", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, FirstService: true}, debris.Watch},
	{"the same, and the oil smells of fuel", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Bright, Oil: debris.FuelSmell, FirstService: true}, debris.Watch},
	{"few small flakes and a rattle that fades", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few, Noise: debris.Fades}, debris.Stop},
	{"few small flakes, more than last time", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few, More: true}, debris.Stop},
	{"few small flakes, again", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few, Again: true}, debris.Stop},
	{"flakes nobody measured", debris.Sign{Bit: debris.Flakes, Amount: debris.Few}, debris.Watch},
	{"bright flakes nobody measured, first service", debris.Sign{Bit: debris.Flakes, Amount: debris.Few, Colour: debris.Bright, FirstService: true}, debris.Watch},
	{"flakes nobody counted", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres}, debris.Watch},
	{"many flakes (TM 1-1520-238-23: more than ten of 1.6 mm)", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Many}, debris.Stop},
	{"many bright flakes at the first service", debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Many, Colour: debris.Bright, FirstService: true}, debris.Stop},
	{"flakes of 3 mm (TM 1-1520-238-23: 1.6 × 4.8 mm)", debris.Sign{Bit: debris.Flakes, Size: debris.FiveMillimetres, Amount: debris.Few}, debris.Stop},
	{"bright flakes of 3 mm at the first service", debris.Sign{Bit: debris.Flakes, Size: debris.FiveMillimetres, Amount: debris.Few, Colour: debris.Bright, FirstService: true}, debris.Stop},
	{"few bronze flakes", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Reddish}, debris.Watch},
	{"soft grey flakes", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Dull}, debris.Stop},
	{"soft grey flakes at the first service", debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Dull, FirstService: true}, debris.Stop},
	{"sand (TM 1-1500-204-23-1: any amount greater than a trace)", debris.Sign{Bit: debris.Sand, Size: debris.HalfMillimetre, Amount: debris.Few}, debris.Stop},
	{"one small chip", debris.Sign{Bit: debris.Chip, Size: debris.TwoMillimetres, Amount: debris.Few}, debris.Watch},
	{"one small bright chip at the first service", debris.Sign{Bit: debris.Chip, Size: debris.TwoMillimetres, Amount: debris.Few, Colour: debris.Bright, FirstService: true}, debris.Watch},
	{"many chips", debris.Sign{Bit: debris.Chip, Size: debris.HalfMillimetre, Amount: debris.Many}, debris.Stop},
	{"a chip nobody measured", debris.Sign{Bit: debris.Chip}, debris.Watch},
	{"a chip of 4 mm", debris.Sign{Bit: debris.Chip, Size: debris.FiveMillimetres}, debris.Stop},
	{"a ball", debris.Sign{Bit: debris.Part, Size: debris.TwoMillimetres}, debris.Stop},
	{"a clip nobody measured", debris.Sign{Bit: debris.Part}, debris.Stop},
	{"a coil on the plug", debris.Sign{Bit: debris.Coil}, debris.Stop},
	{"clutch crumbs", debris.Sign{Bit: debris.Clutch, Size: debris.HalfMillimetre, Amount: debris.Few}, debris.Watch},
	{"many clutch crumbs", debris.Sign{Bit: debris.Clutch, Size: debris.HalfMillimetre, Amount: debris.Many}, debris.Stop},
	{"a lump of lining", debris.Sign{Bit: debris.Clutch, Size: debris.Larger, Amount: debris.Few}, debris.Stop},
	{"clutch crumbs at the first service", debris.Sign{Bit: debris.Clutch, Size: debris.HalfMillimetre, Amount: debris.Few, FirstService: true}, debris.Watch},
	{"plastic shavings", debris.Sign{Bit: debris.Plastic, Size: debris.TwoMillimetres, Amount: debris.Few}, debris.Watch},
	{"plastic shavings at the first service", debris.Sign{Bit: debris.Plastic, Size: debris.TwoMillimetres, Amount: debris.Few, FirstService: true}, debris.Watch},
	{"many plastic shavings", debris.Sign{Bit: debris.Plastic, Size: debris.TwoMillimetres, Amount: debris.Many}, debris.Stop},
	{"a piece of a guide", debris.Sign{Bit: debris.Plastic, Size: debris.Larger}, debris.Stop},
	{"plastic and a rattle", debris.Sign{Bit: debris.Plastic, Size: debris.TwoMillimetres, Noise: debris.Stays}, debris.Stop},
	{"a shred of sealant", debris.Sign{Bit: debris.Sealant, Size: debris.FiveMillimetres, Amount: debris.Few}, debris.Watch},
	{"many shreds of sealant", debris.Sign{Bit: debris.Sealant, Size: debris.HalfMillimetre, Amount: debris.Many}, debris.Stop},
	{"foam under the cap", debris.Sign{Bit: debris.Nothing, Oil: debris.Foam}, debris.Watch},
	{"milky oil", debris.Sign{Bit: debris.Nothing, Oil: debris.Milky}, debris.Stop},
	{"milky oil at the first service", debris.Sign{Oil: debris.Milky, FirstService: true}, debris.Stop},
	{"water first", debris.Sign{Oil: debris.Water}, debris.Stop},
	{"a faint smell of fuel, the level unchanged", debris.Sign{Oil: debris.FuelSmell}, debris.Watch},
	{"thin of fuel, or the level risen", debris.Sign{Oil: debris.FuelThin}, debris.Stop},
	{"fuel, as it was asked for before", debris.Sign{Oil: debris.Fuel}, debris.Watch},
	{"burnt", debris.Sign{Oil: debris.Burnt}, debris.Watch},
	{"burnt at the first service", debris.Sign{Bit: debris.Glitter, Colour: debris.Bright, Oil: debris.Burnt, FirstService: true}, debris.Watch},
	{"paste, but milky", debris.Sign{Bit: debris.Paste, Oil: debris.Milky}, debris.Stop},
	{"only a noise that stays", debris.Sign{Noise: debris.Stays}, debris.Stop},
}

// unaskedOf are the things of a sign that tells nothing of the oil, or of bits.
func unaskedOf(s *debris.Sign) uint {
	var names []string
	for n := range debris.Asks {
		name := debris.Asks[n].Name
		if (name != "oil" || s.Oil > 0) && (name != "found" || s.Bit > 0) {
			names = append(names, name)
		}
	}
	return debris.Unasked(names)
}

func TestJudge(t *testing.T) {
	for _, c := range cases {
		c.sign.Unasked = unaskedOf(&c.sign)
		got, reasons := debris.Judge(&c.sign)
		if got != c.want {
			t.Errorf("%s: %s %v, want %s", c.what, debris.Verdicts[got], reasons, debris.Verdicts[c.want])
		}
		if got > debris.Unsaid && len(reasons) == 0 {
			t.Errorf("%s: a verdict without a reason", c.what)
		}
	}
}

// What was asked and not told keeps a verdict from being normal, and is said.
func TestJudge_NotTold(t *testing.T) {
	for _, c := range []struct {
		sign debris.Sign
		want debris.Verdict
		says string
	}{
		{debris.Sign{Bit: debris.Nothing}, debris.Partly, "debris-oil-unknown"},
		{debris.Sign{Oil: debris.Dark}, debris.Partly, "debris-found-unknown"},
		{debris.Sign{Oil: debris.Dark, Bit: debris.Fuzz}, debris.Partly, "debris-depth-unknown"},
		{debris.Sign{Oil: debris.Dark, Bit: debris.Flakes}, debris.Watch, "debris-size-unknown"},
		{debris.Sign{Oil: debris.Dark, Bit: debris.Flakes}, debris.Watch, "debris-amount-unknown"},
		{debris.Sign{Oil: debris.Dark, Bit: debris.Flakes}, debris.Watch, "debris-colour-unknown"},
		{debris.Sign{Oil: debris.Dark, Bit: debris.Flakes, Magnet: debris.NotTried}, debris.Watch, "debris-not-tried"},
	} {
		got, reasons := debris.Judge(&c.sign)
		if got != c.want || !says(reasons, c.says) {
			t.Errorf("%+v: %s %v; want %s, and %s", c.sign, debris.Verdicts[got], reasons, debris.Verdicts[c.want], c.says)
		}
	}
}

func says(list []debris.Reason, code string) bool {
	for _, r := range list {
		if r.Code == code {
			return true
		}
	}
	return false
}
