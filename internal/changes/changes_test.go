package changes_test

import (
	"encoding/json"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/changes"
	"tidysump/internal/finding"
	"tidysump/internal/plan/plantest"
	"tidysump/internal/quantity"
	"tidysump/internal/shown"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// whole is a card that says all that a card can say: its members are those of the schema.
const whole = `{
	"format": "tidysump-card", "version": 1, "id": "one", "invented": true, "make": "Plainford", "model": "One", "yearFrom": 2001, "yearTo": 2006,
	"layout": "wet-sump",
	"engine": {"cylinders": 2, "displacement": 649, "cooling": "liquid", "clutch": "wet", "noLamp": true, "returnSeen": true, "noNeutral": true},
	"sources": [{"id": "book", "title": "Plainford One"}],
	"circuits": [{
		"id": "engine", "role": "engine", "wetClutch": true,
		"oil": {"grades": ["10W-40", "20W-50"], "marks": ["MA2"], "service": "SL", "standing": "manual", "source": "book", "page": "7", "method": "so"},
		"oilOnly": FIGURE_L, "withFilter": FIGURE_L, "dry": FIGURE_L, "everyNth": 2, "interval": INTERVAL,
		"warm": {"target": FIGURE_°C, "time": FIGURE_min},
		"level": {"device": "window", "state": "warm", "stance": "upright", "run": FIGURE_min, "wait": FIGURE_min, "band": FIGURE_L, "where": "right cover"}
	}],
	"chart": [{"circuit": "engine", "grade": "10W-40", "from": FIGURE_°C, "to": FIGURE_°C}],
	"bolts": [{
		"id": "drain", "purpose": "drain-plug", "circuit": "engine", "of": "filter", "behind": "strainer", "place": "under the sump", "count": 2,
		"order": "crosswise", "drains": true, "tank": true, "magnet": true, "thread": "M14x1.5", "drive": "hexagon",
		"size": FIGURE_mm, "torque": FIGURE_N·m, "turn": FIGURE_turn,
		"seal": {"kind": "flat-copper", "inner": FIGURE_mm, "outer": FIGURE_mm, "thickness": FIGURE_mm, "count": 2}
	}],
	"filters": [{
		"id": "filter", "kind": "spin-on", "circuit": "engine", "mount": "up", "ringWith": "oil", "everyNth": 2, "interval": INTERVAL, "place": "front", "behind": "drain",
		"thread": "M20x1.5", "ring": FIGURE_mm, "height": FIGURE_mm, "ownNumber": "shelf 4",
		"seals": [{"kind": "o-ring", "inner": FIGURE_mm, "outer": FIGURE_mm, "thickness": FIGURE_mm, "count": 2}]
	}],
	"strainers": [{
		"id": "strainer", "circuit": "engine", "everyNth": 2, "interval": INTERVAL, "place": "left", "behind": "filter",
		"seals": [{"kind": "o-ring", "inner": FIGURE_mm, "outer": FIGURE_mm, "thickness": FIGURE_mm, "count": 2}]
	}],
	"interval": INTERVAL,
	"notes": ["One.", "Two."],
	"notesAt": [{"at": "drain", "text": "Mind the pipe."}],
	"quotes": [{"words": "Drain plug: 3 to 4 N·m", "source": "book", "page": "7", "of": [{"at": "drain/torque", "says": "3–4 N·m"}]}]
}`

const interval = `{
	"distance": FIGURE_km, "time": FIGURE_months, "hours": FIGURE_h,
	"first": {"distance": FIGURE_km, "time": FIGURE_months, "hours": FIGURE_h},
	"severe": {"distance": FIGURE_km, "time": FIGURE_months, "hours": FIGURE_h}
}`

// tree gives a card's JSON as the language has it.
func tree(t *testing.T, text string) any {
	t.Helper()
	text = strings.ReplaceAll(text, "INTERVAL", interval)
	for {
		before, after, more := strings.Cut(text, "FIGURE_")
		if !more {
			break
		}
		end := strings.IndexAny(after, ",}] \n")
		text = before + `{"value": 3, "to": 4, "unit": "` + after[:end] + `", "standing": "manual", "source": "book", "page": "7", "method": "so", "kept": "yes"}` + after[end:]
	}
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	return v
}

func read(t *testing.T, v any) *card.Card {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	c := &card.Card{}
	if list := wire.Read(text, c); !card.Readable(list) && finding.Refused(list) {
		for _, f := range list {
			if f.Code != "missing" {
				t.Fatalf("%s: %v", text, list)
			}
		}
	}
	return c
}

func between(from, to *card.Card) []changes.Change {
	return changes.Between(from, to, quantity.Metric)
}

// schema gives a definition of the card's schema, its reference followed.
func schema(t *testing.T) (root map[string]any) {
	t.Helper()
	if err := json.Unmarshal([]byte(specs.CardSchema), &root); err != nil {
		t.Fatal(err)
	}
	return root
}

// properties are the members that a definition names, through its references.
func properties(root, at map[string]any) map[string]map[string]any {
	all := map[string]map[string]any{}
	if ref, ok := at["$ref"].(string); ok {
		maps.Copy(all, properties(root, root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)))
	}
	if own, ok := at["properties"].(map[string]any); ok {
		for name, v := range own {
			if one, ok := v.(map[string]any); ok && all[name]["$ref"] == nil {
				all[name] = one
			}
		}
	}
	return all
}

