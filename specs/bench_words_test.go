package specs_test

import (
	"encoding/json"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/debris"
	"tidysump/specs"
)

// askedField is a field of a calculation, as the page gets it to draw.
type askedField struct {
	Name, Family string
	Words        []string
	Rows         []askedField
}

// benchWords are the families of the calculations: their titles and those of
// their fields, and the codes that are found in them.
func benchWords(t *testing.T) []family {
	var answer struct {
		OK struct {
			Forms []struct {
				Op     string
				Fields []askedField
			}
		}
	}
	if err := json.Unmarshal(core.Call("forms", []byte(`{}`)), &answer); err != nil {
		t.Fatal(err)
	}
	words := catalogue(t)
	var list []family
	// A label may be that of one calculation or of all that ask for the same.
	var label func(op string, fields []askedField)
	label = func(op string, fields []askedField) {
		for _, f := range fields {
			stem := "ask."
			if words["ask."+op+"."+f.Name] != "" {
				stem += op + "."
			}
			list = append(list, family{stem, []string{f.Name}, plain})
			if f.Family != "" {
				list = append(list, family{f.Family, f.Words, plain})
			}
			label(op, f.Rows)
		}
	}
	for _, f := range answer.OK.Forms {
		list = append(list, family{"calc.", []string{f.Op}, []string{"", ".why"}})
		label(f.Op, f.Fields)
	}
	codes := append(arguments(goSources(t, "internal/calc"), "reject", 0), arguments(goSources(t, "internal/calc"), "say", 1)...)
	return append(list, family{"finding.", codes, []string{"", ".do"}},
		family{"finding.", debris.Comparisons, plain}, family{"next.", debris.Actions, plain})
}

// editWords are the headings and labels of the editor.
func editWords(t *testing.T) []family {
	var table struct {
		Sections []struct {
			Word    string
			Heading struct{ Word, Family, By string }
			Entries []struct {
				Word, Family, None, Group string
				Words                     []string
			}
		}
		Parts []struct{ Word string }
	}
	if err := json.Unmarshal(specs.Entries, &table); err != nil {
		t.Fatal(err)
	}
	list := []family{
		{"edit.filter-", enum(t, "$defs/filter/properties/kind"), plain},
		{"standing.", []string{"manual", "measured", "estimated"}, plain},
	}
	words := family{"", nil, plain}
	add := func(word string) {
		if word != "" {
			words.members = append(words.members, word)
		}
	}
	for _, s := range table.Sections {
		add(s.Word)
		add(s.Heading.Word)
		for _, e := range s.Entries {
			add(e.Word)
			add(e.None)
			add(e.Group)
			if e.Family != "" {
				list = append(list, family{e.Family, e.Words, plain})
			}
		}
	}
	for _, p := range table.Parts {
		add(p.Word)
	}
	return append(list, words)
}

// benchStems begin the ids that the calculations put together from a stem and a
// word of their own, which stands in the Go sources.
var benchStems = []string{"figure.", "method.", "lookup.", "finding.", "torque.", "wrench.", "wrench-check.", "touch.", "prefill.", "oil-verdict.", "fuel.", "standing.", "debris.", "ring.", "ring-series.", "ring-found."}

// benchUses marks the words that the calculations may use. That each they do use
// is there is tested in internal/core, by asking.
func benchUses(t *testing.T, used map[string]bool) {
	for _, text := range literals(goSources(t, "internal/oil", "internal/drain", "internal/bolt", "internal/ring", "internal/fill", "internal/debris", "internal/shown", "internal/calc")) {
		for _, stem := range benchStems {
			used[stem+text], used[stem+text+".do"] = true, true
		}
		if strings.HasSuffix(text, "-") { // "torque-may-" and what may happen
			for _, what := range []string{"strip", "yield"} {
				used["finding."+text+what], used["finding."+text+what+".do"] = true, true
			}
		}
	}
	for id := range catalogue(t) {
		if field, isHint := strings.CutSuffix(id, ".hint"); isHint && used[field] {
			used[id] = true
		}
	}
}
