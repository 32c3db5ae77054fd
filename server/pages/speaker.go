package pages

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"

	"tidysump/specs"
)

// speaker says the words of one language, as static/app/words/catalogue.js does in the app.
type speaker struct {
	Tag, Dir string
	entries  map[string]specs.Entry
	rules    language.Tag
	units    *regexp.Regexp // a figure whose unit is a word and no symbol: "12 months"
}

type values = map[string]string

func newSpeaker(l specs.Language) *speaker {
	s := &speaker{Tag: l.Tag, Dir: l.Dir, entries: l.Entries(), rules: language.Make(l.Tag)}
	var units []string
	for id := range s.entries {
		if unit, is := strings.CutPrefix(id, "unit."); is {
			units = append(units, regexp.QuoteMeta(unit))
		}
	}
	slices.Sort(units)
	s.units = regexp.MustCompile(`(\d[\d.,]*)[ \x{a0}](` + strings.Join(units, "|") + `)(?:$|[^\pL])`)
	return s
}

// placeholder is where a value goes, with the full stop behind it.
var placeholder = regexp.MustCompile(`\{(\w+)\}(\.?)`)

// stopped is how a value ends that brings its own end of a sentence.
var stopped = regexp.MustCompile(`[.?!…]\x{2069}?$`)

// t gives the sentence of a word id, its {placeholders} filled. A value that begins with
// "@" is itself a word id, and is filled from the other values.
func (s *speaker) t(id string, v values) string { return s.fill(id, v, 0) }

// deepest is how deep words may stand in words: none of the catalogue needs more.
const deepest = 8

func (s *speaker) fill(id string, v values, depth int) string {
	e, known := s.entries[id]
	if !known || depth > deepest {
		return id
	}
	return placeholder.ReplaceAllStringFunc(s.form(&e, v), func(mark string) string {
		name, stop, _ := strings.Cut(mark[1:], "}")
		value, given := v[name]
		if !given {
			return mark
		}
		others := values{}
		for other, is := range v {
			if other != name {
				others[other] = is
			}
		}
		filled := s.read(value, others, depth+1)
		if stopped.MatchString(filled) {
			return filled // one stop is enough
		}
		return filled + stop
	})
}

// form is the sentence for the value that decides on its form.
func (s *speaker) form(e *specs.Entry, v values) string {
	if e.Forms == nil {
		return e.Other
	}
	by := e.By
	if by == "" {
		by = "count"
	}
	if form := e.Forms[s.category(v[by])]; form != "" {
		return form
	}
	return e.Other
}

var categories = map[plural.Form]string{plural.Zero: "zero", plural.One: "one", plural.Two: "two", plural.Few: "few", plural.Many: "many", plural.Other: "other"}

// category is the plural category of a count as its decimals are written: in English
// there is 1 litre, and there are 1.0 litres.
func (s *speaker) category(count string) string {
	whole, decimals, _ := strings.Cut(count, ".")
	i, err := strconv.Atoi(whole)
	f, badly := 0, error(nil)
	if decimals != "" {
		f, badly = strconv.Atoi(decimals)
	}
	if err != nil || badly != nil || i < 0 {
		return "other"
	}
	trimmed := strings.TrimRight(decimals, "0")
	t, _ := strconv.Atoi(trimmed)
	return categories[plural.Cardinal.MatchPlural(s.rules, i%10_000_000, len(decimals), len(trimmed), f, t)]
}

// text gives a value as it is read: "@id" is looked up, all else stands for itself.
func (s *speaker) text(value string) string { return s.read(value, nil, 0) }

var blankAfterDigit = regexp.MustCompile(`(\d) `)

func (s *speaker) read(value string, others values, depth int) string {
	if id, is := strings.CutPrefix(value, "@"); is && s.has(id) {
		return s.fill(id, others, depth)
	}
	figure := s.units.ReplaceAllStringFunc(value, func(found string) string {
		at := s.units.FindStringSubmatchIndex(found)
		return s.fill("unit."+found[at[4]:at[5]], values{"count": found[at[2]:at[3]]}, depth+1) + found[at[5]:]
	})
	// A number stays with its unit at the end of a line.
	return s.isolated(blankAfterDigit.ReplaceAllString(figure, "$1\u00a0"))
}

// verbatim is what somebody wrote, letter by letter: "@id" too.
func (s *speaker) verbatim(written string) string { return s.isolated(written) }

func (s *speaker) has(id string) bool { _, is := s.entries[id]; return is }

// isolated lets a value turn nothing round it; among words from right to left it is not
// turned by them (U+2068, first strong isolate).
func (s *speaker) isolated(value string) string {
	plain := strings.Map(func(r rune) rune {
		if r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 {
			return -1
		}
		return r
	}, value)
	if value == "" || s.Dir != "rtl" {
		return plain
	}
	return "\u2068" + plain + "\u2069"
}

// texts are those of a figure as they are read; one that is a word is filled from its
// values.
func (s *speaker) texts(list []string, v values) []string {
	said := make([]string, len(list))
	for n, one := range list {
		if id, is := strings.CutPrefix(one, "@"); is && v != nil {
			said[n] = s.t(id, v)
		} else {
			said[n] = s.text(one)
		}
	}
	return said
}

// finding says what a check found, and what to do about it.
func (s *speaker) finding(f finding) string {
	said := s.t("finding."+f.Code, f.Values)
	if do := "finding." + f.Code + ".do"; s.has(do) {
		said += " " + s.t(do, f.Values)
	}
	return said
}

// speakerFor gives the language for a header Accept-Language: the dearest that is there,
// else the default. "de-AT" is content with "de" (RFC 4647, lookup).
func speakerFor(list []*speaker, accept string) *speaker {
	wishes, _, err := language.ParseAcceptLanguage(accept)
	if err != nil {
		return list[0]
	}
	for _, wish := range wishes {
		for tag := wish.String(); tag != ""; tag = tag[:max(strings.LastIndexByte(tag, '-'), 0)] {
			for _, s := range list {
				if strings.EqualFold(s.Tag, tag) {
					return s
				}
			}
		}
	}
	return list[0]
}

// count is a whole number as a value of a word.
func count(n int) values { return values{"count": fmt.Sprint(n)} }
