package core

import (
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// planInput is a card and a bench, and of a job that has begun the ids of its steps.
type planInput struct {
	card  card.Card
	bench plan.Bench
	steps []string
}

func (i *planInput) Members(m *wire.Members) {
	m.Object("card", &i.card, wire.Required)
	m.Object("bench", &i.bench)
	wire.Texts(m, "steps", &i.steps)
}

// makePlan plans; read is what was found in reading the card, which is reported with
// what refuses it.
func makePlan(i *planInput, read []finding.Finding) (*plan.Plan, []finding.Finding) {
	c, list := card.Accept(&i.card)
	if c == nil {
		return nil, append(read, finding.Below("/card", list)...)
	}
	return plan.Resume(c, i.bench, i.steps)
}

// readPlan is makePlan for somebody who reads it.
func readPlan(i *planInput, read []finding.Finding) (*plan.Plan, []finding.Finding) {
	p, list := makePlan(i, read)
	if p != nil {
		p.LayPlate()
	}
	return p, list
}

// replayInput is a job: what it is planned from, and its events.
type replayInput struct {
	planInput
	job.History
	last *job.Past // on the same bike; nil where there is none
}

func (i *replayInput) Members(m *wire.Members) {
	i.planInput.Members(m)
	i.History.Members(m)
	wire.Optional(m, "last", &i.last)
}

func replay(i *replayInput, read []finding.Finding) (*job.State, []finding.Finding) {
	p, last, list := i.planned(read)
	if p == nil {
		return nil, list
	}
	return job.Replay(p, &i.History, last), nil
}

// planned gives the plan of a job, and what the last one left; no plan, and why, where
// it can't be used.
func (i *replayInput) planned(read []finding.Finding) (*plan.Plan, *job.Trace, []finding.Finding) {
	own, last := i.withoutLast(read)
	if finding.Refused(own) {
		return nil, nil, own
	}
	p, list := makePlan(&i.planInput, nil)
	return p, last, list
}

// withoutLast takes out what was found about the last job, and gives what that
// left; nil if it can't be used: it must not keep the one under way from going on.
func (i *replayInput) withoutLast(read []finding.Finding) (own []finding.Finding, last *job.Trace) {
	usable := i.last != nil
	for _, f := range read {
		if strings.HasPrefix(f.Where, "/last/") || f.Where == "/last" {
			usable = usable && f.Grade != finding.Refuse
		} else {
			own = append(own, f)
		}
	}
	if usable {
		last, _ = i.last.Recall()
	}
	return own, last
}

// billLinesAnswer are the lines proposed, and the counts that a bill takes from them
// and not from its estimate.
type billLinesAnswer struct {
	lines     []plan.Item
	recounted map[string]string
}

func (a *billLinesAnswer) Members(m *wire.Members) {
	wire.List(m, "lines", &a.lines)
	m.TextMap("recounted", &a.recounted)
}

// billLines proposes the lines of an estimate or bill of a job.
func billLines(i *replayInput, read []finding.Finding) (*billLinesAnswer, []finding.Finding) {
	s, list := replay(i, read)
	if s == nil {
		return nil, list
	}
	lines := s.BillLines()
	return &billLinesAnswer{lines, job.Recounted(lines)}, nil
}

// pageInput is a job, and the stage of it whose page is asked for; empty for that of the
// whole job.
type pageInput struct {
	replayInput
	stage plan.Stage
}

func (i *pageInput) Members(m *wire.Members) {
	i.replayInput.Members(m)
	wire.Text(m, "stage", &i.stage)
}

// jobPage lays a job out on one page.
func jobPage(i *pageInput, read []finding.Finding) (*job.Page, []finding.Finding) {
	p, last, list := i.planned(read)
	if p == nil {
		return nil, list
	}
	return job.PageOf(p, &i.History, last, i.stage), nil
}

// tellInput is what was filled in on a page, at the phone's time now.
type tellInput struct {
	pageInput
	told []job.Told
	now  string
}

func (i *tellInput) Members(m *wire.Members) {
	i.pageInput.Members(m)
	wire.List(m, "told", &i.told)
	m.String("now", &i.now, wire.Required)
}

// tellPage turns a filled-in page into events.
func tellPage(i *tellInput, read []finding.Finding) (*job.Telling, []finding.Finding) {
	p, last, list := i.planned(read)
	if p == nil {
		return nil, list
	}
	return job.Tell(p, &i.History, last, i.stage, i.told, i.now), nil
}
