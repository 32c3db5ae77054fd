package roadside

import (
	"slices"

	"tidysump/internal/card"
	"tidysump/internal/fault"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
)

// amount is the door behind which levels are read.
const amount = "amount"

// Asks reports whether a level is to be read: behind the door of amounts, and at a
// problem that stands there or asks for a level. No problem is nil.
func Asks(door string, f *fault.Fault) bool {
	if f == nil {
		return door == amount
	}
	return f.Door == amount || slices.Contains(f.Asks, "level") || slices.Contains(f.Asks, "over")
}

// Level is how the level of one oil is read.
type Level struct {
	Circuit string
	Role    card.Role
	Lines   []Line
}

// Members names the level's members.
func (l *Level) Members(m *wire.Members) {
	m.String("circuit", &l.Circuit, wire.Required)
	wire.Text(m, "role", &l.Role, wire.Required)
	wire.List(m, "lines", &l.Lines, wire.Required)
}

// Levels says of each oil of a card how its level is read, with times as a person of
// that system of units reads them.
func Levels(c *card.Checked, system quantity.System) []Level {
	var list []Level
	print := shown.Printer{System: system}
	for n := range c.Card().Circuits {
		r := &c.Card().Circuits[n]
		list = append(list, Level{r.ID, r.Role, reading(&r.Level, &print)})
	}
	return list
}

func reading(l *card.Level, print *shown.Printer) []Line {
	if l.Device == card.Gaugeless {
		return []Line{say("reading.none")}
	}
	lines := []Line{device(l)}
	if l.State == "" {
		lines = append(lines, unknown("reading.state.unknown"))
	} else {
		lines = append(lines, say("reading.state", "state", "@state."+string(l.State)))
	}
	if l.Stance == "" {
		lines = append(lines, unknown("reading.stance.unknown"))
	} else {
		lines = append(lines, say("reading.stance", "stance", "@stance."+string(l.Stance)))
	}
	if run := print.Card("run", l.Run, "level"); len(run.Texts) > 0 {
		lines = append(lines, say("reading.run", "run", run.Texts[0]))
	}
	wait := print.Card("wait", l.Wait, "level")
	switch {
	case len(wait.Texts) > 0:
		lines = append(lines, say("reading.wait", "wait", wait.Texts[0]))
	case l.State != card.Cold: // a cold engine has stood for long enough
		lines = append(lines, unknown("reading.wait.unknown"))
	}
	if slices.ContainsFunc(lines, func(l Line) bool { return l.Unknown }) {
		lines = append(lines, say("reading.manual"))
	}
	return lines
}

func device(l *card.Level) Line {
	switch on := "@device." + string(l.Device); {
	case l.Device == "":
		return unknown("reading.device.unknown")
	case l.Where == "":
		return say("reading.device", "device", on)
	default:
		return say("reading.device-at", "device", on, "where", l.Where)
	}
}
