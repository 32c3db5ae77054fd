package specs_test

import (
	"maps"
	"strings"
	"testing"
	"testing/fstest"

	"tidysump/specs"
)

// languages is a folder of words with changes ("" takes a file away).
func languages(changes map[string]string) fstest.MapFS {
	files := map[string]string{
		"xa/language.json": `{"name":"First","dir":"ltr","default":true}`,
		"xa/first.json":    `{"yes":"Yes","no":"No","days":{"one":"{count} day","other":"{count} days"}}`,
		"xa/more.json":     `{"more":"More"}`,
		"ab/language.json": `{"name":"Second","dir":"rtl"}`,
		"ab/first.json":    `{"no":"Non"}`,
	}
	maps.Copy(files, changes)
	folder := fstest.MapFS{}
	for name, text := range files {
		if text != "" {
			folder[name] = &fstest.MapFile{Data: []byte(text)}
		}
	}
	return folder
}

// The default comes first, whatever its tag; what another lacks is the default's.
func TestReadWords(t *testing.T) {
	list, err := specs.ReadWords(languages(nil))
	if err != nil || len(list) != 2 {
		t.Fatalf("%d languages, %v", len(list), err)
	}
	first, second := list[0], list[1]
	if first.Tag != "xa" || first.Name != "First" || first.Dir != "ltr" || second.Tag != "ab" || second.Name != "Second" || second.Dir != "rtl" {
		t.Errorf("languages %s %q %s and %s %q %s", first.Tag, first.Name, first.Dir, second.Tag, second.Name, second.Dir)
	}
	for _, c := range []struct {
		language specs.Language
		part     string
		want     string
	}{
		{first, "first", `{"yes":"Yes","no":"No","days":{"one":"{count} day","other":"{count} days"}}`},
		{second, "first", `{"days":{"one":"{count} day","other":"{count} days"},"no":"Non","yes":"Yes"}`},
		{second, "more", `{"more":"More"}`},
	} {
		if got := string(c.language.Parts[c.part]); got != c.want {
			t.Errorf("%s of %s: %s, want %s", c.part, c.language.Tag, got, c.want)
		}
	}
	if len(first.Parts) != 2 || len(second.Parts) != 2 {
		t.Errorf("parts %v and %v", first.Parts, second.Parts)
	}
}

func TestReadWords_Refuses(t *testing.T) {
	for name, c := range map[string]struct {
		changes map[string]string
		want    string
	}{
		"no default":   {map[string]string{"xa/language.json": `{"name":"First","dir":"ltr"}`}, "0 of the 2 languages"},
		"two defaults": {map[string]string{"ab/language.json": `{"name":"Second","dir":"rtl","default":true}`}, "2 of the 2 languages"},
		"no name":      {map[string]string{"ab/language.json": `{"dir":"rtl"}`}, `language ab: language.json: name ""`},
		"no direction": {map[string]string{"ab/language.json": `{"name":"Second","dir":"up"}`}, `dir "up"`},
		"broken":       {map[string]string{"ab/first.json": `{"no":`}, "language ab: first: unexpected end"},
		"unknown part": {map[string]string{"ab/rest.json": `{"no":"Non"}`}, `language ab: xa has no part "rest"`},
		"unknown word": {map[string]string{"ab/more.json": `{"no":"Non"}`}, `language ab: more: xa has no word "no" there`},
	} {
		if _, err := specs.ReadWords(languages(c.changes)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}
