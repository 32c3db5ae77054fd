package plan_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/shown"
	"tidysump/specs"
)

// The order in which nobody is hurt and nothing is spoilt, over every card and bench.
// Common practice, no source.

var sentences = specs.Sentences()

func at(p *plan.Plan, word string) int {
	return slices.IndexFunc(p.Steps, func(s plan.Step) bool { return s.Word == "step."+word })
}

// said is all that a step says: its texts, its cautions, and the words in its values.
func said(s *plan.Step) string {
	ids := []string{s.Word, s.Word + ".do", s.Word + ".why"}
	for _, w := range s.Warns {
		ids = append(ids, w.Word, w.Word+".more")
	}
	for _, v := range s.Values {
		if word, is := strings.CutPrefix(v, "@"); is {
			ids = append(ids, word)
		}
	}
	slices.Sort(ids)
	var text strings.Builder
	for _, id := range ids {
		text.WriteString(sentences[id] + "\n")
	}
	return text.String()
}

// Nothing is covered, chocked, strapped, taken off or opened while the engine still has
// to run or the bike to be moved; but a level may be looked at, and is closed at once.
func TestMake_NothingIsSecuredBeforeTheKeyIsOut(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		if p.GetHome() {
			return
		}
		key := max(at(p, "key-out"), at(p, "cool-down"))
		for i := range p.Steps[:key+1] {
			s := &p.Steps[i]
			if slices.Contains([]string{"step.stand", "step.guard", "step.wash", "step.name-plugs"}, s.Word) || len(s.Opens) > 0 && s.Word != "step.peek-off" {
				t.Errorf("%s: %s comes before the key is out", c.ID, s.ID)
			}
			if s.Word == "step.peek-off" && !slices.ContainsFunc(p.Steps[i:key], func(on plan.Step) bool { return slices.Equal(on.Closes, s.Opens) }) {
				t.Errorf("%s: %s is not closed before the key is out", c.ID, s.ID)
			}
		}
		for i := key; i < at(p, "covers-off"); i++ {
			if p.Steps[i].Runs {
				t.Errorf("%s: the engine runs at %s, with the plugs out or the covers on", c.ID, p.Steps[i].ID)
			}
		}
		for i, word := range []string{"guard", "name-plugs", "tray"} {
			if word == "tray" && at(p, word) < 0 {
				word = "tray-unknown"
			}
			if len(p.Circuits()) > 0 && (at(p, word) < key || i > 0 && at(p, word) < at(p, "guard")) {
				t.Errorf("%s: %s is step %d of %v", c.ID, word, at(p, word), idsOf(p))
			}
		}
	})
}

var aboutCovers = regexp.MustCompile(`(?i)\bcover(ed|s)?\b[^.:]*\b(both|tyre|disc|brake|wheel|exhaust)\b`)

// What was covered is uncovered before the first start, by the same count; and nothing
// later asks to cover it again.
func TestMake_CoversComeOffBeforeAnythingRuns(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		if p.GetHome() {
			return
		}
		on, off := at(p, "guard"), at(p, "covers-off")
		if on < 0 || off < on || len(p.Steps[on].Tally) == 0 || len(p.Steps[on].Tally) != len(p.Steps[off].Tally) {
			t.Errorf("%s: covered at %d, uncovered at %d of %v", c.ID, on, off, idsOf(p))
			return
		}
		for i, item := range p.Steps[on].Tally {
			if other := p.Steps[off].Tally[i]; item.Word != other.Word || item.Count != other.Count {
				t.Errorf("%s: covered is %+v, uncovered %+v", c.ID, item, other)
			}
		}
		for i := off + 1; i < len(p.Steps); i++ {
			if text := aboutCovers.FindString(said(&p.Steps[i])); text != "" {
				t.Errorf("%s: %s says %q after the covers came off", c.ID, p.Steps[i].ID, text)
			}
		}
	})
	if !aboutCovers.MatchString(sentences["caution.oil-on-tyre"]) {
		t.Error("the test does not know a sentence that asks to cover the tyre")
	}
}

// Whoever chocked or strapped the bike is told to free it before the ride.
func TestMake_ChocksComeAway(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		if ride := at(p, "ride"); ride >= 0 && warns(&p.Steps[ride], "chock-off") != (at(p, "stand") >= 0) {
			t.Errorf("%s: stands chocked %v, warned at the ride %+v", c.ID, at(p, "stand") >= 0, p.Steps[ride].Warns)
		}
	})
}

