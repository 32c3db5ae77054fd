package debris_test

import (
	"slices"
	"testing"

	"tidysump/internal/debris"
)

// everySign calls work with all that can be told: every answer to each question that
// is asked with what was found, and none. Where nothing was found it has what was
// measured without being named.
func everySign(work func(s debris.Sign)) {
	var s debris.Sign
	var tell func(n int)
	tell = func(n int) {
		if n == len(debris.Asks) {
			work(s)
			return
		}
		for answer := range answers(&s, n) + 1 {
			s.Set(n, answer)
			tell(n + 1)
		}
		s.Set(n, 0)
	}
	tell(0)
}

// answers gives how many answers there are to the nth of Asks, with what was found;
// those of earlier versions among them.
func answers(s *debris.Sign, n int) int {
	a := &debris.Asks[n]
	if when := a.When(); s.Bit > 0 && when != nil && !slices.Contains(when, debris.Bits[s.Bit-1]) {
		return 0
	}
	switch {
	case s.Bit == 0 && a.Name == "magnet":
		return 0
	case a.Name == "oil":
		return debris.Fuel
	case len(a.Words) == 0:
		return 1
	}
	return len(a.Words)
}

// ask is the place of a name in Asks.
func ask(name string) int {
	return slices.IndexFunc(debris.Asks[:], func(a debris.Asked) bool { return a.Name == name })
}

// answerTo is what a sign answers to the nth of Asks.
func answerTo(s *debris.Sign, n int) int {
	yes := map[bool]int{true: 1}
	return []int{s.Bit, s.Depth, s.Size, s.Amount, s.Colour, s.Magnet, s.Oil, s.Noise, yes[s.Lamp], yes[s.More], yes[s.Again], yes[s.FirstService]}[n]
}

// What is worse than what, of answers that answer the same question: each row rises.
// Of a magnet's answers none is worse, and colours have one that is better than both
// others, of which one is the worse.
var rises = []struct {
	of    string
	order []int
}{
	{"found", []int{debris.Nothing, debris.Paste, debris.Fuzz, debris.Glitter, debris.Flakes, debris.Chip, debris.Part}},
	{"found", []int{debris.Flakes, debris.Sand}},
	{"found", []int{debris.Fuzz, debris.Heap}},
	{"found", []int{debris.Nothing, debris.Clutch}},
	{"found", []int{debris.Nothing, debris.Plastic}},
	{"found", []int{debris.Nothing, debris.Sealant}},
	{"found", []int{debris.Nothing, debris.Coil}},
	{"depth", []int{debris.HalfMillimetre, debris.TwoMillimetres, debris.FiveMillimetres, debris.Larger}},
	{"size", []int{debris.HalfMillimetre, debris.TwoMillimetres, debris.FiveMillimetres, debris.Larger}},
	{"amount", []int{debris.Few, debris.Many}},
	{"colour", []int{debris.Bright, debris.Reddish, debris.Dull}},
	{"oil", []int{debris.Dark, debris.Foam, debris.Milky}},
	{"oil", []int{debris.Dark, debris.FuelSmell, debris.Fuel, debris.FuelThin}},
	{"oil", []int{debris.Dark, debris.Burnt}},
	{"oil", []int{debris.Dark, debris.Water}},
	{"noise", []int{debris.NoNoise, debris.Fades, debris.Stays}},
	{"lamp", []int{0, 1}},
	{"more", []int{0, 1}},
	{"again", []int{0, 1}},
	{"firstService", []int{1, 0}},
}

// Over all that can be told, a sign that is worse in one answer, and equal in all
// others, never gets a milder verdict. Partly is held to be Normal there: it says that
// a question is open, and of another finding other questions are asked.
func TestJudge_WorseIsNeverMilder(t *testing.T) {
	level := func(s *debris.Sign) debris.Verdict {
		v, _ := debris.Judge(s)
		if v == debris.Partly {
			return debris.Normal
		}
		return v
	}
	everySign(func(s debris.Sign) {
		verdict := level(&s)
		for _, row := range rises {
			n := ask(row.of)
			at := slices.Index(row.order, answerTo(&s, n))
			if at < 0 || at+1 == len(row.order) {
				continue
			}
			worse := s
			if worse.Set(n, row.order[at+1]); level(&worse) < verdict {
				t.Fatalf("%+v: %s, and with %s %d only %s", s, debris.Verdicts[verdict], row.of, row.order[at+1], debris.Verdicts[level(&worse)])
			}
		}
	})
}

