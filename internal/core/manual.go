package core

import (
	"slices"
	"strconv"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/manual"
	"tidysump/internal/place"
	"tidysump/internal/wire"
)

// manualInput is the text of a manual's page.
type manualInput struct {
	text, language, model string
	card                  *card.Card
	say                   []said
	warm                  int // which of the program's own texts is read instead, from 1; 0 for none
}

func (i *manualInput) Members(m *wire.Members) {
	m.LongString("text", &i.text, wire.Required)
	m.String("language", &i.language)
	m.String("model", &i.model)
	wire.Optional(m, "card", &i.card)
	wire.List(m, "say", &i.say)
	m.Int("warm", &i.warm)
}

// said is what a person says that a piece of the text is.
type said struct {
	what  string
	quote place.Span
}

func (s *said) Members(m *wire.Members) {
	m.String("what", &s.what, wire.Required)
	m.Object("quote", &s.quote, wire.Required)
}

// manualAnswer is what was read.
type manualAnswer struct {
	readings       []manualReading
	language, page string
	models         []string
	layout         *manualLayout
	more           bool // there is a further text to warm up on
}

func (a *manualAnswer) Members(m *wire.Members) {
	wire.List(m, "readings", &a.readings)
	m.String("language", &a.language)
	wire.Texts(m, "models", &a.models)
	m.String("page", &a.page)
	wire.Optional(m, "layout", &a.layout)
	m.Bool("more", &a.more)
}

// manualLayout is how the bike keeps its oil, as far as the page tells.
type manualLayout struct{ word, sure string }

func (l *manualLayout) Members(m *wire.Members) {
	m.String("word", &l.word)
	m.String("sure", &l.sure)
}

// sureWord says whether what was read is sure.
func sureWord(sure bool) string {
	if sure {
		return "yes"
	}
	return "ask"
}

// manualReading is one reading of it.
type manualReading struct {
	manual.Reading
	at   string
	sure string
}

func (r *manualReading) Members(m *wire.Members) {
	m.String("what", &r.What)
	m.String("at", &r.at)
	m.String("text", &r.Text)
	quote := place.Span(r.Quote)
	m.Object("quote", &quote)
	m.String("sure", &r.sure)
	wire.Findings(m, "doubts", &r.Doubts)
	m.String("model", &r.Model)
}

// saidOf reads what the person says that pieces of the text are, in place of what was read
// of the same thing there. What can't be that is refused.
func (i *manualInput) saidOf(p *manual.Page) (refused []finding.Finding) {
	for n := range i.say {
		s := &i.say[n]
		r, list := p.Said(s.what, manual.Span(s.quote))
		if !place.Known(s.what) {
			list = finding.Refusal("unknown-word", "", "text", finding.Clip(s.what))
		}
		if list != nil {
			refused = append(refused, finding.At("/say/"+strconv.Itoa(n), list)...)
			continue
		}
		p.Readings = slices.DeleteFunc(p.Readings, func(o manual.Reading) bool {
			return o.What == r.What && (o.Text == r.Text || o.Quote.From < r.Quote.To && o.Quote.To > r.Quote.From)
		})
		p.Readings = append(p.Readings, r)
	}
	slices.SortStableFunc(p.Readings, func(a, b manual.Reading) int { return a.Quote.From - b.Quote.From })
	return refused
}

// readManual reads the text of a manual's page, or one of the program's own for nothing.
func readManual(i *manualInput, _ []finding.Finding) (*manualAnswer, []finding.Finding) {
	if i.warm > 0 {
		text, more := manual.WarmText(i.language, i.warm-1)
		readManual(&manualInput{text: text, language: i.language}, nil)
		return &manualAnswer{more: more}, nil
	}
	p := manual.Read(i.text, i.language)
	if i.card != nil {
		p.Beside(i.card.Model)
	}
	if list := i.saidOf(&p); list != nil {
		return nil, list
	}
	a := &manualAnswer{language: p.Language, models: p.Models, page: p.Number}
	list := make([]place.Reading, 0, len(p.Readings))
	a.readings = make([]manualReading, 0, len(p.Readings))
	chosen := slices.Contains(p.Models, i.model) // else it is one of another page's
	if chosen {
		p.Chosen(i.model)
	}
	for _, r := range p.Readings {
		a.readings = append(a.readings, manualReading{Reading: r})
		list = append(list, place.Reading{What: r.What, Text: r.Text, Quote: place.Span(r.Quote), Model: r.Model})
	}
	judged := list
	if len(p.Models) > mostUnchosen && !chosen {
		judged = ofAll(p.Readings, list)
	}
	doubts := place.Doubts(i.card, judged)
	at := make([]string, len(list))
	if i.card != nil {
		at = place.Places(i.card, list)
	}
	for n := range a.readings {
		r := &a.readings[n]
		if r.Text != "" {
			r.Doubts = append(r.Doubts, doubts[n]...)
		}
		r.at, r.sure = at[n], sureWord(len(r.Doubts) == 0)
	}
	if len(list) > 0 {
		l := place.LayoutOf(list, place.Hints(p.Hints))
		a.layout = &manualLayout{string(l.Word), sureWord(l.Sure)}
	}
	return a, nil
}

// mostUnchosen is of how many bikes a text is at most whose readings are judged before one of
// them is chosen: of more the judging took half the time of the reading.
const mostUnchosen = 8

// ofAll gives what is judged of a text of many bikes before one is chosen, where all that
// was read is asked then: what is of no bike. A bike's own is judged once it is chosen; in
// place of it stand readings that say nothing.
func ofAll(readings []manual.Reading, list []place.Reading) []place.Reading {
	if slices.ContainsFunc(readings, func(r manual.Reading) bool { return r.Sure }) {
		return list
	}
	judged := slices.Clone(list)
	for n := range judged {
		if judged[n].Model != "" {
			judged[n] = place.Reading{}
		}
	}
	return judged
}