// Nobody rides before somebody looked for leaks, after the engine had run where it runs
// at all; the panel goes on after that look.
func TestMake_NoRideBeforeTheLookForLeaks(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		leak := at(p, "leak-look")
		for i := range p.Steps {
			s := &p.Steps[i]
			if rides := s.Word == "step.ride" || s.Word == "step.ride-home"; rides && (leak < 0 || i < leak) || s.Word == "step.panel-on" && i < leak {
				t.Errorf("%s: %s is step %d, the look for leaks %d", c.ID, s.ID, i, leak)
			}
		}
		for _, word := range []string{"first-start", "second-start"} {
			if at(p, word) > leak {
				t.Errorf("%s: %s comes after the look for leaks", c.ID, word)
			}
		}
		if at(p, "top-up") > at(p, "ride") && at(p, "first-start") < 0 && at(p, "second-start") < 0 {
			t.Errorf("%s: ridden before the engine ran at idle: %v", c.ID, idsOf(p))
		}
	})
}

// A level that is read hot is only looked at before the ride, with what to keep back;
// the reading that counts comes after it. So no cover on a paper gasket is opened for
// the first look.
func TestMake_HotLevelCountsAfterTheRide(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for _, r := range p.Circuits() {
			if r.Level.State != card.Hot || r.Level.Device == card.Gaugeless || p.GetHome() {
				continue
			}
			step := func(word string) int {
				return slices.IndexFunc(p.Steps, func(s plan.Step) bool { return s.ID == word+"-"+r.ID })
			}
			interim, counts := step("level-interim"), step("top-up")
			if counts < at(p, "ride") || interim < 0 != onPaper(p, r.ID) || interim > at(p, "leak-look") {
				t.Errorf("%s: looked at in step %d, read in step %d of %v", c.ID, interim, counts, idsOf(p))
			}
			if interim < 0 {
				continue
			}
			s := &p.Steps[interim]
			keep := slices.IndexFunc(s.Figures, func(f shown.Figure) bool { return f.Name == "figure.keep-back" })
			if !s.Interim || keep < 0 {
				t.Errorf("%s: nothing is kept back at %s: %+v", c.ID, s.ID, s.Figures)
				continue
			}
			_, volume := p.Volume(r).Amount()
			_, band := r.Level.Band.Amount()
			if f := s.Figures[keep]; f.Standing == card.Unknown == (volume || band) || f.Standing != card.Unknown && (f.Standing != card.Estimated || f.Method == "") {
				t.Errorf("%s: kept back is %+v; volume known %v, band known %v", c.ID, f, volume, band)
			}
		}
	})
}

// onPaper reports whether the level of a circuit is read through a cover on a paper
// gasket, which nothing else opened.
func onPaper(p *plan.Plan, circuit string) bool {
	return slices.ContainsFunc(p.Card().Bolts, func(b card.Bolt) bool {
		drained := slices.ContainsFunc(p.Steps, func(s plan.Step) bool { return s.Stage == plan.Drain && slices.Contains(s.Opens, b.ID) })
		return b.Purpose == card.LevelScrew && b.Circuit == circuit && b.Seal != nil && b.Seal.Kind == card.Paper && !drained
	})
}

// A cover on a paper gasket is opened once. An oil that is poured through it and read
// after a run can't do with that: it is closed for the run, and opened again to read.
func TestMake_PaperGasketIsOpenedOnce(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for i := range c.Bolts {
			b := &c.Bolts[i]
			if b.Seal == nil || b.Seal.Kind != card.Paper || b.Purpose == card.FillerCap {
				continue
			}
			times := 0
			for k := range p.Steps {
				if slices.Contains(p.Steps[k].Opens, b.ID) {
					times++
				}
			}
			r := c.Circuit(b.Circuit)
			pouredThrough := r != nil && (r.Role == card.EngineOil || r.Level.State == card.Hot || r.Level.State == card.Warm) && !hasFiller(c, b.Circuit)
			if times > 1 && !(pouredThrough && times == 2) {
				t.Errorf("%s: %s on a paper gasket is opened %d times: %v", c.ID, b.ID, times, idsOf(p))
			}
		}
	})
}

func hasFiller(c *card.Card, circuit string) bool {
	return slices.ContainsFunc(c.Bolts, func(b card.Bolt) bool { return b.Purpose == card.FillerCap && b.Circuit == circuit })
}

