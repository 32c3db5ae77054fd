package manual

import (
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// Said reads a piece of the page's text as what a person says that it is: the figure or
// word of that kind that stands in it. It refuses a piece that has none.
func (of *Page) Said(what string, piece Span) (Reading, []finding.Finding) {
	p, r := of.page, Reading{What: what, Quote: piece}
	for i := range of.parts {
		if q := &of.parts[i]; piece.From >= q.From && piece.To <= q.To {
			r, list := (&Page{page: q.page}).Said(what, Span{piece.From - q.From, piece.To - q.From})
			r.Quote = piece
			return r, list
		}
	}
	if p == nil {
		return r, finding.Refusal("quote-outside", "")
	}
	text := p.text
	if piece.From < 0 || piece.To > len(text) || piece.From >= piece.To {
		return r, finding.Refusal("quote-outside", "")
	}
	from, to := p.within(piece)
	if from < to {
		r.Text = p.said(what, from, to)
	}
	if r.Text == "" {
		return r, finding.Refusal("manual-not-that", "", "text", finding.Clip(strings.TrimSpace(text[piece.From:piece.To])))
	}
	r.Sure = true
	return r, nil
}

// within gives the tokens that a piece of the text is of.
func (p *page) within(piece Span) (from, to int) {
	for i := range p.places {
		t := &p.places[i]
		if t.from < piece.To && t.to > piece.From {
			if to == 0 {
				from = i
			}
			to = i + 1
		}
	}
	return from, to
}

// saidKinds are the kinds of facts that things are, by the last word of their names.
var saidKinds = [...]struct{ name, kind string }{
	{"volume", string(quantity.Volume)}, {"dry", string(quantity.Volume)}, {"with-filter", string(quantity.Volume)},
	{"oil-only", string(quantity.Volume)}, {"band", string(quantity.Volume)}, {"displacement", string(quantity.Volume)},
	{"torque", string(quantity.Torque)}, {"turn", string(quantity.Angle)}, {"size", string(quantity.Length)},
	{"wait", string(quantity.Duration)}, {"run", string(quantity.Duration)}, {"time", string(quantity.Duration)},
	{"months", string(quantity.Duration)}, {"hours", string(quantity.Duration)}, {"target", string(quantity.Temperature)},
	{"grades", "grade"}, {"marks", "mark"}, {"service", "service"}, {"thread", "thread"},
}

// saidSenses are the senses of the words that things are.
var saidSenses = [...]struct{ name, sense string }{
	{"device", "device."}, {"state", "state."}, {"stance", "stance."}, {"drive", "drive."}, {"seal", "seal."},
	{"kind", "part.filter-"}, {"cooling", "cooling."},
}

// saidWords are the words of a card for senses that are called otherwise.
var saidWords = [...]struct{ sense, word string }{
	{"device.screwed", "stick-screwed"}, {"device.resting", "stick-resting"}, {"device.pushed", "stick-pushed"},
	{"part.filter-element", "cartridge"}, {"state.before", "cold"},
}

// said gives what the tokens from to to say of a thing, "" where they say nothing of it.
func (p *page) said(what string, from, to int) string {
	name := what[strings.LastIndexAny(what, ".-")+1:]
	last := what[strings.LastIndexByte(what, '.')+1:]
	if name == "months" {
		switch p.saidWord("every.", from, to) {
		case "year":
			return "12 months"
		case "half-year":
			return "6 months"
		}
	}
	for _, k := range saidKinds {
		if k.name == name || k.name == last {
			return p.saidFact(k.kind, from, to)
		}
	}
	for _, s := range saidSenses {
		if s.name != last {
			continue
		}
		word := p.saidWord(s.sense, from, to)
		if metal := p.saidWord("material.", from, to); word == "" && last == "seal" && metal != "" {
			word = "flat-" + metal
		}
		return word
	}
	switch {
	case last == "every" || last == "count":
		return p.saidNumber(from, to)
	case what == "years":
		return p.saidYears(from, to)
	case what == "make" || what == "model":
		return strings.Join(strings.Fields(p.text[p.places[from].from:p.places[to-1].to]), " ")
	case strings.HasPrefix(what, "interval."):
		return p.saidFact(string(quantity.Distance), from, to)
	}
	return ""
}

// saidFact gives the first fact of a kind that is at least partly among the tokens.
func (p *page) saidFact(kind string, from, to int) string {
	for i := range p.facts {
		if f := &p.facts[i]; f.kind == kind && f.from < to && f.to > from {
			return f.text
		}
	}
	return ""
}

// saidWord gives the word of a sense that begins so.
func (p *page) saidWord(prefix string, from, to int) string {
	for i := from; i < to; i++ {
		t := p.termAt(i)
		if t == nil {
			continue
		}
		for _, sense := range t.senses {
			word, ok := strings.CutPrefix(sense, prefix)
			for _, w := range saidWords {
				if w.sense == sense {
					word = w.word
				}
			}
			if ok && word != "stick" && word != "washer" {
				return word
			}
		}
	}
	return ""
}

// saidYears gives years: one, two, or one from which on it holds.
func (p *page) saidYears(from, to int) string {
	var list []string
	open := false
	for i := from; i < to; i++ {
		t := &p.places[i]
		switch n, err := strconv.Atoi(t.text); {
		case err == nil && n >= 1880 && n <= 2200 && len(list) < 2:
			list = append(list, t.text)
			open = false
		case len(list) == 1 && (t.text == "-" || p.senseAt(i, "range.between") || p.senseAt(i, "year.on")):
			open = true
		}
	}
	if open {
		list = append(list, "")
	}
	return strings.Join(list, "-")
}

// saidNumber gives a whole number, also one in words.
func (p *page) saidNumber(from, to int) string {
	for i := from; i < to; i++ {
		t := p.places[i].taken
		p.places[i].taken = false
		v, _, ok := p.valueAt(i)
		p.places[i].taken = t
		if n := int(v.v); ok && float64(n) == v.v && n > 0 {
			return strconv.Itoa(n)
		}
		if term := p.termAt(i); term != nil {
			if every, is := term.begin("every."); is && len(every) == 1 {
				return every
			}
		}
	}
	return ""
}
