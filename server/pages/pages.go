// Package pages makes the pages that the server computes for a browser in which the app
// can't run: plain HTML without a script, from the same core and the same words. Nothing
// is kept: what a page has to know stands in its address, and an own card in its form.
package pages

import (
	"bytes"
	_ "embed" // pages.html and pages.css
	"encoding/json"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"

	"tidysump/specs"
)

// At is the path that all of them stand under.
const At = "/plain/"

//go:embed pages.html
var source string

// Style is the one style of the pages: of what every browser takes.
//
//go:embed pages.css
var Style []byte

// Pages are the pages over one door of the core.
type Pages struct {
	do       Do
	speakers []*speaker
	drawn    map[*speaker]*template.Template
	cards    map[string]json.RawMessage // the samples, by their id
	faults   json.RawMessage
	table    faultTable
	bikes    func() []listed
	limits   func() limits
}

// Ask is what a page is asked.
type Ask struct {
	Name   string     // of the bike, the calculation, the problem or the first aid
	Given  url.Values // the query, or the form that was sent
	Accept string     // the header Accept-Language
}

// Page is one page.
type Page struct {
	Status   int
	HTML     []byte
	Language string // BCP 47
}

// New makes the pages over the core.
func New(do Do) *Pages {
	p := &Pages{do: do, drawn: map[*speaker]*template.Template{}, cards: map[string]json.RawMessage{}, faults: specs.Faults}
	for _, l := range specs.Words() {
		s := newSpeaker(l)
		p.speakers = append(p.speakers, s)
		p.drawn[s] = template.Must(template.New("").Funcs(s.functions()).Parse(source))
	}
	for _, text := range specs.Cards() {
		var card struct{ ID string }
		must(json.Unmarshal(text, &card))
		p.cards[card.ID] = text
	}
	must(json.Unmarshal(specs.Faults, &p.table))
	p.bikes = sync.OnceValue(func() []listed {
		answer, _, _ := call[struct{ Bikes []listed }](do, "cards", map[string]json.RawMessage{"cards": specs.Samples()})
		return answer.Bikes
	})
	p.limits = sync.OnceValue(func() limits {
		answer, _, _ := call[limits](do, "limits", struct{}{})
		return answer
	})
	return p
}

// must is for what is embedded: the tests have read it.
func must(err error) {
	if err != nil {
		panic(err)
	}
}

// functions are what the templates say with.
func (s *speaker) functions() template.FuncMap {
	return template.FuncMap{
		"t": func(id string, v ...values) string {
			if len(v) > 0 {
				return s.t(id, v[0])
			}
			return s.t(id, nil)
		},
		"pairs": func(pairs ...string) values {
			v := values{}
			for pair := range slices.Chunk(pairs, 2) {
				v[pair[0]] = pair[1]
			}
			return v
		},
		"has":      s.has,
		"count":    count,
		"text":     s.text,
		"verbatim": s.verbatim,
		"texts":    s.texts,
		"finding":  s.finding,
		"standing": s.standing,
		"language": func() *speaker { return s },
		"at":       func() string { return At },
		"join":     strings.Join,
		"query":    givenQuery,
		"caution":  func(code string) finding { return finding{Code: code, Grade: "doubt"} },
		"chosen":   func(l limits, system string) systemChoice { return systemChoice{l, system} },
		"kinds":    func() []string { return kindsInOrder },
		"lines":    func(kind string) []string { return kinds[kind] },
	}
}

// systemChoice is what the choice of a system of units is drawn from.
type systemChoice struct {
	Limits limits
	System string
}

// shapes say how far a figure can be trusted, never by colour alone (static/app/ui/figure.js).
var shapes = map[string]string{"manual": "■", "measured": "◆", "decided": "●", "estimated": "≈", "standard": "▲", "unknown": "?"}

// standing says how far a figure can be trusted, and where it comes from.
func (s *speaker) standing(f figure) string {
	grade, said := f.Standing, ""
	switch {
	case grade == "" || grade == "unknown":
		grade = "unknown"
		if said = s.t("standing.unknown", nil); f.Lookup != "" {
			said = s.t(f.Lookup, nil)
		}
	case grade == "manual" && f.Page != "":
		said = s.t("standing.manual.from", values{"source": f.Source, "page": f.Page})
	case grade == "manual":
		said = s.t("standing.manual.title", values{"source": f.Source})
	default:
		method := f.Method
		if method == "" {
			method = "@not-known"
		}
		said = s.t("standing."+grade+".from", values{"method": method})
	}
	if f.Quote != "" {
		said += " " + s.t("standing.quote", values{"words": f.Quote})
	}
	if f.Kept != "" {
		said += " " + s.t("standing.kept", values{"why": f.Kept})
	}
	return shapes[grade] + " " + said
}

// givenQuery is a query of what a step knows for a calculation.
func givenQuery(given values, system string) string {
	q := url.Values{"system": {system}}
	for name, value := range given {
		q.Set(name, value)
	}
	return q.Encode()
}

// shown is what the frame of a page and the template in it are drawn from.
type shown struct {
	Title    string
	Template string
	System   string
	Of       any
}

// draw makes a page of a template of pages.html.
func (p *Pages) draw(ask Ask, status int, name string, view func(s *speaker) shown) Page {
	s := speakerFor(p.speakers, ask.Accept)
	v := view(s)
	v.Template = name
	var b bytes.Buffer
	if v.System == "" {
		v.System = p.systemOf(ask.Given)
	}
	var inner bytes.Buffer
	must(p.drawn[s].ExecuteTemplate(&inner, name, v))
	must(p.drawn[s].ExecuteTemplate(&b, "frame", struct {
		shown
		Inner template.HTML
	}{v, template.HTML(inner.String())})) // what html/template has made: it is escaped
	return Page{status, b.Bytes(), s.Tag}
}

// limits are what the core knows beforehand.
type limits struct {
	Systems, Places, GetHomeAt []string
	Reading                    int
}

// systemOf is the system of units that was chosen, else the usual one.
func (p *Pages) systemOf(given url.Values) string {
	all := p.limits().Systems
	if s := given.Get("system"); slices.Contains(all, s) {
		return s
	}
	return all[0]
}

// Home lists the sample bikes, and leads to the rest.
func (p *Pages) Home(ask Ask) Page {
	return p.draw(ask, http.StatusOK, "home", func(s *speaker) shown {
		return shown{Title: s.t("bikes.title", nil), Of: p.bikes()}
	})
}

// Missing says that there is no such page.
func (p *Pages) Missing(ask Ask) Page {
	return p.Refused(ask, http.StatusNotFound, "http.not-found", values{"path": At + ask.Name})
}

// Refused says with a sentence of the catalogue why there is no page.
func (p *Pages) Refused(ask Ask, status int, id string, v values) Page {
	return p.draw(ask, status, "refused", func(s *speaker) shown {
		return shown{Title: s.t("app.name", nil), Of: s.t(id, v)}
	})
}
