package core

import (
	"strconv"

	"tidysump/internal/calendar"
	"tidysump/internal/csv"
	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// record is what a record of jobs is asked: when oil is due, or for a text to take
// away, made from what the page hands in: sentences, and amounts in base units. One
// type, and lists side by side for rows, since more of them would cost the core more.
type record struct {
	text                             string // the answer
	system                           quantity.System
	today                            string
	jobs                             []job.Past
	comma                            bool
	stamp, maker                     string
	kinds, cells                     []string
	uids, days, summaries, described []string
}

func (w *record) Members(m *wire.Members) {
	if !m.Reading() {
		m.String("text", &w.text)
		return
	}
	w.system = quantity.Metric
	wire.Text(m, "system", &w.system)
	m.String("today", &w.today)
	wire.List(m, "jobs", &w.jobs)
	m.Bool("comma", &w.comma)
	wire.Texts(m, "kinds", &w.kinds)
	wire.Texts(m, "cells", &w.cells)
	m.String("stamp", &w.stamp)
	m.String("maker", &w.maker)
	wire.Texts(m, "uids", &w.uids)
	wire.Texts(m, "days", &w.days)
	wire.Texts(m, "summaries", &w.summaries)
	wire.Texts(m, "descriptions", &w.described)
}

func readRecord(in []byte) (*record, []finding.Finding) {
	w := &record{}
	list := wire.Read(in, w)
	switch {
	case finding.Refused(list):
		return nil, list
	case w.system != quantity.Metric && w.system != quantity.US && w.system != quantity.Imperial:
		return nil, refusal("unknown-word", "/system", string(w.system))
	}
	return w, nil
}

// calendarText writes a calendar file.
func calendarText(in []byte) (wire.Record, []finding.Finding) {
	w, list := readRecord(in)
	if w == nil {
		return nil, list
	}
	n := len(w.uids)
	switch {
	case !date.Valid(w.stamp):
		return nil, refusal("bad-time", "/stamp", w.stamp)
	case n == 0 || len(w.days) != n || len(w.summaries) != n || len(w.described) != n:
		return nil, refusal("rows-uneven", "/uids", strconv.Itoa(n))
	}
	file := calendar.Begin(w.maker, w.stamp)
	for i, text := range w.days {
		day, ok := date.ReadDay(text)
		if !ok {
			return nil, refusal("bad-day", "/days/"+strconv.Itoa(i), text)
		}
		file.Add(w.uids[i], day, w.summaries[i], w.described[i])
	}
	w.text = file.End()
	return w, nil
}

// csvText writes a table for a spreadsheet, amounts in the person's usual units.
func csvText(in []byte) (wire.Record, []finding.Finding) {
	w, list := readRecord(in)
	if w == nil {
		return nil, list
	}
	if len(w.kinds) == 0 || len(w.cells)%len(w.kinds) != 0 {
		return nil, refusal("rows-uneven", "/cells", strconv.Itoa(len(w.cells)))
	}
	table := csv.Table{Separator: ',', Decimal: '.', Columns: len(w.kinds)}
	if w.comma {
		table.Separator, table.Decimal = ';', ','
	}
	for i, text := range w.cells {
		kind := quantity.Kind(w.kinds[i%len(w.kinds)])
		unit, known := quantity.Find(quantity.Usual(kind, w.system))
		number, isNumber := quantity.ParseNumber(text)
		switch {
		case !known && kind != aNumber || text == "":
			table.Text(text)
		case isNumber:
			table.Number(quantity.Number(unit.FromBase(number), 6))
		case known: // the head of a column
			table.Text(text + " (" + unit.ID + ")")
		default:
			table.Text(text)
		}
	}
	w.text = table.String()
	return w, nil
}
