package core

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// surveyInput are many jobs, and the cards that they are planned from.
type surveyInput struct {
	cards  []card.Card
	jobs   []surveyed
	rows   bool
	system quantity.System
}

func (i *surveyInput) Members(m *wire.Members) {
	wire.List(m, "cards", &i.cards)
	wire.List(m, "jobs", &i.jobs)
	m.Bool("rows", &i.rows)
	wire.Text(m, "system", &i.system)
}

// surveyed is a job by the place of its card among the cards.
type surveyed struct {
	card  int
	bench plan.Bench
	steps []string
	job.History

	unread []finding.Finding // why it can't be used; empty where it was read
}

func (j *surveyed) Members(m *wire.Members) {
	m.Lenient()
	m.Int("card", &j.card)
	m.Object("bench", &j.bench)
	wire.Texts(m, "steps", &j.steps)
	j.History.Members(m)
}

// Unread notes that the job couldn't be read.
func (j *surveyed) Unread(found []finding.Finding) { j.unread = found }

// surveyAnswer has an answer for each job, in their order.
type surveyAnswer struct{ jobs []surveyedAnswer }

func (a *surveyAnswer) Members(m *wire.Members) { wire.List(m, "jobs", &a.jobs) }

// surveyedAnswer is what lists show of a job, nil where it can't be worked out, and
// what is wrong with it.
type surveyedAnswer struct {
	summary  *job.Summary
	row      *job.TableRow
	findings []finding.Finding
}

func (a *surveyedAnswer) Members(m *wire.Members) {
	wire.Optional(m, "summary", &a.summary)
	wire.Optional(m, "row", &a.row)
	wire.Findings(m, "findings", &a.findings)
}

// mostSurveyed is how many jobs a call may have: a phone works on them for a second
// or two. mostPlans is how many of their plans are kept at a time.
const (
	mostSurveyed = 2000
	mostPlans    = 50
)

// unreadShown is how many of a job's events that can't be read are told.
const unreadShown = 5

// surveyJobs replays many jobs for what lists and tables show of them. What is wrong
// with one is told of it and keeps no other from being shown.
func surveyJobs(i *surveyInput, read []finding.Finding) (*surveyAnswer, []finding.Finding) {
	system, list := systemOf(i.system)
	unread, rest := sortByCard(read)
	if list = append(rest, list...); finding.Refused(list) {
		return nil, list
	}
	if len(i.jobs) > mostSurveyed {
		return nil, finding.Refusal("too-many-jobs", "/jobs", "most", strconv.Itoa(mostSurveyed))
	}
	s := &survey{accepted: make([]*card.Checked, len(i.cards)), refused: unread, plans: map[string]planned{}}
	for n := range i.cards {
		if !finding.Refused(unread[n]) {
			s.accepted[n], list = card.Accept(&i.cards[n])
			unread[n] = finding.Below("/cards/"+strconv.Itoa(n), list)
		}
	}
	a := &surveyAnswer{jobs: make([]surveyedAnswer, len(i.jobs))}
	for n := range i.jobs {
		at, answer := "/jobs/"+strconv.Itoa(n), &a.jobs[n]
		var state *job.State
		if state, answer.findings = s.replay(&i.jobs[n], at); state == nil {
			continue
		}
		answer.summary = &state.Summary
		if i.rows {
			answer.row = state.Row(system)
		}
	}
	return a, nil
}

// survey are the cards of a call, each nil where it is refused, and the plans made of
// them so far.
type survey struct {
	accepted []*card.Checked
	refused  map[int][]finding.Finding
	plans    map[string]planned
}

// planned is a plan, nil where the bench is refused.
type planned struct {
	plan    *plan.Plan
	refused []finding.Finding
}

// planOf plans a job, once for all that have the same card, bench and steps.
func (s *survey) planOf(j *surveyed) planned {
	key := strings.Join(append(j.steps, strconv.Itoa(j.card), string(wire.Write(&j.bench))), "\n")
	p, known := s.plans[key]
	if !known {
		p.plan, p.refused = plan.Resume(s.accepted[j.card], j.bench, j.steps)
		if len(s.plans) == mostPlans {
			clear(s.plans)
		}
		s.plans[key] = p
	}
	return p
}

// replay works a job out that stands at that place, nil where it can't be, and says
// what is wrong with it.
func (s *survey) replay(j *surveyed, at string) (*job.State, []finding.Finding) {
	switch {
	case j.unread != nil:
		return nil, finding.Below(at, j.unread)
	case j.card < 0 || j.card >= len(s.accepted):
		return nil, finding.Refusal("card-not-given", at+"/card", "text", strconv.Itoa(j.card))
	case s.accepted[j.card] == nil:
		return nil, s.refused[j.card]
	}
	p := s.planOf(j)
	if p.plan == nil {
		return nil, finding.Below(at, slices.Clone(p.refused))
	}
	state := job.Replay(p.plan, &j.History, nil)
	var unread []finding.Finding
	for _, f := range state.Findings {
		if f.Code == "event-unread" && len(unread) < unreadShown {
			unread = append(unread, f)
		}
	}
	return state, finding.Below(at, unread)
}
