package specs_test

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tidysump/internal/debris"
	"tidysump/internal/fault"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/specs"
)

// One truth for one finding: what is said of a sign by the verdicts on what came out,
// by the table of problems, by the steps' own sentences and by the sentences of the
// verdicts is the same, wherever one of them says anything.

// alike are the problems that ask for a sign that debris judges: what is answered
// there, and the sign. Mended is what is set right with what is at hand before the
// bike is ridden, so that the sign is gone.
var alike = []struct {
	problem, answers string
	sign             debris.Sign
	mended           bool
}{
	{problem: "milky", answers: "milk=cap", sign: debris.Sign{Oil: debris.Foam}},
	{problem: "milky", answers: "milk=all", sign: debris.Sign{Oil: debris.Milky}},
	{problem: "milky", answers: "milk=water", sign: debris.Sign{Oil: debris.Water}},
	{problem: "fuel-smell", answers: "rises=same", sign: debris.Sign{Oil: debris.FuelSmell}},
	{problem: "fuel-smell", answers: "rises=risen", sign: debris.Sign{Oil: debris.FuelThin}},
	{problem: "noise", answers: "lamp=out noise=fades", sign: debris.Sign{Bit: debris.Nothing, Noise: debris.Fades}},
	{problem: "noise", answers: "lamp=out noise=stays", sign: debris.Sign{Bit: debris.Nothing, Noise: debris.Stays}},
	{problem: "noise", answers: "lamp=flickers", sign: debris.Sign{Bit: debris.Nothing, Lamp: true}},
	{problem: "noise", answers: "lamp=on", sign: debris.Sign{Bit: debris.Nothing, Lamp: true}},
	{problem: "lamp-riding", sign: debris.Sign{Bit: debris.Nothing, Lamp: true}},
	{problem: "lamp-flicker", sign: debris.Sign{Bit: debris.Nothing, Lamp: true}},
	{problem: "metal", answers: "bits=paste", sign: debris.Sign{Bit: debris.Paste, Depth: debris.TwoMillimetres}},
	{problem: "metal", answers: "bits=bright", sign: debris.Sign{Bit: debris.Flakes, Size: debris.TwoMillimetres, Amount: debris.Few, Colour: debris.Bright}},
	{problem: "metal", answers: "bits=grey", sign: debris.Sign{Bit: debris.Flakes, Size: debris.HalfMillimetre, Amount: debris.Few, Colour: debris.Dull}},
	{problem: "metal", answers: "bits=piece", sign: debris.Sign{Bit: debris.Part}},
	{problem: "metal", answers: "bits=piece", sign: debris.Sign{Bit: debris.Flakes, Size: debris.FiveMillimetres}},
	{problem: "plug-turns", sign: debris.Sign{Bit: debris.Coil}, mended: true},
	{problem: "plug-mend", answers: "boss=whole", sign: debris.Sign{Bit: debris.Coil}, mended: true},
}

// judgedToo are the questions of problems whose every answer is among those.
var judgedToo = []string{"milk", "rises", "bits"}

// unlike are the signs of oil and noise that no problem asks for, each with why.
var unlike = map[string]string{
	"oil-look.dark":  "no problem",
	"oil-look.burnt": "seen when it comes out, and no trouble that one meets",
	"new-noise.none": "no problem",
}

// weight is how bad a verdict is, and an outcome: nothing against it, watch it, stop.
func weight(v debris.Verdict) int { return max(int(v)-int(debris.Partly), 0) }

func weightOf(outcome string) int { return min(fault.Rank(outcome)-1, 2) }

