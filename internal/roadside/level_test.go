package roadside_test

import (
	"slices"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/fault"
	"tidysump/internal/quantity"
	"tidysump/internal/roadside"
	"tidysump/internal/wire"
	"tidysump/specs"
)

func sample(t *testing.T, name string) *card.Checked {
	t.Helper()
	return accept(t, specs.Cards()[strings.TrimSuffix(name, ".json")+".json"])
}

func accept(t *testing.T, text []byte) *card.Checked {
	t.Helper()
	var c card.Card
	if list := wire.Read(text, &c); list != nil {
		t.Fatal(list)
	}
	checked, list := card.Accept(&c)
	if checked == nil {
		t.Fatal(list)
	}
	return checked
}

// said is what the lines say, as "word value=text; …", with a "?" where it is not known.
func said(lines []roadside.Line) string {
	var list []string
	for _, l := range lines {
		text := l.Word
		for _, name := range slices.Sorted(keys(l.Values)) {
			text += " " + l.Values[name]
		}
		if l.Unknown {
			text += "?"
		}
		list = append(list, text)
	}
	return strings.Join(list, "; ")
}

func keys(values map[string]string) func(func(string) bool) {
	return func(yield func(string) bool) {
		for name := range values {
			if !yield(name) {
				return
			}
		}
	}
}

// How a level is read follows from the card alone; what the card lacks is said to be not
// known, and nothing stands in for it. Figures of the rows are invented.
func TestLevels(t *testing.T) {
	for _, c := range []struct{ level, want string }{
		{`{}`, "reading.device.unknown?; reading.state.unknown?; reading.stance.unknown?; reading.wait.unknown?; reading.manual"},
		{`{"device":"measured"}`, "reading.none"},
		{`{"device":"hole","state":"cold","stance":"upright"}`, "reading.device @device.hole; reading.state @state.cold; reading.stance @stance.upright"},
		{`{"device":"window","state":"warm","stance":"centre-stand","where":"left"}`,
			"reading.device-at @device.window left; reading.state @state.warm; reading.stance @stance.centre-stand; reading.wait.unknown?; reading.manual"},
		{`{"device":"window","state":"hot","stance":"upright","wait":{"value":3,"to":5,"unit":"min","standing":"manual"}}`,
			"reading.device @device.window; reading.state @state.hot; reading.stance @stance.upright; reading.wait 3–5 min"},
	} {
		text := `{"format":"tidysump-card","version":1,"id":"x","make":"Invented","model":"One","layout":"wet-sump","circuits":[{"id":"engine","role":"engine","oil":{},"level":` + c.level + `}]}`
		got := roadside.Levels(accept(t, []byte(text)), quantity.Metric)
		if len(got) != 1 || said(got[0].Lines) != c.want {
			t.Errorf("%s:\n%+v, want\n%s", c.level, got, c.want)
		}
	}
}

// Over all sample cards: each oil has its lines, none of which is without words, and what
// the card knows is never said to be unknown.
func TestLevels_Samples(t *testing.T) {
	for name := range specs.Cards() {
		c := sample(t, name)
		levels := roadside.Levels(c, quantity.US)
		if len(levels) != len(c.Card().Circuits) {
			t.Errorf("%s: %d levels of %d oils", name, len(levels), len(c.Card().Circuits))
		}
		for n, level := range levels {
			l := &c.Card().Circuits[n].Level
			text := said(level.Lines)
			for known, word := range map[bool]string{l.Device != "": "reading.device.unknown", l.State != "": "reading.state.unknown", l.Stance != "": "reading.stance.unknown"} {
				if known && strings.Contains(text, word) {
					t.Errorf("%s, %s: %s", name, level.Circuit, text)
				}
			}
			if len(level.Lines) == 0 {
				t.Errorf("%s, %s: nothing is said", name, level.Circuit)
			}
		}
	}
}

func TestAsks(t *testing.T) {
	table := theTable(t)
	for _, c := range []struct {
		door, id string
		want     bool
	}{
		{"amount", "", true}, {"drop", "", false}, {"", "", false},
		{"", "too-much", true}, {"drop", "too-much", true}, {"", "lamp-start", true}, {"", "smoke-exhaust", true}, {"amount", "plug-stuck", false},
	} {
		if got := roadside.Asks(c.door, table.Find(c.id)); got != c.want {
			t.Errorf("%s %s: %t", c.door, c.id, got)
		}
	}
	if !slices.Contains(fault.Doors, "amount") {
		t.Error("there is no door of amounts")
	}
}
