package job

import (
	"slices"

	"tidysump/internal/plan"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// Page is a job on one page, for one who knows: a line for each thing that was opened,
// for the oil and what it showed, for the gates, and for all the rest. Of a stage it is
// a line for each of its steps.
type Page struct {
	Lines []PageLine
	// Finished: the work was ended.
	Finished bool
}

// Members names the members of a page.
func (p *Page) Members(m *wire.Members) {
	wire.List(m, "lines", &p.Lines)
	m.Bool("finished", &p.Finished)
}

// PagePart is a section of a page.
type PagePart string

// The sections of a page, in their order. Of a stage all lines are in PageSteps.
const (
	PageOpened PagePart = "opened" // what was opened, and closed again
	PageOil    PagePart = "oil"    // out, in, level
	PageSeen   PagePart = "seen"   // what came out, dry or not, the odometer
	PageGates  PagePart = "gates"  // what has to be so before the bike is ridden
	PageRest   PagePart = "rest"   // all other steps
	PageSteps  PagePart = "steps"
)

// PageParts lists the sections.
var PageParts = []PagePart{PageOpened, PageOil, PageSeen, PageGates, PageRest, PageSteps}

// PageLine is a line of a page: a tick for the steps that it stands for, and what it
// asks.
type PageLine struct {
	ID     string
	Part   PagePart
	Word   string            // word id of its title
	Values map[string]string // that fill it
	Steps  []string          // ids of the steps that its tick says were done; empty where there is no tick
	Done   int               // how many of them were told
	// Figures are the card's.
	Figures []shown.Figure
	Asks    []PageAsk
	// Looks are ids of the steps at which all that came out is told, where it was
	// something.
	Looks []string

	implied []string // ids of further steps that its answers say were done
}

// Members names the members of a line.
func (l *PageLine) Members(m *wire.Members) {
	m.String("id", &l.ID, wire.Required)
	wire.Text(m, "part", &l.Part, wire.Required)
	m.String("word", &l.Word, wire.Required)
	m.TextMap("values", &l.Values)
	wire.Texts(m, "steps", &l.Steps)
	m.Int("done", &l.Done)
	wire.List(m, "figures", &l.Figures)
	wire.List(m, "asks", &l.Asks)
	wire.Texts(m, "looks", &l.Looks)
}

// AskSeen is what came out, which a page asks in one tap: AnswerNothing, nothing but
// dark oil.
const (
	AskSeen       = "seen"
	AnswerNothing = "nothing"
	answerOther   = "other" // told at a step that looks, and not offered
)

// PageAsk is something that a line asks: a reading of a step, or AskSeen.
type PageAsk struct {
	plan.Ask
	Step string // id of the step whose reading it is
	// Texts are what was told, in the person's units; of a volume the sum. Answer is the
	// choice that was told. Manners are word ids of how.
	Texts   []string
	Answer  string
	Manners []string

	ids []string // of the events that told it
}

// Members names the members of a question.
func (a *PageAsk) Members(m *wire.Members) {
	m.String("step", &a.Step)
	m.String("what", &a.What, wire.Required)
	m.String("of", &a.About)
	m.String("unit", &a.Unit)
	wire.Texts(m, "choice", &a.Choice)
	m.String("card", &a.Card)
	wire.Texts(m, "texts", &a.Texts)
	m.String("answer", &a.Answer)
	wire.Texts(m, "manners", &a.Manners)
}

// PageOf lays out the page of a job, or that of a stage of it.
func PageOf(p *plan.Plan, h *History, last *Trace, stage plan.Stage) *Page {
	r := replayed(p, h, last)
	return &Page{Lines: r.lines(stage), Finished: r.state.Finished != ""}
}

// lines gives the lines of a page, with what was told of each.
func (r *replayer) lines(stage plan.Stage) []PageLine {
	d := &drafter{replayer: r, taken: map[string]bool{}}
	if stage != "" {
		d.stage(stage)
	} else {
		d.whole()
	}
	for i := range d.list {
		l := &d.list[i]
		for _, id := range l.Steps {
			if r.done[id] != nil {
				l.Done++
			}
		}
		for k := range l.Asks {
			r.answered(l, &l.Asks[k])
		}
	}
	return d.list
}

// answered fills in what was told of a question.
func (r *replayer) answered(l *PageLine, a *PageAsk) {
	if a.What == AskSeen {
		r.seenAt(l, a)
		return
	}
	for i := range r.state.Readings {
		read := &r.state.Readings[i]
		sum := read.What == plan.AskPoured || read.What == plan.AskDrained
		if read.What != a.What || read.About != a.About || !sum && read.Step != a.Step {
			continue
		}
		if !sum {
			a.ids = nil
		}
		a.ids = append(a.ids, read.ID)
		a.Texts, a.Answer, a.Manners = read.Texts, read.Choice, read.Manners
	}
	if len(a.ids) < 2 {
		return
	}
	for i := range r.state.Oils {
		if b := &r.state.Oils[i]; b.Circuit == a.About {
			a.Manners = nil
			if a.Texts = b.Poured; a.What == plan.AskDrained {
				a.Texts = b.Drained
			}
		}
	}
}

// seenAt fills in what was seen at the steps of a line: nothing only where each of them
// was told of, and told of nothing.
func (r *replayer) seenAt(l *PageLine, a *PageAsk) {
	worst := AnswerNothing
	for i := range r.state.Looks {
		look := &r.state.Looks[i]
		if !slices.Contains(l.Looks, look.Step) {
			continue
		}
		if a.ids = append(a.ids, look.ID); !saysNothing(look.Signs) {
			worst = answerOther
		}
	}
	if len(a.ids) == len(l.Looks) || worst == answerOther {
		a.Answer = worst
	}
}