func TestAgree_Problems(t *testing.T) {
	table := faultTable(t)
	paired := map[string]bool{}
	for _, c := range alike {
		f := table.Find(c.problem)
		if f == nil {
			t.Errorf("there is no problem %q", c.problem)
			continue
		}
		answers := map[string]string{}
		for part := range strings.FieldsSeq(c.answers) {
			q, a, _ := strings.Cut(part, "=")
			answers[q] = a
			paired[part] = true
			if !slices.Contains(strings.Fields(table.Questions[q]), a) || !slices.Contains(f.Asks, q) {
				t.Errorf("%s: nobody is asked %s", c.problem, part)
			}
		}
		verdict, _ := debris.Judge(unasked(c.sign))
		paired[signWord(&c.sign)] = true
		hand := f.Hand
		if c.mended {
			hand = nil
		}
		for set := range 1 << len(hand) {
			var has []string
			for n := range hand {
				if set&(1<<n) > 0 {
					has = append(has, hand[n])
				}
			}
			outcome := fault.Judge(table, f, answers, has).Outcome
			switch told, got := weightOf(outcome), weight(verdict); {
			case told < got:
				t.Errorf("%s %s %v is %s: milder than what came out, %+v, %s", c.problem, c.answers, has, outcome, c.sign, debris.Verdicts[verdict])
			case told > got:
				t.Errorf("what came out, %+v, is %s: milder than %s %s %v, %s", c.sign, debris.Verdicts[verdict], c.problem, c.answers, has, outcome)
			}
		}
	}
	for _, q := range judgedToo {
		for a := range strings.FieldsSeq(table.Questions[q]) {
			if a != fault.Other && !paired[q+"="+a] {
				t.Errorf("%s=%s of the problems is held against no sign", q, a)
			}
		}
	}
	for n := range debris.Asks {
		a := &debris.Asks[n]
		if a.Name != "oil" && a.Name != "noise" {
			continue
		}
		for _, w := range a.Words {
			if id := a.Family + w; paired[id] == (unlike[id] != "") {
				t.Errorf("%s is held against no problem, or is and has a reason not to be", id)
			}
		}
	}
}

// unasked is a sign of which nothing is asked but what it tells of oil and bits.
func unasked(s debris.Sign) *debris.Sign {
	names := []string{"depth", "size", "amount", "colour"}
	if s.Bit > 0 {
		names = append(names, "found")
	}
	if s.Oil > 0 {
		names = append(names, "oil")
	}
	s.Unasked = debris.Unasked(names)
	return &s
}

func signWord(s *debris.Sign) string {
	if s.Noise > 0 {
		return "new-noise." + debris.Noises[s.Noise-1]
	}
	return s.Word()
}

// limits are what a sentence says that judges: a figure, or a word of a verdict.
var limits = regexp.MustCompile(`(?i)\d|\b(stop|go on|usual|normal|harmless|fine|watch it|reason|millimet\w+|couple|heap|pieces? of metal)\b`)

// The steps that look at what came out, the one that decides and the second look judge
// nothing in their own sentences: the verdict does.
func TestAgree_Steps(t *testing.T) {
	words := catalogue(t)
	seen := map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(specs.Cards())) {
		c := plantest.Sample(t, strings.TrimSuffix(name, ".json"))
		also := []string{}
		for i := range c.Filters {
			also = append(also, c.Filters[i].ID)
		}
		for _, b := range []plan.Bench{{}, {Also: also}} {
			made, list := plantest.Made(c, b)
			if made == nil {
				t.Fatal(name, list)
			}
			for i := range made.Steps {
				s := &made.Steps[i]
				if len(s.Signs) == 0 && !s.Sums && !s.After || seen[s.Word] {
					continue
				}
				seen[s.Word] = true
				for _, ending := range []string{"", ".do", ".why"} {
					text := words[s.Word+ending]
					if text = strings.ReplaceAll(text, "Decide: go on or stop?", ""); text == "" && ending != "" {
						t.Errorf("%s%s says nothing", s.Word, ending)
					}
					if judges := limits.FindString(text); judges != "" {
						t.Errorf("%s%s judges by itself (%q): %q", s.Word, ending, judges, text)
					}
				}
			}
		}
	}
	for _, word := range []string{"step.look-oil", "step.look-magnet", "step.look-strainer", "step.look-filter", "step.look-rotor", "step.decide", "step.second-look"} {
		if !seen[word] {
			t.Errorf("no sample card has %s", word)
		}
	}
}

