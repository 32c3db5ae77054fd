package job

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/debris"
	"tidysump/internal/finding"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// Told is what was filled in on a page: the tick of a line, an answer to what it asks,
// or that the work is finished.
type Told struct {
	Line string // id of the line; TellFinish for the finish
	// What and About name the question; empty for the tick.
	What, About string
	// Value is as typed, or the choice; of a tick "yes" or "no". An empty answer, and a
	// tick that is taken away, takes back what was told.
	Value string
	// Manner is AsCard where the value is taken over from the card.
	Manner string
}

// TellFinish is the line that finishes the work.
const TellFinish = "finish"

// Members names what was filled in.
func (t *Told) Members(m *wire.Members) {
	m.String("line", &t.Line, wire.Required)
	m.String("what", &t.What)
	m.String("of", &t.About)
	m.String("value", &t.Value)
	m.String("manner", &t.Manner)
}

// Telling is what a filled-in page comes to: the events to write, none where something
// was refused, and what was found, with places below "/told".
type Telling struct {
	Events   []Event // without id, time and place in the job
	Findings []finding.Finding
}

// Members names the members of a telling.
func (t *Telling) Members(m *wire.Members) {
	wire.List(m, "events", &t.Events)
	wire.Findings(m, "findings", &t.Findings)
}

// teller collects the events of a page.
type teller struct {
	*replayer
	lines  []PageLine
	events []tellingEvent
	wrong  []finding.Finding
}

// tellingEvent is an event with the place of what told it, and its own in the order of
// the plan: what takes back first, and of a step the readings before that it is done.
type tellingEvent struct {
	Event
	from, rank int
}

// Tell turns what was filled in on a page, or on that of a stage, into the events that
// step by step would have written, told afterwards. now is the phone's time, with which
// they are judged.
func Tell(p *plan.Plan, h *History, last *Trace, stage plan.Stage, told []Told, now string) *Telling {
	r := replayed(p, h, last)
	t := &teller{replayer: r, lines: r.lines(stage)}
	for i := range told {
		t.take(i, &told[i])
	}
	slices.SortStableFunc(t.events, func(x, y tellingEvent) int { return x.rank - y.rank })
	answer := &Telling{Findings: t.wrong}
	tried := *h
	tried.Events = slices.Clone(h.Events)
	for i := range t.events {
		e := t.events[i].Event
		answer.Events = append(answer.Events, e)
		e.ID, e.Time, e.Seq = "told-"+strconv.Itoa(i), now, len(h.Events)+1+i
		tried.Events = append(tried.Events, e)
	}
	if tried.Adding, tried.fresh = len(t.events) > 0, len(t.events); tried.Adding {
		answer.Findings = append(answer.Findings, t.found(Replay(p, &tried, last), len(h.Events))...)
	}
	if finding.Refused(answer.Findings) {
		answer.Events = nil
	}
	return answer
}

// found gives the findings about the new events, at the places of what told them.
func (t *teller) found(s *State, before int) []finding.Finding {
	var list []finding.Finding
	for _, f := range s.Findings {
		place, member, _ := strings.Cut(strings.TrimPrefix(f.Where, "/events/"), "/")
		n, err := strconv.Atoi(place)
		if n -= before; err != nil || n < 0 || n >= len(t.events) {
			continue
		}
		if f.Where = t.where(t.events[n].from, ""); member == "value" {
			f.Where += "/value"
		}
		list = append(list, f)
	}
	return list
}

func (t *teller) where(at int, member string) string { return "/told/" + strconv.Itoa(at) + member }

func (t *teller) refuse(at int, code, member, text string) {
	t.wrong = append(t.wrong, finding.Finding{Code: code, Grade: finding.Refuse, Where: t.where(at, member),
		Values: finding.Values("text", finding.Clip(text))})
}

