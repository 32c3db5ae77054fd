package core

import (
	"slices"
	"strconv"

	"tidysump/internal/calendar"
	"tidysump/internal/csv"
	"tidysump/internal/date"
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/outlook"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// systemOf gives the system of units that was asked for, metric where none was,
// and what refuses one that there is none of.
func systemOf(asked quantity.System) (quantity.System, []finding.Finding) {
	switch {
	case asked == "":
		return quantity.Metric, nil
	case slices.Contains(quantity.Systems, asked):
		return asked, nil
	}
	return "", finding.Refusal("unknown-word", "/system", "text", finding.Clip(string(asked)))
}

// dueInput is the record of a bike: its jobs, the newest last.
type dueInput struct {
	system quantity.System
	today  string
	jobs   []job.Past
	read   []due.OdometerReading // what the odometer showed between them
}

func (i *dueInput) Members(m *wire.Members) {
	wire.Text(m, "system", &i.system)
	m.String("today", &i.today)
	wire.List(m, "jobs", &i.jobs)
	wire.List(m, "read", &i.read)
}

// dueAgain says when the oils of a bike are due, from its jobs.
func dueAgain(i *dueInput, _ []finding.Finding) (*outlook.Outlook, []finding.Finding) {
	system, list := systemOf(i.system)
	if list != nil {
		return nil, list
	}
	today, ok := date.ReadDay(i.today)
	if !ok {
		return nil, finding.Refusal("bad-day", "/today", "text", finding.Clip(i.today))
	}
	return outlook.Foresee(i.jobs, i.read, today, system), nil
}

// textAnswer is a file for another program.
type textAnswer struct{ text string }

func (a *textAnswer) Members(m *wire.Members) { m.String("text", &a.text) }

// calendarInput are days to remember; the sentences are the page's.
type calendarInput struct {
	stamp, maker string
	entries      []calendarEntry
}

func (i *calendarInput) Members(m *wire.Members) {
	m.String("stamp", &i.stamp, wire.Required)
	m.String("maker", &i.maker)
	wire.List(m, "entries", &i.entries, wire.Required)
}

// calendarEntry is one day to remember.
type calendarEntry struct{ uid, day, summary, description string }

func (e *calendarEntry) Members(m *wire.Members) {
	m.String("uid", &e.uid, wire.Required)
	m.String("day", &e.day, wire.Required)
	m.String("summary", &e.summary, wire.Required)
	m.String("description", &e.description)
}

// calendarText writes a calendar file.
func calendarText(i *calendarInput, _ []finding.Finding) (*textAnswer, []finding.Finding) {
	switch {
	case !date.Valid(i.stamp):
		return nil, finding.Refusal("bad-time", "/stamp", "text", finding.Clip(i.stamp))
	case len(i.entries) == 0:
		return nil, finding.Refusal("missing", "/entries", "name", "entries")
	}
	file := calendar.Begin(i.maker, i.stamp)
	for n := range i.entries {
		e := &i.entries[n]
		day, ok := date.ReadDay(e.day)
		if !ok {
			return nil, finding.Refusal("bad-day", "/entries/"+strconv.Itoa(n)+"/day", "text", finding.Clip(e.day))
		}
		file.Add(e.uid, day, e.summary, e.description)
	}
	return &textAnswer{file.End()}, nil
}

// csvInput is a table: what kind of thing each column holds, and its cells, row by
// row, amounts in base units.
type csvInput struct {
	system       quantity.System
	comma        bool
	kinds, cells []string
}

func (i *csvInput) Members(m *wire.Members) {
	wire.Text(m, "system", &i.system)
	m.Bool("comma", &i.comma)
	wire.Texts(m, "kinds", &i.kinds)
	wire.Texts(m, "cells", &i.cells)
}

// csvText writes a table for a spreadsheet, amounts in the person's usual units.
func csvText(i *csvInput, _ []finding.Finding) (*textAnswer, []finding.Finding) {
	system, list := systemOf(i.system)
	switch {
	case list != nil:
		return nil, list
	case len(i.kinds) == 0 || len(i.cells)%len(i.kinds) != 0:
		return nil, finding.Refusal("rows-uneven", "/cells", "text", strconv.Itoa(len(i.cells)))
	}
	return &textAnswer{csv.Amounts(i.kinds, i.cells, system, i.comma)}, nil
}

// unsavedInput are a record's jobs and the times of its backups.
type unsavedInput struct {
	jobs               []unsavedJob
	backup, later, now string
}

func (i *unsavedInput) Members(m *wire.Members) {
	wire.List(m, "jobs", &i.jobs)
	m.String("backup", &i.backup)
	m.String("later", &i.later)
	m.String("now", &i.now, wire.Required)
}

// unsavedJob is a job with how many events it has, and how many of them were in a
// file that this phone handed out.
type unsavedJob struct{ due.Kept }

func (j *unsavedJob) Members(m *wire.Members) {
	m.String("finished", &j.Finished)
	m.Int("events", &j.Events)
	m.Int("saved", &j.Saved)
}

type unsavedAnswer struct {
	count  int
	remind bool
}

func (a *unsavedAnswer) Members(m *wire.Members) {
	m.Int("count", &a.count)
	m.Bool("remind", &a.remind)
}

// unsaved counts the jobs that are in no backup.
func unsaved(i *unsavedInput, _ []finding.Finding) (*unsavedAnswer, []finding.Finding) {
	var a unsavedAnswer
	jobs := make([]due.Kept, len(i.jobs))
	for n := range i.jobs {
		jobs[n] = i.jobs[n].Kept
	}
	a.count, a.remind = due.Unsaved(jobs, i.backup, i.later, i.now)
	return &a, nil
}

// noticeInput are the bikes that the phone remembers, each with the day from which
// it is to be looked at.
type noticeInput struct {
	bikes                       []noticedBike
	today, notified, asked, now string
}

func (i *noticeInput) Members(m *wire.Members) {
	wire.List(m, "bikes", &i.bikes)
	m.String("today", &i.today, wire.Required)
	m.String("notified", &i.notified)
	m.String("asked", &i.asked)
	m.String("now", &i.now, wire.Required)
}

type noticedBike struct{ id, name, remind, read string }

func (b *noticedBike) Members(m *wire.Members) {
	m.Lenient()
	m.String("id", &b.id)
	m.String("name", &b.name)
	m.String("remind", &b.remind)
	m.String("read", &b.read)
}

type noticeAnswer struct{ bike, ask string }

func (a *noticeAnswer) Members(m *wire.Members) {
	m.String("bike", &a.bike)
	m.String("ask", &a.ask)
}

// dueNotice says of which bike to notify, and whose odometer to ask for, if of any.
func dueNotice(i *noticeInput, _ []finding.Finding) (*noticeAnswer, []finding.Finding) {
	days, read := make([]string, len(i.bikes)), make([]string, len(i.bikes))
	for n := range i.bikes {
		days[n], read[n] = i.bikes[n].remind, i.bikes[n].read
	}
	var a noticeAnswer
	if n := due.Notice(days, i.today, i.notified, i.now); n >= 0 {
		a.bike = i.bikes[n].name
	}
	if n := due.AskedAgain(read, days, i.today, i.asked); n >= 0 {
		a.ask = i.bikes[n].id
	}
	return &a, nil
}

// lastInput are the jobs on the bike of a job that was started then.
type lastInput struct {
	started string
	jobs    []job.Finished
}

func (i *lastInput) Members(m *wire.Members) {
	m.String("started", &i.started, wire.Required)
	wire.List(m, "jobs", &i.jobs)
}

type lastAnswer struct{ id string }

func (a *lastAnswer) Members(m *wire.Members) { m.String("id", &a.id) }

// lastJob says with which job another one is compared.
func lastJob(i *lastInput, _ []finding.Finding) (*lastAnswer, []finding.Finding) {
	return &lastAnswer{job.LastBefore(i.started, i.jobs)}, nil
}
