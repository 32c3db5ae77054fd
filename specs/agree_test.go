package specs_test

import (
	"encoding/json"
	"fmt"
	"math"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tidysump/internal/bolt"
	"tidysump/internal/drain"
	"tidysump/internal/due"
	"tidysump/internal/fill"
	"tidysump/internal/oil"
	"tidysump/internal/plan"
	"tidysump/internal/quote"
)

// agreed is a figure that sentences name: whoever says it, in whatever room, says
// what the program reckons with, or at least what the others say.
type agreed struct {
	what   string
	about  string // of which sentences, a pattern
	figure string // how it is named there, a pattern whose group is the figure
	want   string
}

var numerals = strings.Fields("no one two three four five six seven eight nine ten")

// share of a whole in words.
func share(of float64) string {
	for words, is := range map[string]float64{
		"seven eighths": 7. / 8, "an eighth": 1. / 8, "a tenth": 1. / 10, "a fifth": 1. / 5, "a half": 1. / 2,
		"a quarter": 1. / 4, "three quarters": 3. / 4, "half as large again": 3. / 2,
	} {
		if math.Abs(of-is) < 1e-9 {
			return words
		}
	}
	return strconv.FormatFloat(of, 'g', 4, 64)
}

// plainly is a number as a sentence has it.
func plainly(n float64) string { return strconv.FormatFloat(math.Round(n*1e4)/1e4, 'f', -1, 64) }

// limit is the least share, in steps of a thousandth from one on, at which something
// is no longer so.
func limit(step float64, holds func(float64) bool) float64 {
	n := 0.
	for n < 2 && holds(1+n+step/2) {
		n += math.Abs(step)
		if step < 0 {
			if !holds(1 - n + step/2) {
				break
			}
		}
	}
	return math.Round(n*1e3) / 1e3
}

// waits gives the seconds of the timers of all golden plans that the card doesn't
// give, by what is waited for.
func waits(t *testing.T) map[string]float64 {
	t.Helper()
	list := map[string]float64{}
	files, err := filepath.Glob("../testdata/plans/*.json")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d golden plans, %v", len(files), err)
	}
	for _, file := range files {
		var p struct {
			Steps []struct {
				Timers []struct {
					What, Standing string
					Seconds        float64
				}
			}
		}
		if err := json.Unmarshal([]byte(readText(t, file)), &p); err != nil {
			t.Fatal(file, err)
		}
		for _, s := range p.Steps {
			for _, timer := range s.Timers {
				if timer.Standing != "estimated" {
					continue
				}
				if before, has := list[timer.What]; has && before != timer.Seconds {
					t.Errorf("%s: %s takes %v s, and %v elsewhere", file, timer.What, timer.Seconds, before)
				}
				list[timer.What] = timer.Seconds
			}
		}
	}
	return list
}

