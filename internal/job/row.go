package job

import (
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// TableRow is what a table shows of a job, amounts in base units.
type TableRow struct {
	Odometer float64 // km; zero while not read
	Done     int     // steps
	Finished string  // time
	Oils     []RowOil
	Notes    []string
	Findings []finding.Finding
}

// Members names the members of a row.
func (r *TableRow) Members(m *wire.Members) {
	m.Float("odometer", &r.Odometer)
	m.Int("done", &r.Done)
	m.String("finished", &r.Finished)
	wire.List(m, "oils", &r.Oils)
	wire.Texts(m, "notes", &r.Notes)
	wire.Findings(m, "findings", &r.Findings)
}

// RowOil is an oil in a table.
type RowOil struct {
	Role    string  // word id
	Poured  string  // in the person's units; empty when nothing was
	Level   string  // word id of the last level read; empty when none was
	In, Out float64 // what was poured and drained, in L
	Circuit string  // only where something was drained, as Waste
	Waste   oil.Waste
}

// Members names the members of an oil in a table.
func (o *RowOil) Members(m *wire.Members) {
	m.String("role", &o.Role, wire.Required)
	m.String("poured", &o.Poured)
	m.String("level", &o.Level)
	m.Float("in", &o.In)
	m.Float("out", &o.Out)
	m.String("circuit", &o.Circuit)
	wire.Text(m, "waste", &o.Waste)
}

// Row gives what a table shows of the job, texts in that system of units. What was
// typed keeps its meaning: that hangs on the bench.
func (s *State) Row(system quantity.System) *TableRow {
	print := shown.Printer{System: system}
	r := &TableRow{Odometer: s.Odometer, Done: len(s.Done), Finished: s.Finished, Findings: s.Findings}
	for i := range s.Oils {
		o := &s.Oils[i]
		row := RowOil{Role: o.Role, Level: o.Level, In: o.In, Out: o.Out}
		if o.Waste != "" {
			row.Circuit, row.Waste = o.Circuit, o.Waste
		}
		if len(o.Poured) > 0 {
			row.Poured = first(print.Litres(o.In))
		}
		r.Oils = append(r.Oils, row)
	}
	for i := range s.Notes {
		r.Notes = append(r.Notes, s.Notes[i].Text)
	}
	return r
}
