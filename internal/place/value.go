package place

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// value is what was read, as a card holds it.
type value struct {
	figure card.Figure
	words  []string
	number int
	to     int // the last of two years; 0 where it is open
	amount float64
}

// read reads the text of a reading for its place.
func (t *taking) read(e *entry, s *card.Slot, text string) (*value, []finding.Finding) {
	v := &value{}
	text = strings.TrimSpace(text)
	if text == "" {
		return v, finding.Refusal("reading-empty", "")
	}
	var list []finding.Finding
	switch {
	case e.at == "yearFrom":
		list = v.years(text)
	case e.at == "oil/grades":
		list = v.labels(card.GradesEntry, text)
	case e.at == "oil/marks":
		list = v.labels(card.MarksEntry, text)
	case e.at == "oil/service":
		list = v.labels(card.ServiceEntry, text)
	case s.Figure != nil:
		v.figure, list = card.ReadFigure(s.Kind, text, "", t.system)
	case s.Number != nil:
		n, err := strconv.Atoi(quantity.PlainDigits(text))
		if v.number = n; err != nil || n < 1 {
			list = finding.Refusal("not-a-number", "", "text", finding.Clip(text))
		}
	case s.Amount != nil:
		v.figure, list = card.ReadFigure(quantity.Volume, text, "", t.system)
		if a, ok := known(v.figure).Amount(); ok {
			v.amount = math.Round(a.Base*1e4) / 10
		}
	case e.at == "thread":
		v.words = []string{quantity.PlainDigits(text)}
	case e.at == "make" || e.at == "model":
		v.words = []string{text}
	case e.at == "kind" && strings.EqualFold(text, string(card.KindUnknown)):
		list = finding.Refusal("unknown-word", "", "text", text) // nobody reads that
	default:
		v.words = []string{strings.ToLower(text)}
	}
	return v, list
}

// known is a figure as the manual's.
func known(f card.Figure) *card.Figure {
	f.Standing = card.FromManual
	return &f
}

func (v *value) labels(kind quantity.Kind, text string) []finding.Finding {
	e, list := card.ReadEntry(kind, text, "", quantity.Metric)
	v.words = e.Words
	if !finding.Refused(list) && len(v.words) == 0 {
		return finding.Refusal("reading-empty", "")
	}
	return list
}

// years reads "2014", "2014-2018" and "2014-".
func (v *value) years(text string) []finding.Finding {
	from, to, ranged := strings.Cut(strings.ReplaceAll(quantity.PlainDigits(text), "–", "-"), "-")
	first, err := year(from)
	if err == nil && ranged && strings.TrimSpace(to) != "" {
		v.to, err = year(to)
	} else if !ranged {
		v.to = first
	}
	if v.number = first; err != nil {
		return finding.Refusal("not-a-number", "", "text", finding.Clip(text))
	}
	return nil
}

func year(text string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err == nil && (n < 1880 || n > 2200) { // there was no motorcycle, and may be none
		err = strconv.ErrRange
	}
	return n, err
}

// years gives the years of a card as a reading has them.
func years(c *card.Card) string {
	return (&value{number: c.YearFrom, to: c.YearTo}).yearsText()
}

func (v *value) yearsText() string {
	switch v.to {
	case v.number:
		return strconv.Itoa(v.number)
	case 0:
		return strconv.Itoa(v.number) + "–"
	}
	return strconv.Itoa(v.number) + "–" + strconv.Itoa(v.to)
}

// text gives it as a card says it.
func (v *value) text() string {
	switch {
	case len(v.words) > 0:
		return strings.Join(v.words, ", ")
	case v.amount != 0:
		return quantity.Number(v.amount, 15) + " cm³"
	case v.to != 0 || v.number > 1000:
		return v.yearsText()
	case v.number != 0:
		return strconv.Itoa(v.number)
	}
	f := known(v.figure)
	return strings.Join((&card.Slot{Figure: &f}).Says(), "")
}