func agreements(t *testing.T) []agreed {
	wait := waits(t)
	half := []due.Reading{{Day: 0, Count: 0}, {Day: due.LeastDays, Count: 1000}}
	whole := []due.Reading{{Day: 0, Count: 0}, {Day: 365, Count: 1000}}
	part, _ := due.PaceOf(half)
	year, _ := due.PaceOf(whole)
	warm := 3 * oil.Density(oil.UsualDensity, 20) / oil.Density(oil.UsualDensity, 90)
	cold, hot := fmt.Sprint(drain.WarmLow), fmt.Sprint(drain.WarmHigh)
	begin := fill.Begin(1, fill.SpinOn, fill.OpenUp, false, false)
	return []agreed{
		{"how long the oil lamp may burn; common practice, no source", `oil lamp|[Pp]ressure shows|Start it for`, `(?:within|for) (?:about )?(\w+) seconds`, "five"},
		{"the first run at idle", `[Ii]dle .*seconds`, `\d+ to (\d+) seconds`, plainly(wait[plan.TimeIdle])},
		{"when leaks are looked for again", `leak|Look now and again`, `after (\w+) minutes`, numerals[int(wait[plan.TimeLeak])/60]},
		{"how long it runs until a leak shows; common practice, no source", `running|[Rr]un (it|the engine)`, `(one|two|three|four|five|ten) minutes(?: of running| outdoors| at idle|,)`, "three"},
		{"turns by hand that show a sound thread; common practice, no source", `by hand|turns free`, `(two|three|four|five) (?:full )?turns`, "three"},
		{"from what temperature oil is drained", `Below \d+ °C.*(warm|leaves dirt)`, `Below (\d+) °C`, cold},
		{"up to what temperature oil is drained", `(too hot|scalds|gloves).*\d`, `(?:Above|at) (\d+) °C`, hot},
		{"the share that is poured first", `seven|volume due; that share`, `(\w+ \w+) of the volume due`, share(fill.First(1))},
		{"the share that is kept back", `which the first pour leaves`, `(\w+ \w+) of the volume due`, share(1 - fill.First(1))},
		{"the share that is poured first, least", `that share is common practice`, `(\d+) to \d+ % of the volume due`, plainly(begin.Before.Low * 100)},
		{"the share that is poured first, most", `that share is common practice`, `\d+ to (\d+) % of the volume due`, plainly(begin.Before.High * 100)},
		{"from when on more was poured than asked", `more than the card asks, by`, `by more than (\w+ \w+)`, share(limit(0.001, func(n float64) bool { return fill.Compare(n, 1) == fill.Right }))},
		{"from when on less was poured than asked", `less than the card asks, by`, `by more than (\w+ \w+)`, share(limit(-0.001, func(n float64) bool { return fill.Compare(n, 1) == fill.Right }))},
		{"the size of the tray", `[Tt]ray, `, `(half as large again)`, share(fill.TrayFor(1))},
		{"where the level should stand, least", `the aim`, `the aim, (?:the )?(\w+) to`, map[bool]string{true: "middle"}[fill.AimLow == 0.5]},
		{"where the level should stand, most", `the aim`, `the aim, \w+ to (\w+ \w+)`, share(fill.AimHigh)},
		{"how wrong a reading may be", `leans so far`, `more than (\w+ \w+) of the band`, share(fill.Reliable)},
		{"warm oil takes more room", `Warm oil takes more room`, `are ([\d.]+) litres`, strconv.FormatFloat(warm, 'f', 2, 64)},
		{"how oil grows", `oil grows by`, `by ([\d.]+) of its volume`, plainly(fill.Rise(1, 0, 1))},
		{"from where on a torque wrench serves", `wrench is exact|of its scale: too coarse`, `(a \w+) of its scale`, share(1 / bolt.LongestScale(1))},
		{"how far a torque wrench may be off", `ISO 6789 allows`, `allows: (\d) %`, plainly(bolt.Deviation(100) * 100)},
		{"how far a small torque wrench may be off", `ISO 6789 allows`, `or (\d) % for wrenches up to 10`, plainly(bolt.Deviation(10) * 100)},
		{"where viscosities end, least", `lies beyond`, `beyond (-?\d+) to`, plainly(oil.LeastHeat)},
		{"where viscosities end, most", `lies beyond`, `to (\d+) °C`, plainly(oil.MostHeat)},
		{"how long readings must span", `foretold`, `readings, (a month|\w+ days) or more apart`, map[bool]string{true: "a month"}[due.LeastDays == 30]},
		{"the least spread of what is ridden, in a part of a year", `before a whole year`, `or (a \w+) before`, share(part.High/part.Middle - 1)},
		{"the least spread of what is ridden", `before a whole year`, `at least (a \w+)`, share(year.High/year.Middle - 1)},
		{"from when on a bill is told to be above the estimate", `Ask the customer`, `beyond (\d+) %`, plainly(100 * limit(0.001, func(n float64) bool { _, ask := quote.Exceeds(int(n*1e5), 1e5); return !ask }))},
		{"how many stages a job has", `Stage \{number\}`, `of (\d+)`, fmt.Sprint(len(plan.Stages))},
		{"how many stages a job has, in words", `stages`, `The (\w+) stages`, numerals[len(plan.Stages)]},
	}
}

// A figure that a sentence names is what the program reckons with, and the same in
// every sentence.
func TestAgree_FiguresInSentences(t *testing.T) {
	texts := everyWording(t)
	for _, a := range agreements(t) {
		about, figure, said := regexp.MustCompile(a.about), regexp.MustCompile(a.figure), 0
		for _, w := range texts {
			for _, s := range sentencesOf(w.words) {
				if !about.MatchString(s) {
					continue
				}
				for _, m := range figure.FindAllStringSubmatch(s, -1) {
					if said++; m[1] != a.want {
						t.Errorf("%s: %q says %q, and %s is %q", w.id, s, m[1], a.what, a.want)
					}
				}
			}
		}
		if said == 0 {
			t.Errorf("no sentence says %s: %q in %q", a.what, a.figure, a.about)
		}
	}
}

// differences are temperatures by which something differs.
var differences = []string{"bench.chart.warmer", "figure.thirty-degrees-more", "finding.readings-close"}

// ofScience are temperatures that belong to a standard or to a scale, and are read
// in °C everywhere.
var ofScience = []string{"*.hint", "figure.typical-at-*", "ask.run-out.at*", "method.*", "lookup.temperature-for", "finding.viscosity-out-of-range.do", "finding.oil-n*", "finding.cold-viscosity", "finding.cold-is-thicker", "calc.convert.why", "say.*"}

// A temperature that somebody reads off a thermometer is told in both scales, and
// both say the same.
func TestAgree_BothScalesOfTemperature(t *testing.T) {
	inBoth := regexp.MustCompile(`(-?\d+)(?:–(\d+))? °C( \((-?\d+)(?:–(\d+))? °F\))?`)
	seen := 0
	for _, w := range everyWording(t) {
		for _, m := range inBoth.FindAllStringSubmatch(w.words, -1) {
			if m[3] == "" {
				if !matchesAny(w.id, ofScience) && !strings.Contains(w.words, m[1]+" °C (") {
					t.Errorf("%s: %q stands without °F in %q", w.id, m[0], w.words)
				}
				continue
			}
			for _, n := range []int{1, 2} {
				if m[n] == "" {
					continue
				}
				celsius, _ := strconv.ParseFloat(m[n], 64)
				want := celsius * 9 / 5
				if !matchesAny(w.id, differences) {
					want += 32
				}
				if seen++; m[n+3] != plainly(math.Round(want)) {
					t.Errorf("%s: %q is %v °F", w.id, m[0], math.Round(want))
				}
			}
		}
	}
	if seen < 4 {
		t.Errorf("only %d temperatures were found", seen)
	}
}
