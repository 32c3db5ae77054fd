package core_test

import (
	"bytes"
	"encoding/json"
	"runtime"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/internal/manual/pagetest"
)

// Whatever was read to warm up, and however often, what a page says is the same before and
// after, byte for byte.
func TestReadPageWarm_ChangesNothing(t *testing.T) {
	pages, languages := warmable(t)
	rapid.Check(t, func(t *rapid.T) {
		page := rapid.SampledFrom(pages).Draw(t, "page")
		in, _ := json.Marshal(map[string]string{"text": page.Text})
		before := core.Call("read-page", in)
		for range rapid.IntRange(1, 3).Draw(t, "times") {
			warm(t, rapid.SampledFrom(languages).Draw(t, "language"), rapid.IntRange(1, 14).Draw(t, "text"))
		}
		if after := core.Call("read-page", in); !bytes.Equal(before, after) {
			t.Fatalf("%s: before\n%s\nafter\n%s", page.Name, before, after)
		}
	})
}

// The texts end, in each language, whether it has terms or not.
func TestReadPageWarm_Ends(t *testing.T) {
	_, languages := warmable(t)
	for _, language := range languages {
		n := 1
		for warm(t, language, n) {
			if n++; n > 50 {
				t.Fatalf("%q has no last text", language)
			}
		}
		if n < 3 || warm(t, language, n+1) || !warm(t, language, 1) {
			t.Errorf("%q has %d texts", language, n)
		}
	}
}

// What is read to warm up is let go of: dictionaries are made once, and nothing else stays.
func TestReadPageWarm_LeavesNothing(t *testing.T) {
	_, languages := warmable(t)
	round := func() uint64 {
		for n := 1; warm(t, languages[0], n); n++ {
		}
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapObjects
	}
	round()
	first := round()
	for range 5 {
		round()
	}
	// A round makes some 3,000 pieces; other tests' leavings may come and go.
	if last := round(); last > first+1000 {
		t.Errorf("%d pieces of memory after two rounds, %d after eight", first, last)
	}
}

// warmable gives pages, and their languages with some that have no terms.
func warmable(t *testing.T) (pages []*pagetest.Page, languages []string) {
	t.Helper()
	pages, err := pagetest.Load("../../testdata/pages")
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pages {
		if !slices.Contains(languages, p.Language) {
			languages = append(languages, p.Language)
		}
	}
	return pages, append(languages, "", "xx")
}

// warm asks for one text, and gives whether there is another.
func warm(t interface {
	Helper()
	Fatalf(string, ...any)
}, language string, text int) bool {
	t.Helper()
	in, _ := json.Marshal(map[string]any{"text": "", "language": language, "warm": text})
	switch out := string(core.Call("read-page", in)); out {
	case `{"ok":{"more":true}}`:
		return true
	case `{"ok":{}}`:
		return false
	default:
		t.Fatalf("%s: %s", in, strings.TrimSpace(out))
		return false
	}
}
