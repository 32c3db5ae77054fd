package specs_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"tidysump/internal/core"
)

// billWords are those of estimates and bills: the labels of their form, what may
// be chosen there, and what is found about money.
func billWords(t *testing.T) []family {
	var answer struct {
		OK struct {
			Forms []struct{ Fields []askedField }
		}
	}
	if err := json.Unmarshal(core.Call("forms", []byte(`{"of":"bill"}`)), &answer); err != nil || len(answer.OK.Forms) != 1 {
		t.Fatalf("%v: %v", answer, err)
	}
	papers := []string{"estimate", "bill"}
	list := []family{{"bill.what.", papers, plain}, {"bill.keep.", papers, plain}, {"bill.", []string{"labour", "waste"}, plain}}
	ask := family{"bill.ask.", nil, plain}
	var add func(fields []askedField)
	add = func(fields []askedField) {
		for _, f := range fields {
			if f.Name != "estimate" && f.Name != "lines" && f.Name != "of" && f.Name != "what" { // nobody types these
				ask.members = append(ask.members, f.Name)
			}
			if f.Family != "" {
				list = append(list, family{f.Family, f.Words, plain})
			}
			add(f.Rows)
		}
	}
	add(answer.OK.Forms[0].Fields)
	var faults []string
	for _, text := range literals(goSources(t, "internal/quote")) {
		if code.MatchString(text) {
			faults = append(faults, text)
		}
	}
	return append(list, ask, family{"finding.", faults, []string{"", ".do"}})
}

// code is the form of a finding's code; internal/quote has no other such text.
var code = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

// Hints stand beside a field, or beside a field of one kind of line.
func billHints(t *testing.T, used map[string]bool) {
	for id := range catalogue(t) {
		if field, kind, isHint := strings.Cut(id, ".hint"); isHint && used[field] && (kind == "" || used["bill.kind"+kind]) {
			used[id] = true
		}
	}
}
