package place

import (
	"slices"
	"strings"

	"tidysump/internal/card"
)

// manual gives the id of the source that the page is of, and enters it: one of that title,
// or of no title yet.
func (t *taking) manual() string {
	c := t.card
	if t.source != "" && slices.ContainsFunc(c.Sources, func(s card.Source) bool { return s.ID == t.source }) {
		return t.source
	}
	title := strings.TrimSpace(t.page.Title)
	for i := range c.Sources {
		s := &c.Sources[i]
		if title == "" || s.Title == title || strings.TrimSpace(s.Title) == "" {
			if title != "" {
				s.Title = title
			}
			t.source = s.ID
			return t.source
		}
	}
	t.source = t.freeID("manual")
	c.Sources = append(c.Sources, card.Source{ID: t.source, Title: title})
	return t.source
}

// quote keeps the words of the page that something comes from.
func (t *taking) quote(name string, v *value, words string) {
	if words == "" {
		return
	}
	q := t.quoteOf(words)
	says := v.words
	if len(says) == 0 {
		s, _ := t.card.Slot(name)
		says = s.Says()
	}
	for _, text := range says {
		q.Of = append(q.Of, card.Quoted{At: name, Says: text})
	}
}

// quoteOf gives the quote of those words from this page.
func (t *taking) quoteOf(words string) *card.Quote {
	c, source := t.card, t.manual()
	for i := range c.Quotes {
		if q := &c.Quotes[i]; q.Words == words && q.Source == source && q.Page == t.page.Page {
			return q
		}
	}
	c.Quotes = append(c.Quotes, card.Quote{Words: words, Source: source, Page: t.page.Page})
	return &c.Quotes[len(c.Quotes)-1]
}

// unquote forgets where it was from what stood at a place.
func (t *taking) unquote(name string) {
	kept := t.card.Quotes[:0]
	for _, q := range t.card.Quotes {
		q.Of = slices.DeleteFunc(q.Of, func(of card.Quoted) bool { return of.At == name })
		if len(q.Of) > 0 {
			kept = append(kept, q)
		}
	}
	t.card.Quotes = kept
}

// quoted reports whether all that a list says comes from pages.
func (t *taking) quoted(name string, has []string) bool {
	return !slices.ContainsFunc(has, func(text string) bool { return !t.isQuoted(name, text) })
}

func (t *taking) isQuoted(name, says string) bool {
	for i := range t.card.Quotes {
		if slices.Contains(t.card.Quotes[i].Of, card.Quoted{At: name, Says: says}) {
			return true
		}
	}
	return false
}

// attach says of what the card has already that the page says it too: an estimate becomes
// the manual's, and what is the manual's gets the words. What was measured or decided
// stays what it is.
func (t *taking) attach(s *card.Slot, name string, v *value, words string) {
	if s.Figure != nil {
		f := *s.Figure
		switch f.Standing {
		case card.Estimated:
			next := v.figure
			next.Standing, next.Source, next.Page, next.Kept = card.FromManual, t.manual(), t.page.Page, f.Kept
			*s.Figure = &next
		case card.FromManual:
			if f.Source == "" {
				f.Source = t.manual()
				f.Page = t.page.Page
			}
		default:
			return
		}
	}
	says := v.words
	if !isList(s) {
		says = s.Says()
	}
	if words == "" || t.quoted(name, says) {
		return
	}
	q := t.quoteOf(words)
	for _, text := range says {
		if !t.isQuoted(name, text) {
			q.Of = append(q.Of, card.Quoted{At: name, Says: text})
		}
	}
}
