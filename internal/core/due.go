package core

import (
	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/wire"
)

func refusal(code, where, text string) []finding.Finding {
	return []finding.Finding{{Code: code, Where: where, Grade: finding.Refuse, Values: finding.Values("text", clip(text))}}
}

// dueAgain says when the oils of a bike are due, from its jobs.
func dueAgain(in []byte) (wire.Record, []finding.Finding) {
	w, list := readRecord(in)
	if w == nil {
		return nil, list
	}
	today, ok := date.ReadDay(w.today)
	if !ok {
		return nil, refusal("bad-day", "/today", w.today)
	}
	return job.Foresee(w.jobs, today, w.system), nil
}
