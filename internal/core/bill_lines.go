package core

import (
	"tidysump/internal/finding"
	"tidysump/internal/job"
	"tidysump/internal/wire"
)

type billLinesAnswer struct{ lines []job.Item }

func (a *billLinesAnswer) Members(m *wire.Members) { wire.List(m, "lines", &a.lines) }

// billLines proposes the lines of an estimate or bill of a job.
func billLines(in []byte) (wire.Record, []finding.Finding) {
	s, list := replayed(in)
	if s == nil {
		return nil, list
	}
	return &billLinesAnswer{s.ToBill()}, nil
}
