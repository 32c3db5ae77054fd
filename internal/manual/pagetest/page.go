// Package pagetest has pages of manuals with all that each of them says, and scores
// what a reader makes of them. It knows no grammar: what it takes for right is as
// written beside the pages, in testdata/pages.
package pagetest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Kinds of pages. A clean one has no errors; the lines of a hard one are torn and
// mixed; a photo's has the errors of recognised text; a trap invites a wrong reading.
const (
	Clean = "clean"
	Hard  = "hard"
	Photo = "ocr"
	Trap  = "trap"
)

// Page is the text of a page, and what it says.
type Page struct {
	Name     string   `json:"-"` // the file's, without its ending
	Text     string   `json:"text"`
	Language string   `json:"language"`
	Kind     string   `json:"kind"`
	Truth    []Fact   `json:"truth"`
	May      []Fact   `json:"may,omitempty"` // what can be argued for, and counts neither way
	Doubt    []Doubt  `json:"doubt"`
	Not      []string `json:"not"` // places that hold no figure of the job
}

// Fact is one thing that a page says.
type Fact struct {
	What  string   `json:"what"`
	Value string   `json:"value"`
	Alt   []string `json:"alt,omitempty"` // the same in other units or words
	Or    []string `json:"or,omitempty"`  // another What that is as good
	For   string   `json:"for,omitempty"` // of which model or year, where there are several
	Quote string   `json:"quote"`
	Also  []string `json:"also,omitempty"` // further places where it stands
}

// Doubt is what a reader has to doubt aloud, and why.
type Doubt struct {
	What string   `json:"what"`
	Also []string `json:"also,omitempty"` // the doubt is as good at these
	Why  string   `json:"why"`
}

// Row is the row of a table of scores in which the page counts.
func (p *Page) Row() string { return p.Kind + " " + p.Language }

// Load reads all the pages below a folder, in the order of their paths.
func Load(dir string) ([]*Page, error) {
	var pages []*Page
	err := filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".json" {
			return err
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		p := &Page{Name: strings.TrimSuffix(entry.Name(), ".json")}
		strict := json.NewDecoder(bytes.NewReader(data))
		strict.DisallowUnknownFields()
		if err := strict.Decode(p); err != nil {
			return fmt.Errorf("%s: %w", path, err)
		}
		pages = append(pages, p)
		return nil
	})
	return pages, err
}

// Faults says what is wrong with a page: words that are not in its text, values that
// cannot be read, figures of one fact that contradict each other.
func (p *Page) Faults() []string {
	var faults []string
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	if !slices.Contains([]string{Clean, Hard, Photo, Trap}, p.Kind) {
		fault("kind %q", p.Kind)
	}
	var doubted []string
	for _, d := range p.Doubt {
		for _, what := range append([]string{d.What}, d.Also...) {
			if doubted = append(doubted, what); kindOf(what) == "" {
				fault("doubt of %q", what)
			}
		}
	}
	for _, f := range append(slices.Clone(p.Truth), p.May...) {
		for _, what := range append([]string{f.What}, f.Or...) {
			if kindOf(what) == "" {
				fault("no such what: %q", what)
			}
		}
		for _, quote := range append([]string{f.Quote}, f.Also...) {
			if quote == "" || !strings.Contains(p.Text, quote) {
				fault("%s: not in the text: %q", f.What, quote)
			}
		}
		for _, value := range append([]string{f.Value}, f.Alt...) {
			if !readable(f.What, value) {
				fault("%s: %q cannot be read", f.What, value)
			} else if !slices.Contains(doubted, f.What) && !agree(f.What, f.Value, value) {
				fault("%s: %q is not %q", f.What, value, f.Value)
			}
		}
	}
	for _, not := range p.Not {
		if not == "" || !strings.Contains(p.Text, not) {
			fault("not in the text: %q", not)
		}
	}
	if s := ScoreOf(p, Perfect(p)); !s.Whole() {
		fault("a perfect reader scores %+v", s)
	}
	return faults
}

// Perfect is what a reader answers who errs in nothing.
func Perfect(p *Page) []Answer {
	var answers []Answer
	for _, f := range p.Truth {
		answers = append(answers, Answer{What: f.What, Text: f.Value, Quote: f.Quote})
	}
	for _, d := range p.Doubt {
		answers = append(answers, Answer{What: d.What, Doubt: true})
	}
	return answers
}