// The can is closed right after an oil was measured, and children are thought of there.
func TestMake_CanIsClosedAtOnce(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		cans := 0
		for i := range p.Steps {
			if p.Steps[i].Word != "step.measure" {
				continue
			}
			cans++
			if next := &p.Steps[i+1]; next.Word != "step.close-can" || !warns(next, "children") || !next.Must {
				t.Errorf("%s: after %s comes %+v", c.ID, p.Steps[i].ID, next)
			}
		}
		if !p.GetHome() && cans != len(p.Circuits()) {
			t.Errorf("%s: %d cans are closed for %d oils", c.ID, cans, len(p.Circuits()))
		}
	})
}

// Whoever is told to use cleaner or solvent is warned of it there.
func TestMake_CleanersAreWarnedOfWhereTheyAreUsed(t *testing.T) {
	used := map[string]bool{}
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for i := range p.Steps {
			s := &p.Steps[i]
			do := strings.ToLower(sentences[s.Word+".do"])
			if strings.Contains(do, "cleaner") {
				used["cleaner"] = true
				if !warns(s, "cleaner-fire") || !warns(s, "cleaner-chlorine") {
					t.Errorf("%s: %s uses cleaner, warned of %+v", c.ID, s.ID, s.Warns)
				}
			}
			if strings.Contains(do, "solvent") {
				used["solvent"] = true
				if !warns(s, "solvent") {
					t.Errorf("%s: %s uses solvent, warned of %+v", c.ID, s.ID, s.Warns)
				}
			}
		}
	})
	if len(used) != 2 {
		t.Errorf("steps use only %v", used)
	}
}

var ofTheGarage = regexp.MustCompile(`(?i)\bchock\b|\bstrap (it|the|them|down)\b|\bwarm it up\b`)

// At the roadside one gets away from the traffic first, and is asked for nothing that
// can't be done there; the engine was just ridden, and cools before it is opened.
func TestMake_Roadside(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		if at(p, "traffic") < 0 {
			if !slices.ContainsFunc(p.Steps, func(s plan.Step) bool { return s.Word == "step.stand" || s.Word == "step.cool-down" }) {
				t.Errorf("%s: neither at the roadside nor in a garage: %v", c.ID, idsOf(p))
			}
			return
		}
		if at(p, "traffic") != 0 || !warns(&p.Steps[0], "traffic") {
			t.Errorf("%s: away from the traffic is step %d", c.ID, at(p, "traffic"))
		}
		for _, word := range []string{"stand", "wash", "warm-up", "lean"} {
			if at(p, word) >= 0 {
				t.Errorf("%s: %s at the roadside", c.ID, word)
			}
		}
		cool := at(p, "cool-down")
		for i := range p.Steps {
			s := &p.Steps[i]
			if text := ofTheGarage.FindString(said(s)); text != "" {
				t.Errorf("%s: %s says %q at the roadside", c.ID, s.ID, text)
			}
			if len(s.Opens) > 0 && s.Word != "step.peek-off" && i < cool {
				t.Errorf("%s: %s comes before it has cooled", c.ID, s.ID)
			}
			for _, w := range s.Warns {
				if w.Word == "caution.hot-oil" && w.Signal != plan.Warning {
					t.Errorf("%s: hot oil at %s is a %s", c.ID, s.ID, w.Signal)
				}
			}
		}
	})
}

var leans = regexp.MustCompile(`(?i)\blean(s|ing|ed)?\b`)

// Nobody is told to lean the bike but who has help, and then at a step of its own.
func TestMake_LeanOnlyWithHelp(t *testing.T) {
	for id, sentence := range sentences {
		if strings.HasPrefix(id, "step.") && !strings.HasPrefix(id, "step.lean") && leans.MatchString(sentence) {
			t.Errorf("%s speaks of leaning: %s", id, sentence)
		}
	}
	c := plantest.Sample(t, "tessaly-corda-570")
	for helped, want := range map[bool]bool{false: false, true: true} {
		p, _ := plantest.Made(c, plan.Bench{Helper: helped})
		if got := at(p, "lean") > at(p, "run-out"); got != want {
			t.Errorf("helped %v: leans %v", helped, got)
		}
	}
}

