package card

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Own is a figure of one machine, which lies over that of the card it follows.
type Own struct {
	What     string   // a word of OwnFigures, "." and the id of the circuit, fastener or filter
	Value    string   // as typed
	Standing Standing // Measured or Decided
	Why      string   // how it was measured, or for what reason decided
	System   quantity.System

	unread bool
}

// Unread notes that the figure couldn't be read: it is told, and keeps no other from
// lying over.
func (o *Own) Unread([]finding.Finding) { o.unread = true }

// Members names the members.
func (o *Own) Members(m *wire.Members) {
	m.String("what", &o.What, wire.Required)
	m.String("value", &o.Value, wire.Required)
	wire.Text(m, "standing", &o.Standing)
	m.String("why", &o.Why)
	wire.Text(m, "system", &o.System)
}

// OwnFigure is what a machine may have of its own.
type OwnFigure string

// The figures that may lie over a card's: of an oil its volumes and grades, of a
// fastener its thread, torque, size of the tool and of the seal, of a filter its number.
const (
	OwnVolume       OwnFigure = "volume"
	OwnVolumeFilter OwnFigure = "volume-filter"
	OwnGrade        OwnFigure = "grade"
	OwnThread       OwnFigure = "thread"
	OwnTorque       OwnFigure = "torque"
	OwnSize         OwnFigure = "size"
	OwnInner        OwnFigure = "inner"
	OwnOuter        OwnFigure = "outer"
	OwnThickness    OwnFigure = "thickness"
	OwnNumber       OwnFigure = "number"
)

// OwnFigures lists them. A thread comes before what it makes unknown.
var OwnFigures = []OwnFigure{OwnVolume, OwnVolumeFilter, OwnGrade, OwnThread, OwnTorque, OwnSize, OwnInner, OwnOuter, OwnThickness, OwnNumber}

// OwnStandings are the standings that an own figure may have.
var OwnStandings = []Standing{Measured, Decided}

// limit is what is believable of the figure; of no kind for what is words.
func (w OwnFigure) limit() limit {
	switch w {
	case OwnVolume, OwnVolumeFilter:
		return volumeLimit
	case OwnTorque:
		return torqueLimit
	case OwnSize, OwnInner, OwnOuter, OwnThickness:
		return lengthLimit
	}
	return limit{}
}

// about parts what an own figure is of; ok is false where there is no such figure.
func (o *Own) about() (word OwnFigure, id string, ok bool) {
	name, id, _ := strings.Cut(o.What, ".")
	return OwnFigure(name), id, slices.Contains(OwnFigures, OwnFigure(name)) && validID(id)
}

// Check says what is wrong with an own figure by itself, without the card that it is to
// lie over. The findings have no place.
func (o *Own) Check() []finding.Finding {
	_, list := o.read()
	return list
}

// read reads an own figure as a card holds it, with its standing.
func (o *Own) read() (e Entry, list []finding.Finding) {
	word, _, ok := o.about()
	if !ok {
		return e, finding.Refusal("unknown-word", "", "text", finding.Clip(o.What))
	}
	if !slices.Contains(OwnStandings, o.Standing) {
		return e, finding.Refusal("unknown-standing", "", "text", finding.Clip(string(o.Standing)))
	}
	text := strings.TrimSpace(o.Value)
	if text == "" {
		return e, finding.Refusal("told-nothing", "", "name", "@own."+string(word))
	}
	switch word {
	case OwnGrade:
		e, list = readLabel(GradesEntry, text)
		if !finding.Refused(list) && len(e.Words) == 0 {
			list = finding.Refusal("unknown-grade", "", "text", finding.Clip(text))
		}
	case OwnThread:
		e.Words = []string{quantity.PlainDigits(text)}
		if _, ok := bolt.ParseThread(e.Words[0]); !ok {
			list = finding.Refusal("unknown-thread", "", "text", finding.Clip(text))
		}
	case OwnNumber:
		e.Words = []string{text}
		if finding.Cut(text, EntryLetters) != text {
			list = finding.Refusal("text-too-long", "", "most", strconv.Itoa(EntryLetters))
		}
	default:
		e.Figure, list = o.figure(text, word.limit())
	}
	return e, list
}

// why is the reason as it may be shown: nobody's words are a word id.
func (o *Own) why() string { return strings.TrimLeft(o.Why, "@ ") }

// figure reads a quantity within what is believable of it.
func (o *Own) figure(text string, l limit) (Figure, []finding.Finding) {
	q := quantity.Ask{Kind: l.kind, Unit: quantity.Usual(l.kind, o.System), System: o.System, Low: l.low, High: l.high}
	f, list := readFigure(&q, text)
	if finding.Refused(list) {
		return f, finding.At("", list)
	}
	f.Standing, f.Method = o.Standing, o.why()
	k := checker{list: list}
	k.figureValue("", &f, l)
	return f, finding.At("", k.list)
}