// within reports whether the card says the same: a figure within the rounding of either,
// a word that is the same, in a list all of them.
func (v *value) within(t *taking, e *entry, s *card.Slot) bool {
	switch {
	case e.at == "yearFrom":
		return t.card.YearFrom == v.number && t.card.YearTo == v.to
	case s.Figure != nil:
		return agree(*s.Figure, known(v.figure))
	case isList(s):
		return containsAll(s.Says(), v.words)
	case s.Number != nil:
		return *s.Number == v.number
	case s.Amount != nil:
		return quantity.Near(*s.Amount, v.amount)
	case e.at == "thread":
		is, of, one := threads(*s.Text, v.words[0])
		return one && (!is.PitchOpen() || of.PitchOpen())
	}
	return strings.EqualFold(*s.Text, v.words[0])
}

// closer reports whether a thread that was read is the one of the card with its pitch,
// which the card leaves out.
func (v *value) closer(e *entry, s *card.Slot) bool {
	if e.at != "thread" {
		return false
	}
	is, of, one := threads(*s.Text, v.words[0])
	return one && is.PitchOpen() && !of.PitchOpen()
}

// threads reads two designations, and reports whether they may be of one thread.
func threads(a, b string) (is, of bolt.Thread, one bool) {
	is, ok := bolt.ParseThread(a)
	of, known := bolt.ParseThread(b)
	return is, of, ok && known && is.MayBe(&of)
}

func containsAll(list, words []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(list, w) })
}

// put writes it into the card.
func (v *value) put(t *taking, e *entry, name string, s *card.Slot) {
	switch {
	case e.at == "yearFrom":
		t.card.YearFrom, t.card.YearTo = v.number, v.to
	case e.at == "kind":
		t.become(t.filter(card.FilterKind(v.words[0])), card.FilterKind(v.words[0]))
	case s.Figure != nil:
		f := v.figure
		f.Standing, f.Source, f.Page = card.FromManual, t.manual(), t.page.Page
		*s.Figure = &f
	case isList(s):
		list := s.Says()
		for _, w := range v.words {
			if !slices.Contains(list, w) {
				list = append(list, w)
			}
		}
		if s.Split {
			*s.Text = strings.Join(list, "/")
		} else {
			*s.Words = list
		}
		t.stand(name)
	case s.Number != nil:
		*s.Number = v.number
	case s.Amount != nil:
		*s.Amount = v.amount
	default:
		*s.Text = v.words[0]
	}
}

// stand says where the oil asked for is from, unless the card says so already.
func (t *taking) stand(name string) {
	id, member, _ := strings.Cut(name, "/")
	o := &t.card.Circuit(id).Oil
	if o.Standing == "" || o.Standing == card.Unknown || member == "oil/grades" && len(o.Grades) > 0 && o.Standing != card.FromManual && t.entered[name] {
		o.Standing, o.Source, o.Page, o.Method = card.FromManual, t.manual(), t.page.Page, ""
	}
}

// agree reports whether two figures are one within the rounding of either.
func agree(a, b *card.Figure) bool {
	low, ok := a.Amount()
	other, known := b.Amount()
	if !ok || !known || low.Kind != other.Kind {
		return false
	}
	high, ranged := a.Upper()
	upper, rangedToo := b.Upper()
	return near(low, other) && ranged == rangedToo && (!ranged || near(high, upper))
}

// How far two figures in different units may be apart, of the larger one, and be roundings
// of one: manuals give 1 US qt for 0.9 L, and 4,000 mi for 6,000 km. Common practice, no
// source.
const (
	apartMost         = 0.06
	apartMostDistance = 0.1
)

func near(a, b quantity.Amount) bool {
	if a.Unit == b.Unit {
		return quantity.Near(a.Base, b.Base)
	}
	most := apartMost
	if a.Kind == quantity.Distance {
		most = apartMostDistance
	}
	apart := math.Abs(a.Base - b.Base)
	return quantity.AtMost(apart, half(a)+half(b)) && quantity.AtMost(apart, most*max(a.Base, b.Base))
}

// half is how far rounding may have moved an amount, as it is written; distances are
// rounded to their last digit that is no zero.
func half(a quantity.Amount) float64 {
	u, _ := quantity.Find(a.Unit)
	text := quantity.Number(u.FromBase(a.Base), 6)
	_, decimals, _ := strings.Cut(text, ".")
	step := math.Pow(10, -float64(len(decimals)))
	if a.Kind == quantity.Distance && decimals == "" {
		step = math.Pow(10, float64(len(text)-len(strings.TrimRight(text, "0"))))
	}
	return step / 2 * u.Scale
}
