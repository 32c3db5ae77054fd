package books

import (
	"cmp"
	"slices"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/calc"
	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// What the facts of torque wrenches say; their subject is a wrench.
const (
	wrenchTold ledger.FactKind = "wrench" // text: its name; signs: low, high, drive, graduation, tool
	// checked: at the bench, with the signs that the calculation wrench-check takes and its
	// readings, a line each; or what is checkedElsewhere, value the verdict, text by whom.
	// The sign "day" is the day, where it isn't the one it was told on.
	checked    ledger.FactKind = "checked"
	wrenchUsed ledger.FactKind = "used" // job; value: its day, where it isn't the one it was told on
)

// checkedElsewhere is what of a check that somebody else made, with a verdict of their own.
const checkedElsewhere = "elsewhere"

// Elsewhere are the verdicts that such a check may have.
var Elsewhere = []bolt.Trust{bolt.Within, bolt.Outside}

// What is believable of a wrench, in N·m, as in the calculation wrench-check.
const (
	leastScale, mostScale           = 0.1, 3000
	leastGraduation, mostGraduation = 0.001, 500
)

// How long a check holds: 12 months or 5,000 clicks, whichever comes first, where whoever
// owns the wrench has no rule of their own. ISO 6789:2003, as an article of a tool maker
// quotes it; the standard itself was not read. The clicks are not counted here: jobs are.
const checkMonths = 12

// WrenchInput is the book of torque wrenches.
type WrenchInput struct {
	ledger.Input
	System quantity.System
	Today  string
	// Torques are those of a job, as printed: each wrench says whether it serves for one
	// of them.
	Torques []string
}

// Members names the members.
func (i *WrenchInput) Members(m *wire.Members) {
	i.Input.Members(m)
	wire.Text(m, "system", &i.System)
	m.String("today", &i.Today)
	wire.Texts(m, "torques", &i.Torques)
}

// WrenchBook is the book of torque wrenches as it stands.
type WrenchBook struct {
	Wrenches []KeptWrench
	Findings []finding.Finding
}

// Members names the members.
func (a *WrenchBook) Members(m *wire.Members) {
	wire.List(m, "wrenches", &a.Wrenches)
	wire.Findings(m, "findings", &a.Findings)
}

// KeptWrench is a torque wrench with its checks and what they say of the jobs that it was
// used for.
type KeptWrench struct {
	ID, Name string
	Scale    []string          // in the person's units
	Drive    string            // as typed
	Signs    map[string]string // as typed, for a form
	State    string            // word id: whether it may be relied on
	Warns    bool              // the state says that it may not
	// Days since the last check that was decided, and the day by which the next is due;
	// empty where there was none.
	Checked string
	Days    int
	Due     string
	Uses    int // jobs since then
	Gone    bool
	Serves  bool // for one of the torques asked about
	Checks  []WrenchCheck
	Jobs    []string      // ids of all that it was used for
	Doubted []DoubtedWork // the earliest first

	high float64 // N·m; 0 where it isn't known
	low  float64
	told bool
	used []wrenchUse
}

// Members names the members.
func (w *KeptWrench) Members(m *wire.Members) {
	m.String("id", &w.ID, wire.Required)
	m.String("name", &w.Name)
	wire.Texts(m, "scale", &w.Scale)
	m.String("drive", &w.Drive)
	m.TextMap("signs", &w.Signs)
	m.String("state", &w.State, wire.Required)
	m.Bool("warns", &w.Warns)
	m.String("checked", &w.Checked)
	m.Int("days", &w.Days)
	m.String("due", &w.Due)
	m.Int("uses", &w.Uses)
	m.Bool("gone", &w.Gone)
	m.Bool("serves", &w.Serves)
	wire.List(m, "checks", &w.Checks)
	wire.Texts(m, "jobs", &w.Jobs)
	wire.List(m, "doubted", &w.Doubted)
}

// WrenchCheck is one check.
type WrenchCheck struct {
	ID      string // of the fact
	Day     string
	Verdict string // word id
	Figures []shown.Figure
	By      string // who made it, where it was somebody else

	day, order int
	trust      bolt.Trust
}

// Members names the members.
func (c *WrenchCheck) Members(m *wire.Members) {
	m.String("id", &c.ID, wire.Required)
	m.String("day", &c.Day, wire.Required)
	m.String("verdict", &c.Verdict)
	wire.List(m, "figures", &c.Figures)
	m.String("by", &c.By)
}

// DoubtedWork is a job that a wrench was used for which was wrong then, or may have been.
type DoubtedWork struct {
	Job, Day string
	Why      string // word id
	Found    string // day of the check that found it wrong
}

// Members names the members.
func (d *DoubtedWork) Members(m *wire.Members) {
	m.String("job", &d.Job, wire.Required)
	m.String("day", &d.Day, wire.Required)
	m.String("why", &d.Why, wire.Required)
	m.String("found", &d.Found)
}

// Doubt is why a job is doubted: the last part of a word id.
type Doubt string

// The reasons.
const (
	SinceGood  Doubt = "since-good"  // after its last good check, and before the one that found it wrong
	NeverGood  Doubt = "never-good"  // before it was found wrong, and it never had a good check
	AfterWrong Doubt = "after-wrong" // after it was found wrong, and before it was found right
)

// Doubts lists the reasons.
var Doubts = []Doubt{SinceGood, NeverGood, AfterWrong}

// WrenchState is whether a wrench may be relied on: the last part of a word id.
type WrenchState string

// The states.
const (
	NeverChecked WrenchState = "never"
	CheckedGood  WrenchState = "good"
	CheckDue     WrenchState = "due"
	FoundWrong   WrenchState = "wrong"
)

// WrenchStates lists the states.
var WrenchStates = []WrenchState{NeverChecked, CheckedGood, CheckDue, FoundWrong}

type wrenchUse struct {
	job        string
	day, order int
}

// wrenchBook is the book while it is read.
type wrenchBook struct {
	*book
	list []*KeptWrench
}

// Wrenches says of each wrench what its checks say, and which jobs are doubted for it.
func Wrenches(i *WrenchInput) *WrenchBook {
	b := &wrenchBook{book: open(&i.Input, ledger.WrenchBook, i.System, i.Today)}
	for order, f := range b.Standing {
		b.take(f, order)
	}
	slices.SortFunc(b.list, func(x, y *KeptWrench) int {
		return cmp.Or(strings.Compare(x.Name, y.Name), strings.Compare(x.ID, y.ID))
	})
	a := &WrenchBook{Findings: b.Findings}
	for _, w := range b.list {
		b.judge(w)
		w.Serves = !w.Gone && w.serves(i.Torques, i.System)
		a.Wrenches = append(a.Wrenches, *w)
	}
	return a
}

func (b *wrenchBook) wrenchOf(f *ledger.Fact) *KeptWrench {
	for _, w := range b.list {
		if w.ID == f.Of {
			return w
		}
	}
	w := &KeptWrench{ID: f.Of}
	b.list = append(b.list, w)
	return w
}

func (b *wrenchBook) take(f *ledger.Fact, order int) {
	switch f.Kind {
	case wrenchTold, checked, wrenchUsed, Gone:
	default:
		b.Unknown(f)
		return
	}
	w := b.wrenchOf(f)
	if f.Kind != wrenchTold && !w.told && f == b.New {
		b.refuse(f, "wrench-unknown", "/of")
	}
	switch f.Kind {
	case wrenchTold:
		b.describe(w, f)
	case checked:
		b.check(w, f, order)
	case wrenchUsed:
		b.use(w, f, order)
	case Gone:
		w.Gone = true
	}
}

func (b *wrenchBook) describe(w *KeptWrench, f *ledger.Fact) {
	w.told, w.Gone, w.Name, w.Signs, w.Drive = true, false, b.named(f), f.Signs, strings.TrimSpace(f.Signs["drive"])
	w.low, w.high, w.Scale = 0, 0, nil
	b.Short(f, "/signs/drive", f.Signs["drive"], ledger.ValueLetters)
	if tool := f.Signs["tool"]; tool != "" && !slices.Contains(bolt.Tools, tool) {
		b.refuse(f, "unknown-word", "/signs/tool", "text", finding.Clip(tool))
	}
	torque := func(name string, low, high float64) (quantity.Amount, bool) {
		if strings.TrimSpace(f.Signs[name]) == "" {
			return quantity.Amount{}, false
		}
		return b.ask(f, "/signs/"+name, f.Signs[name], quantity.Ask{Kind: quantity.Torque, Low: low, High: high})
	}
	torque("graduation", leastGraduation, mostGraduation)
	low, lowKnown := torque("low", leastScale, mostScale)
	high, ok := torque("high", leastScale, mostScale)
	switch {
	case strings.TrimSpace(f.Signs["high"]) == "":
		b.refuse(f, "missing", "/signs/high", "name", "@ask.wrench-check.high")
	case ok && lowKnown && low.Base >= high.Base:
		b.refuse(f, "range-reversed", "/signs/high", "value", low.Print(low.Unit))
	}
	if !ok {
		return
	}
	w.high, w.Scale = high.Base, high.Show(b.print.System)
	if lowKnown && low.Base < high.Base {
		w.low, w.Scale = low.Base, quantity.Between(low, high, b.print.System)
	}
}

// check takes a check in. One at the bench is judged here, whatever was told of it; what
// can't be judged says nothing.
func (b *wrenchBook) check(w *KeptWrench, f *ledger.Fact, order int) {
	c := WrenchCheck{ID: f.ID, order: order, day: b.dayOf(f, "/signs/day", f.Signs["day"])}
	c.Day = date.DayText(c.day)
	if f.What == checkedElsewhere {
		c.By = strings.TrimSpace(f.Text)
		b.Told(f, "/text", f.Text, "@books.checked-by")
		if c.trust = bolt.Trust(f.Value); !slices.Contains(Elsewhere, c.trust) {
			b.refuse(f, "unknown-word", "/value", "text", finding.Clip(f.Value))
			return
		}
		c.Verdict = "wrench-check." + f.Value
		w.Checks = append(w.Checks, c)
		return
	}
	typed := map[string]string{"high": w.Signs["high"], "tool": w.Signs["tool"], "graduation": w.Signs["graduation"]}
	for name, text := range f.Signs {
		if typed[name] == "" {
			typed[name] = text
		}
	}
	var readings []string
	for _, line := range strings.Split(f.Signs["readings"], "\n") {
		if strings.TrimSpace(line) != "" {
			readings = append(readings, line)
		}
	}
	by := quantity.System(f.Signs["system"])
	verdict, figures, list := calc.WrenchChecked(typed, readings, by, b.print.System)
	for _, found := range list {
		if found.Code != "mass-falls" { // is said before anybody checks
			member, _, _ := strings.Cut(strings.TrimPrefix(found.Where, "/"), "/")
			b.pass(f, "/signs/"+member, []finding.Finding{found})
		}
	}
	if finding.Refused(list) {
		return
	}
	if verdict == "" {
		b.refuse(f, "missing", "/signs/readings", "name", "@ask.wrench-check.readings")
		return
	}
	c.Verdict, c.Figures, c.trust = verdict, figures, bolt.Trust(strings.TrimPrefix(verdict, "wrench-check."))
	w.Checks = append(w.Checks, c)
}

func (b *wrenchBook) use(w *KeptWrench, f *ledger.Fact, order int) {
	if f.Job == "" {
		b.refuse(f, "missing", "/job", "name", "job")
		return
	}
	if slices.Contains(w.Jobs, f.Job) {
		return // told on two phones
	}
	w.Jobs = append(w.Jobs, f.Job)
	w.used = append(w.used, wrenchUse{f.Job, b.dayOf(f, "/value", f.Value), order})
}

// decides reports whether a check says that the wrench is right or wrong.
func (c *WrenchCheck) decides() bool { return c.trust == bolt.Within || c.trust == bolt.Outside }

// judge says what the checks mean for the wrench and for the jobs it was used for. Days
// come first, and on one day the order of the book: two phones number what they tell by
// themselves, and a job may be told of later than it was done.
func (b *wrenchBook) judge(w *KeptWrench) {
	slices.SortStableFunc(w.Checks, func(x, y WrenchCheck) int { return cmp.Or(cmp.Compare(x.day, y.day), cmp.Compare(x.order, y.order)) })
	slices.SortStableFunc(w.used, func(x, y wrenchUse) int { return cmp.Or(cmp.Compare(x.day, y.day), cmp.Compare(x.order, y.order)) })
	w.Jobs = nil
	for _, u := range w.used {
		w.Jobs = append(w.Jobs, u.job)
		before, after := w.around(u)
		switch {
		case before != nil && before.trust == bolt.Outside:
			w.doubt(u, AfterWrong, before)
		case after != nil && after.trust == bolt.Outside && before == nil:
			w.doubt(u, NeverGood, after)
		case after != nil && after.trust == bolt.Outside:
			w.doubt(u, SinceGood, after)
		}
	}
	state := b.stateOf(w)
	w.State, w.Warns = "wrench."+string(state), state == CheckDue || state == FoundWrong
}

// around gives the last check before a use and the first after it that decide; nil where
// there is none.
func (w *KeptWrench) around(u wrenchUse) (before, after *WrenchCheck) {
	for n := range w.Checks {
		c := &w.Checks[n]
		switch {
		case !c.decides():
		case cmp.Or(cmp.Compare(c.day, u.day), cmp.Compare(c.order, u.order)) < 0:
			before = c
		case after == nil:
			after = c
		}
	}
	return before, after
}

func (w *KeptWrench) doubt(u wrenchUse, why Doubt, by *WrenchCheck) {
	w.Doubted = append(w.Doubted, DoubtedWork{Job: u.job, Day: date.DayText(u.day), Why: "wrench-doubt." + string(why), Found: by.Day})
}

func (b *wrenchBook) stateOf(w *KeptWrench) WrenchState {
	var last *WrenchCheck
	for n := range w.Checks {
		if w.Checks[n].decides() {
			last = &w.Checks[n]
		}
	}
	if last == nil {
		return NeverChecked
	}
	due := date.AddMonths(last.day, checkMonths)
	w.Checked = last.Day
	if b.today > 0 {
		w.Days = max(0, b.today-last.day)
	}
	for _, u := range w.used {
		if cmp.Or(cmp.Compare(last.day, u.day), cmp.Compare(last.order, u.order)) < 0 {
			w.Uses++
		}
	}
	if last.trust == bolt.Outside {
		return FoundWrong
	}
	w.Due = date.DayText(due)
	if b.today >= due {
		return CheckDue
	}
	return CheckedGood
}

// serves reports whether the wrench may be set to one of the torques, as they are printed.
// Of a scale whose lower end isn't known only a fifth of the upper one counts.
func (w *KeptWrench) serves(torques []string, system quantity.System) bool {
	for _, text := range torques {
		q := quantity.Ask{Kind: quantity.Torque, System: system}
		low, high, ranged, list := q.ReadRange(text)
		if finding.Refused(list) {
			continue
		}
		at := low.Base
		if ranged {
			at = (low.Base + high.Base) / 2
		}
		if w.high > 0 && (bolt.Wrench{Low: w.low, High: w.high}).Sets(at) {
			return true
		}
	}
	return false
}