// No note of a card is lost in any plan, and each stands at its moment where the job has
// it: on the step, or else on the last step of an earlier moment.
func TestMake_NoNoteIsLost(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		shown := map[string]int{}
		for i := range p.Steps {
			for _, n := range p.Steps[i].Notes {
				shown[n]++
			}
		}
		for _, n := range c.Notes {
			if !slices.Contains(p.Steps[0].Notes, n) {
				t.Errorf("%s: %q is not at the first step", c.ID, n)
			}
		}
		for _, n := range c.NotesAt {
			if shown[n.Text] == 0 {
				t.Errorf("%s: the note at %s is lost: %q", c.ID, n.At, n.Text)
			}
			// Each opening that drains shows it, or comes right after one that does.
			drains := func(k int) bool {
				return k >= 0 && slices.ContainsFunc(p.Steps[k].Opens, func(id string) bool { return p.Card().Bolt(id).Drains && p.Card().Bolt(id).Purpose != card.Panel })
			}
			for k := range p.Steps {
				if n.At == card.AtDrain && drains(k) && !drains(k-1) && !slices.Contains(p.Steps[k].Notes, n.Text) {
					t.Errorf("%s: %q is not at %s", c.ID, n.Text, p.Steps[k].ID)
				}
			}
			if s := at(p, "first-start"); n.At == card.AtFirstStart && s >= 0 && !slices.Contains(p.Steps[s].Notes, n.Text) {
				t.Errorf("%s: %q is not at the first start", c.ID, n.Text)
			}
		}
	})
}

// Of a lamp that the engine doesn't have nothing speaks but what says that there is none.
func TestMake_NoLampIsNotSpokenOf(t *testing.T) {
	spoken := 0
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		for i := range p.Steps {
			text := strings.ReplaceAll(said(&p.Steps[i]), sentences["start.no-lamp"], "")
			if !strings.Contains(text, "oil lamp") {
				continue
			}
			if spoken++; c.Engine.NoLamp {
				t.Errorf("%s has no oil lamp, and %s says: %s", c.ID, p.Steps[i].ID, text)
			}
		}
	})
	if spoken == 0 {
		t.Error("no step speaks of the oil lamp")
	}
}

// What the card says of lamp, return and neutral is what the first start says.
func TestMake_FirstStartFitsTheEngine(t *testing.T) {
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		i := at(p, "first-start")
		if i < 0 {
			return
		}
		s := &p.Steps[i]
		if warns(s, "oil-lamp") == c.Engine.NoLamp {
			t.Errorf("%s: no lamp %v, warned of it %v", c.ID, c.Engine.NoLamp, warns(s, "oil-lamp"))
		}
		text := said(s)
		if strings.Contains(text, "in neutral") == c.Engine.NoNeutral {
			t.Errorf("%s: no neutral %v: %s", c.ID, c.Engine.NoNeutral, text)
		}
		if strings.Contains(text, "return") != c.Engine.ReturnSeen {
			t.Errorf("%s: return seen %v: %s", c.ID, c.Engine.ReturnSeen, text)
		}
	})
}

// The short form drains nothing, opens only where oil is poured in, and ends at home.
func TestMake_GetHome(t *testing.T) {
	seen := 0
	everyPlan(t, func(t plantest.Reporter, c *card.Card, p *plan.Plan) {
		if !p.GetHome() {
			return
		}
		if len(p.Circuits()) == 0 {
			return // nothing is chosen, and nothing topped up
		}
		seen++
		last := -1
		for _, word := range []string{"identify", "cool-down", "leak-find", "top-up-home", "first-start", "leak-look", "ride-home", "write-down"} {
			if at(p, word) <= last {
				t.Errorf("%s: %s is step %d of %v", c.ID, word, at(p, word), idsOf(p))
			}
			last = at(p, word)
		}
		for i := range p.Steps {
			s := &p.Steps[i]
			for _, id := range s.Opens {
				if b := p.Card().Bolt(id); b.Drains || b.Purpose != card.FillerCap && b.Purpose != card.LevelScrew {
					t.Errorf("%s: %s opens %s", c.ID, s.ID, id)
				}
			}
			if s.Pours != "" || s.Stage == plan.Drain || len(s.Signs) > 0 {
				t.Errorf("%s: %s belongs to an oil change", c.ID, s.ID)
			}
		}
		for _, o := range p.Oils {
			if o.Today {
				t.Errorf("%s: %s is changed on the way home", c.ID, o.Circuit)
			}
		}
	})
	if seen < 50 {
		t.Errorf("only %d ways home", seen)
	}
}