// resolved follows the reference of a definition, and its items.
func resolved(root, at map[string]any) map[string]any {
	if items, ok := at["items"].(map[string]any); ok {
		return items
	}
	return at
}

// The card of the tests says whatever a card can say.
func TestWhole_HasAllOfTheSchema(t *testing.T) {
	root := schema(t)
	seen := 0
	var walk func(at map[string]any, v any, where string)
	walk = func(at map[string]any, v any, where string) {
		if list, ok := v.([]any); ok {
			v, at = list[0], resolved(root, at)
		}
		object, ok := v.(map[string]any)
		if !ok {
			return
		}
		for name, of := range properties(root, at) {
			seen++
			inner, there := object[name]
			if !there && !(name == "to" && strings.Contains(where, "/chart")) {
				t.Errorf("the card has no %s/%s", where, name)
				continue
			}
			walk(of, inner, where+"/"+name)
		}
	}
	walk(root, tree(t, whole), "")
	if seen < 200 {
		t.Errorf("only %d members were looked for", seen)
	}
}

// Each member of a card that is changed, or taken away, is told; once where it is a figure's
// or a word.
func TestBetween_EveryMember(t *testing.T) {
	before := read(t, tree(t, whole))
	changed := 0
	try := func(where string, v any) {
		changed++
		after := read(t, v)
		if list := between(before, after); len(list) == 0 {
			t.Errorf("%s differs, and nothing is told", where)
		}
		if list := between(after, before); len(list) == 0 {
			t.Errorf("%s differs back, and nothing is told", where)
		}
	}
	root := tree(t, whole)
	var walk func(v any, where string, set func(any))
	walk = func(v any, where string, set func(any)) {
		switch v := v.(type) {
		case map[string]any:
			for _, name := range slices.Sorted(maps.Keys(v)) {
				if where == "" && (name == "format" || name == "version") {
					continue // the same in all cards
				}
				kept := v[name]
				at := where + "/" + name
				walk(kept, at, func(other any) { v[name] = other })
				v[name] = kept
				delete(v, name)
				try(at+" taken away", root)
				v[name] = kept
			}
		case []any:
			for i := range v {
				kept := v[i]
				walk(kept, where+"/"+strconv.Itoa(i), func(other any) { v[i] = other })
				v[i] = kept
			}
			set(v[:len(v)-1])
			try(where+" shortened", root)
			set(append(slices.Clone(v), v[0]))
			try(where+" with the first once more", root)
			set(v)
		case string:
			for _, other := range []string{v + "x", ""} {
				set(other)
				try(where+" "+other, root)
			}
		case float64:
			for _, other := range []float64{v + 1, v + 1e-9} {
				if other == v+1e-9 && !strings.HasSuffix(where, "/value") && !strings.HasSuffix(where, "/to") {
					continue // a whole number
				}
				set(other)
				try(where+" a little more", root)
			}
		case bool:
			set(!v)
			try(where, root)
		}
	}
	walk(root, "", nil)
	if changed < 600 {
		t.Errorf("only %d changes were tried", changed)
	}
	if list := between(before, read(t, root)); len(list) != 0 {
		t.Errorf("the test changed the card for good: %v", list)
	}
}