// reasonsOf are the reasons that debris gives, by their codes.
func reasonsOf() map[string]debris.Verdict {
	all := map[string]debris.Verdict{}
	take := func(s debris.Sign) {
		_, reasons := debris.Judge(&s)
		for _, r := range reasons {
			all[r.Code] = r.Verdict
		}
	}
	for bit := range len(debris.Bits) + 1 {
		for size := range len(debris.Sizes) + 1 {
			for colour := range len(debris.Colours) + 1 {
				for magnet := range len(debris.Magnets) + 1 {
					for _, s := range []debris.Sign{{}, {Amount: debris.Few, FirstService: true}, {Amount: debris.Many}, {Depth: size}, {Oil: debris.Dark}} {
						s.Bit, s.Size, s.Colour, s.Magnet = bit, size, colour, magnet
						take(s)
					}
				}
			}
		}
	}
	for oil := range debris.Fuel {
		for _, s := range []debris.Sign{{}, {Lamp: true}, {More: true}, {Again: true}, {Noise: debris.Fades}, {Noise: debris.Stays}} {
			s.Oil = oil + 1
			take(s)
		}
	}
	return all
}

var (
	runs   = regexp.MustCompile(`(?i)\b(rides?|ride it|runs?|start|km|usual distance|go on)\b`)
	stands = regexp.MustCompile(`(?i)(do not (run|start)|before it runs)`)
)

// Any reason may stand beside one to stop: so none tells to ride or to run, and what
// tells not to is a reason to stop. What to do next tells to ride or to run only in
// what is left out after a stop.
func TestAgree_Sentences(t *testing.T) {
	words := catalogue(t)
	for code, verdict := range reasonsOf() {
		for _, ending := range []string{"", ".do"} {
			text := words["finding."+code+ending]
			if forbids := stands.MatchString(text); forbids && verdict != debris.Stop {
				t.Errorf("%s%s is no reason to stop, and says %q", code, ending, text)
			}
			if told := runs.FindString(stands.ReplaceAllString(text, "")); told != "" && ending != "" {
				t.Errorf("%s%s tells to run it (%q), and may stand beside a stop: %q", code, ending, told, text)
			}
		}
	}
	stop := debris.Next(debris.Stop, everyReason(), false)
	for _, action := range debris.Actions {
		text := words["next."+action]
		told := runs.MatchString(text) && action != "no-start"
		if left := slices.Contains(stop, action); left == told {
			t.Errorf("next.%s stands after a stop %v, and says %q", action, left, text)
		}
	}
}

func everyReason() []debris.Reason {
	var all []debris.Reason
	for bit := range len(debris.Bits) + 1 {
		for oil := range debris.Fuel + 1 {
			for _, s := range []debris.Sign{{}, {Depth: debris.Larger}, {Magnet: debris.NotTried}, {Lamp: true}, {More: true}, {Colour: debris.Dull}} {
				s.Bit, s.Oil = bit, oil
				_, reasons := debris.Judge(&s)
				all = append(all, reasons...)
			}
		}
	}
	return all
}

var moreThan = regexp.MustCompile(`(?i)more than (\d+) mm`)

// A length in the sentence of a reason is the one that its rule has: the reason is
// given from the next larger size on, and not before.
func TestAgree_Lengths(t *testing.T) {
	words := catalogue(t)
	measured := 0
	for code := range reasonsOf() {
		m := moreThan.FindStringSubmatch(words["finding."+code])
		if m == nil {
			continue
		}
		measured++
		mm, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatal(code, err)
		}
		for size := debris.HalfMillimetre; size <= debris.Larger; size++ {
			given := givenAt(code, size)
			if want := size > debris.SizeUpTo(mm); given != want {
				t.Errorf("%s says %q; at %s it is given: %v", code, m[0], debris.Sizes[size-1], given)
			}
		}
	}
	if measured < 3 {
		t.Errorf("%d reasons say a length", measured)
	}
}

// givenAt reports whether a reason is given for anything of that size or depth.
func givenAt(code string, size int) bool {
	for bit := range len(debris.Bits) + 1 {
		for _, s := range []debris.Sign{{Bit: bit, Size: size}, {Bit: bit, Depth: size}} {
			_, reasons := debris.Judge(&s)
			if slices.ContainsFunc(reasons, func(r debris.Reason) bool { return r.Code == code }) {
				return true
			}
		}
	}
	return false
}