// Over all that can be told, a missing answer counts as one: never milder than the
// best answer, and never worse than the worst. Where it could be a worse one it is
// among the reasons, and the verdict isn't Normal. Only where nothing at all was told
// there is no verdict, which is none of these.
func TestJudge_MissingAnswer(t *testing.T) {
	said := map[string]bool{}
	everySign(func(s debris.Sign) {
		verdict, reasons := debris.Judge(&s)
		if verdict == debris.Unsaid {
			if s.Bit+s.Oil+s.Depth+s.Size+s.Amount+s.Colour+s.Magnet > 0 || s.Noise > debris.NoNoise || s.Lamp {
				t.Fatalf("%+v: no verdict", s)
			}
			return
		}
		for n := range debris.Asks {
			a := &debris.Asks[n]
			if len(a.Words) == 0 || a.Name == "noise" || answerTo(&s, n) > 0 || answers(&s, n) == 0 || s.Bit == 0 && a.When() != nil {
				continue
			}
			best, worst := debris.Stop, debris.Unsaid
			for answer := range len(a.Words) {
				told := s
				told.Set(n, answer+1)
				v, _ := debris.Judge(&told)
				best, worst = min(best, v), max(worst, v)
			}
			if verdict < best || verdict > worst && verdict > debris.Partly {
				t.Fatalf("%+v: %s; with an answer to %s it is from %s to %s", s, debris.Verdicts[verdict], a.Name, debris.Verdicts[best], debris.Verdicts[worst])
			}
			if worst > debris.Partly && worst > verdict {
				said[a.Name] = true
				if code := "debris-" + a.Name + "-unknown"; !says(reasons, code) || verdict == debris.Normal {
					t.Fatalf("%+v: %s %v; %s would matter", s, debris.Verdicts[verdict], reasons, a.Name)
				}
			}
		}
	})
	for _, name := range []string{"found", "depth", "size", "amount", "colour", "oil"} {
		if !said[name] {
			t.Errorf("%s is never missed", name)
		}
	}
}

// Over all that can be told, the first service changes no verdict but that on
// glitter and on few small flakes, both known to be bright; and of those all, where
// nothing else speaks against the engine.
func TestJudge_FirstService(t *testing.T) {
	softened := 0
	everySign(func(s debris.Sign) {
		if !s.FirstService {
			return
		}
		other := s
		other.FirstService = false
		got, reasons := debris.Judge(&s)
		was, _ := debris.Judge(&other)
		few := s.Bit == debris.Flakes && s.Amount == debris.Few && (s.Size == debris.HalfMillimetre || s.Size == debris.TwoMillimetres)
		may := (s.Bit == debris.Glitter || few) && s.Colour == debris.Bright && (s.Oil == 0 || s.Oil == debris.Dark) &&
			s.Noise <= debris.NoNoise && !s.Lamp && !s.More && !s.Again
		if may != (got < was) || may != says(reasons, "debris-first-service") {
			t.Fatalf("%+v: %s %v, and %s otherwise", s, debris.Verdicts[got], reasons, debris.Verdicts[was])
		}
		if may {
			softened++
		}
	})
	if softened == 0 {
		t.Error("nothing is ever softened")
	}
}

// Over all that can be told: more than ten pieces of anything are no better than more
// than ten flakes; the whole is no better than what its oil or its bits alone would
// give; a verdict has a reason as bad as itself, or two that are a step better.
func TestJudge_Everything(t *testing.T) {
	flakes, _ := debris.Judge(&debris.Sign{Bit: debris.Flakes, Amount: debris.Many})
	everySign(func(s debris.Sign) {
		verdict, reasons := debris.Judge(&s)
		if s.Amount == debris.Many && verdict < flakes {
			t.Fatalf("%+v: %s, and more than ten flakes are %s", s, debris.Verdicts[verdict], debris.Verdicts[flakes])
		}
		oil, bits := debris.Sign{Oil: s.Oil, Unasked: 1 << ask("found")}, s
		bits.Oil, bits.Unasked = 0, 1<<ask("oil")
		for _, part := range []debris.Sign{oil, bits} {
			if v, _ := debris.Judge(&part); v < debris.Watch && v != debris.Unsaid || verdict >= v {
				continue
			}
			t.Fatalf("%+v: %s, and %+v alone is worse", s, debris.Verdicts[verdict], part)
		}
		if verdict == debris.Unsaid {
			return
		}
		if reasons[0].Verdict > verdict || reasons[0].Verdict < verdict && (verdict != debris.Stop || len(reasons) < 2 || reasons[1].Verdict != debris.Watch) {
			t.Fatalf("%+v: %s, for %v", s, debris.Verdicts[verdict], reasons)
		}
	})
}

// Every reason is ever given, and none other has a sentence: the sentences' test is in
// specs.
func TestJudge_EveryReason(t *testing.T) {
	reached := map[string]bool{}
	everySign(func(s debris.Sign) {
		_, reasons := debris.Judge(&s)
		for _, r := range reasons {
			reached[r.Code] = true
		}
	})
	const reasons = 43
	if len(reached) != reasons {
		t.Errorf("%d of %d reasons are ever given: %v", len(reached), reasons, reached)
	}
}