// A card that is the same, or says the same in another way, differs in nothing.
func TestBetween_Same(t *testing.T) {
	for name, text := range specs.Cards() {
		a, b := &card.Card{}, &card.Card{}
		wire.Read(text, a)
		wire.Read(wire.Write(a), b)
		if list := between(a, b); len(list) != 0 {
			t.Errorf("%s differs from itself: %v", name, list)
		}
	}
	a, b := read(t, tree(t, whole)), read(t, tree(t, whole))
	a.Bolts[0].Torque, b.Bolts[0].Torque = nil, &card.Figure{Standing: card.Unknown}
	a.Circuits[0].EveryNth, b.Circuits[0].EveryNth = 0, 1
	a.Bolts[0].Count, b.Bolts[0].Count = 0, 1
	a.Interval.First, b.Interval.First = nil, &card.Span{}
	if list := between(a, b); len(list) != 0 {
		t.Errorf("told of what is the same: %v", list)
	}
}

func mirrored(list []changes.Change) (texts []string) {
	for _, c := range list {
		c.Before, c.After = c.After, c.Before
		switch c.Word {
		case "differs.added":
			c.Word = "differs.removed"
		case "differs.removed":
			c.Word = "differs.added"
		}
		texts = append(texts, c.Word+" "+values(c.Before)+" → "+values(c.After))
	}
	slices.Sort(texts)
	return texts
}

func values(f *shown.Figure) string {
	if f == nil {
		return "-"
	}
	return string(wire.Write(f))
}

// Between any two sample cards, what differs one way differs the other way; each word of
// it is in the catalogue, and none is a member's name.
func TestBetween_SampleCards(t *testing.T) {
	var all []*card.Card
	for _, name := range slices.Sorted(maps.Keys(specs.Cards())) {
		c := &card.Card{}
		wire.Read(specs.Cards()[name], c)
		all = append(all, c)
	}
	for _, a := range all {
		for _, b := range all {
			there, back := between(a, b), between(b, a)
			var texts []string
			for _, c := range back {
				texts = append(texts, c.Word+" "+values(c.Before)+" → "+values(c.After))
			}
			slices.Sort(texts)
			if a != b && !slices.Equal(mirrored(there), texts) {
				t.Errorf("%s and %s differ in another way than back", a.ID, b.ID)
			}
			for _, c := range there {
				said(t, "@"+c.Word)
				if c.Part != "" {
					said(t, "@"+c.Part)
				}
				for _, f := range []*shown.Figure{c.Before, c.After} {
					if f != nil {
						for _, text := range f.Texts {
							said(t, text)
						}
					}
				}
			}
		}
	}
}

// said wants a word id to be a word of the catalogue.
func said(t *testing.T, text string) {
	t.Helper()
	if strings.HasPrefix(text, "@") && plantest.Text(text, nil) == text {
		t.Errorf("the catalogue has no %q", text)
	}
}

