package core

import (
	"tidysump/internal/due"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// unsavedInput are the times of a record's jobs and of its backups.
type unsavedInput struct {
	finished           []string
	backup, later, now string
}

func (i *unsavedInput) Members(m *wire.Members) {
	wire.Texts(m, "finished", &i.finished)
	m.String("backup", &i.backup)
	m.String("later", &i.later)
	m.String("now", &i.now, wire.Required)
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
func unsaved(in []byte) (wire.Record, []finding.Finding) {
	var i unsavedInput
	if list := wire.Read(in, &i); finding.Refused(list) {
		return nil, list
	}
	var a unsavedAnswer
	a.count, a.remind = due.Unsaved(i.finished, i.backup, i.later, i.now)
	return &a, nil
}