// take turns one thing that was filled in into its events.
func (t *teller) take(at int, told *Told) {
	if told.Line == TellFinish {
		if t.state.Finished == "" {
			t.add(at, 1<<30, Event{Kind: Finish})
		}
		return
	}
	n := slices.IndexFunc(t.lines, func(l PageLine) bool { return l.ID == told.Line })
	if n < 0 {
		t.refuse(at, "unknown-word", "/line", told.Line)
		return
	}
	l := &t.lines[n]
	if told.What == "" {
		t.tick(at, l, told.Value)
		return
	}
	for k := range l.Asks {
		if a := &l.Asks[k]; a.What == told.What && a.About == told.About {
			t.answer(at, l, a, told)
			return
		}
	}
	t.refuse(at, "not-asked", "/what", told.What)
}

// tick says that the steps of a line were done, or takes it back.
func (t *teller) tick(at int, l *PageLine, value string) {
	switch value {
	case debris.Yes:
		t.done(at, l.Steps)
	case debris.No:
		for _, id := range l.Steps {
			if e := t.replayer.done[id]; e != nil {
				t.takeBack(at, e.ID)
			}
		}
	default:
		t.refuse(at, "unknown-word", "/value", value)
	}
}

// answer takes the answer to a question in, in place of what was told before.
func (t *teller) answer(at int, l *PageLine, a *PageAsk, told *Told) {
	value, manner := strings.TrimSpace(told.Value), Afterwards
	switch {
	case told.Manner == AsCard && a.Card != "":
		value, manner = a.Card, AsCard+" "+Afterwards
	case told.Manner == AsCard:
		t.refuse(at, "unknown-word", "/manner", told.Manner)
		return
	}
	if a.What == AskSeen && value != "" && value != AnswerNothing {
		t.refuse(at, "unknown-word", "/value", value)
		return
	}
	for _, id := range a.ids {
		t.takeBack(at, id)
	}
	if value == "" {
		return
	}
	if a.What == AskSeen {
		for _, id := range l.Looks {
			t.add(at, t.rank(id, 0), Event{Kind: Saw, Step: id, Signs: nothingAt(t.plan.Step(id)), Manner: In(Afterwards)})
		}
		t.done(at, l.Looks)
		return
	}
	t.add(at, t.rank(a.Step, 0), Event{Kind: Reading, Step: a.Step, What: a.What, About: a.About, Value: value, Manner: In(manner)})
	t.done(at, l.Steps)
	t.done(at, l.implied)
}

// done says that steps were done, each once.
func (t *teller) done(at int, ids []string) {
	for _, id := range ids {
		again := slices.ContainsFunc(t.events, func(e tellingEvent) bool { return e.Kind == Done && e.Step == id })
		if t.replayer.done[id] == nil && !again {
			t.add(at, t.rank(id, 1), Event{Kind: Done, Step: id, Manner: In(Afterwards)})
		}
	}
}

// takeBack takes an event back, once.
func (t *teller) takeBack(at int, id string) {
	if !slices.ContainsFunc(t.events, func(e tellingEvent) bool { return e.Kind == Undo && e.About == id }) {
		t.add(at, -1, Event{Kind: Undo, About: id})
	}
}

func (t *teller) add(at, rank int, e Event) {
	t.events = append(t.events, tellingEvent{e, at, rank})
}

// rank is the place of an event of a step in the order of the plan.
func (t *teller) rank(step string, nth int) int {
	return 2*slices.IndexFunc(t.plan.Steps, func(s plan.Step) bool { return s.ID == step }) + nth
}

// nothingAt are the signs of a look at which nothing but dark oil was seen.
func nothingAt(s *plan.Step) map[string]string {
	signs := map[string]string{}
	for _, name := range s.Signs {
		if sign := nothingSeen(name); sign != "" {
			signs[name] = sign
		}
	}
	return signs
}

// nothingSeen is the answer to a question of a look at nothing but dark oil; empty where
// it isn't asked then.
func nothingSeen(name string) string {
	switch name {
	case "found":
		return debris.Bits[debris.Nothing-1]
	case "oil":
		return debris.Oils[debris.Dark-1]
	}
	return ""
}

// saysNothing reports whether a look told of nothing but dark oil.
func saysNothing(signs map[string]string) bool {
	for name, sign := range signs {
		if nothingSeen(name) != sign {
			return false
		}
	}
	return len(signs) > 0
}