// told reads changes as one line each.
func told(list []changes.Change) (lines []string) {
	for _, c := range list {
		line := c.Word
		if c.Part != "" {
			line = c.Part + " (" + c.Place + ") " + line
		}
		for _, f := range []*shown.Figure{c.Before, c.After} {
			line += " | "
			if f != nil {
				line += strings.Join(f.Texts, "; ")
				if f.Standing != "" {
					line += " " + string(f.Standing)
				}
			}
		}
		if c.Origin {
			line += " origin"
		}
		lines = append(lines, line)
	}
	return lines
}

func TestBetween(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*card.Card)
		want   []string
	}{
		{"a torque", func(c *card.Card) { c.Bolts[0].Torque.Value, c.Bolts[0].Torque.To = 30, 0 },
			[]string{"purpose.drain-plug (under the sump) differs.torque | 3–4 N·m; 2.21–2.95 lbf·ft; 26.6–35.4 lbf·in manual | 30 N·m; 22 lbf·ft manual"}},
		{"measured now", func(c *card.Card) { c.Circuits[0].OilOnly.Standing = card.Measured },
			[]string{"role.engine () differs.oil-only | 3–4 L; 3.2–4.2 US qt manual | 3–4 L; 3.2–4.2 US qt measured"}},
		{"another page", func(c *card.Card) { c.Circuits[0].OilOnly.Page = "8" },
			[]string{"role.engine () differs.oil-only | 3–4 L; 3.2–4.2 US qt manual | 3–4 L; 3.2–4.2 US qt manual origin"}},
		{"no longer known", func(c *card.Card) { c.Bolts[0].Size = nil },
			[]string{"purpose.drain-plug (under the sump) differs.size | 3–4 mm manual | "}},
		{"another unit", func(c *card.Card) {
			*c.Circuits[0].Dry = card.Figure{Value: 3000, To: 4000, Unit: "mL", Standing: card.FromManual, Source: "book", Page: "7", Method: "so", Kept: "yes"}
		},
			[]string{"role.engine () differs.dry | 3–4 L manual | 3000–4000 mL manual"}},
		{"grades", func(c *card.Card) { c.Circuits[0].Oil.Grades = []string{"10W-40"} },
			[]string{"role.engine () differs.grades | 10W-40, 20W-50 manual | 10W-40 manual"}},
		{"a thread", func(c *card.Card) { c.Bolts[0].Thread = "" }, []string{"purpose.drain-plug (under the sump) differs.thread | M14x1.5 | "}},
		{"a word", func(c *card.Card) { c.Circuits[0].Level.State = card.Hot }, []string{"role.engine () differs.state | @state.warm | @state.hot"}},
		{"a plug more", func(c *card.Card) {
			c.Bolts = append(c.Bolts, card.Bolt{ID: "b2", Purpose: card.FillerCap, Place: "@right"})
		},
			[]string{"purpose.filler-cap (right) differs.added |  | "}},
		{"a plug less", func(c *card.Card) { c.Bolts = nil },
			[]string{"purpose.drain-plug (under the sump) differs.removed |  | "}},
		{"notes", func(c *card.Card) { c.Notes = []string{"Two.", "Three."} }, []string{"differs.note |  | Three.", "differs.note | One. | "}},
		{"notes in another order", func(c *card.Card) { slices.Reverse(c.Notes) }, []string{"differs.sequence |  | "}},
		{"a note for a step", func(c *card.Card) { c.NotesAt[0].At = "fill" },
			[]string{"note-at.fill () differs.note |  | Mind the pipe.", "note-at.drain () differs.note | Mind the pipe. | "}},
		{"a seal more", func(c *card.Card) {
			c.Strain[0].Seals = append(c.Strain[0].Seals, card.Seal{Kind: card.SealKind("paper")})
		}, []string{"differs-of.strainer (left) differs.seals | 1 | 2", "differs-of.strainer (left) differs.seal |  | @seal.paper"}},
		{"years", func(c *card.Card) { c.YearTo = 0 }, []string{"differs.year-to | 2006 | "}},
	} {
		before, after := read(t, tree(t, whole)), read(t, tree(t, whole))
		c.change(after)
		if got := told(between(before, after)); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}
