package core_test

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/specs"
)

// reporter is what both a test and a property test can do.
type reporter interface {
	Fatalf(format string, args ...any)
}

// answered is must for a property test.
func answered(t reporter, op string, in []byte, into any) {
	var a answer
	out, outcome := core.Do(op, in)
	if err := json.Unmarshal(out, &a); err != nil || outcome != core.OK {
		t.Fatalf("%s %s: %s", op, in, out)
	}
	if err := json.Unmarshal(a.OK, into); err != nil {
		t.Fatalf("%s: %v", a.OK, err)
	}
}

// shownFigure is a figure of an answer, read without the program's own reader.
type shownFigure struct {
	Name, Standing, Method, Lookup string
	Texts                          []string
	Low, High                      float64
}

// askedField is a field of a calculation, as "forms" describes it.
type askedField struct {
	Name, Kind, Unit, Family string
	Needed                   bool
	Words                    []string
	Rows                     []askedField
}

type askedForm struct {
	Op, Caution string
	Fields      []askedField
}

func askedForms(t interface{ Fatalf(string, ...any) }) []askedForm {
	var answer struct{ OK struct{ Forms []askedForm } }
	if err := json.Unmarshal(core.Call("forms", []byte(`{}`)), &answer); err != nil || len(answer.OK.Forms) == 0 {
		t.Fatalf("forms: %v %v", answer, err)
	}
	return answer.OK.Forms
}

// typedTexts are what people type, and what they don't.
var typedTexts = map[string][]string{
	"volume":      {"2.6 L", "400 mL", "3 qt", "1", "0", "-1 L", "900 L"},
	"torque":      {"25 N·m", "18 lbf·ft", "177 lbf·in", "177 N·m", "1 N·m", "25", "1e9 N·m"},
	"length":      {"12 mm", "50", "0.5 in", "0", "400 mm", "9 m"},
	"temperature": {"65 °C", "20", "-5 °C", "150 °F", "95 °C", "800 °C"},
	"duration":    {"5 min", "20", "3 h", "0 s"},
	"angle":       {"90°", "3/4 turn", "180°", "1 turn", "5°", "45"},
	"viscosity":   {"14 mm²/s", "95 cSt", "11,1", "2", "1e7"},
	"density":     {"870 kg/m³", "0.86 g/mL", "1"},
	"area":        {"0.6 m²", "1"},
	"distance":    {"50 km", "30 mi", "0"},
	"taps":        {"0 2.1 4 6.2 8", "0 1 2 3 9", "1 2", "x", "0 NaN 1 1 2"},
	"share":       {"50 %", "80", "-20 %", "130 %"},
	"mass":        {"2 kg", "4 lb"},
	"pressure":    {"0", "1 bar", "340", "50 psi", "3.5 kgf/cm2", "90 bar"},
	"number":      {"12.50", "150", "0", "-3", "x"},
	"text":        {"M12x1.5", "M6", "3/4-16 UNF", "10W-40", "5W-30", "30", "15w50", "MA2", "SN", "SL JASO MA", "M48x2", "a", "25 Nm", "1 L"},
}

func drawInput(t *rapid.T, fields []askedField) map[string]any {
	in := map[string]any{}
	for _, f := range fields {
		// Now and then what is needed is missing, and what isn't is there.
		if often := rapid.IntRange(0, 9).Draw(t, "give "+f.Name); f.Needed && often == 0 || !f.Needed && often < 5 {
			continue
		}
		switch f.Kind {
		case "yes":
			in[f.Name] = rapid.Bool().Draw(t, f.Name)
		case "choice":
			in[f.Name] = rapid.SampledFrom(append(f.Words, "", "cheese")).Draw(t, f.Name)
		case "list":
			var rows []map[string]any
			for range rapid.IntRange(0, 4).Draw(t, f.Name) {
				rows = append(rows, drawInput(t, f.Rows))
			}
			in[f.Name] = rows
		default:
			texts := typedTexts[f.Kind]
			if texts == nil {
				t.Fatalf("no texts for the kind %q of %s", f.Kind, f.Name)
			}
			in[f.Name] = rapid.SampledFrom(texts).Draw(t, f.Name)
		}
	}
	return in
}

// What warns before one measures is said by each answer too, wherever one reads it.
func TestForms_CautionIsInAnswers(t *testing.T) {
	warned := 0
	for _, form := range askedForms(t) {
		for _, e := range specs.Examples() {
			if e.Op != form.Op || form.Caution == "" {
				continue
			}
			var answer struct{ Notes []struct{ Code string } }
			if answered(t, e.Op, []byte(e.In), &answer); !slices.ContainsFunc(answer.Notes, func(n struct{ Code string }) bool { return n.Code == form.Caution }) {
				t.Errorf("%s %s: %v; want %q among its notes, which its form says first", e.Op, e.In, answer.Notes, form.Caution)
			}
			warned++
		}
	}
	if warned < 2 {
		t.Errorf("%d examples of forms with a caution; want those of what is measured on a running engine and under a mass", warned)
	}
}

var wordPlaceholder = regexp.MustCompile(`\{(\w+)\}`)

// sayer checks the words of an answer against the catalogue.
type sayer struct {
	t     rapid.TB
	words map[string]string
}

func (s sayer) say(id string, values map[string]any) {
	id = strings.TrimPrefix(id, "@")
	if s.words[id] == "" {
		s.t.Errorf("the catalogue has no %q", id)
	}
	for _, m := range wordPlaceholder.FindAllStringSubmatch(s.words[id], -1) {
		value, filled := values[m[1]].(string)
		if !filled {
			s.t.Errorf("%s: nothing fills {%s}", id, m[1])
		}
		if word, isWord := strings.CutPrefix(value, "@"); isWord && s.words[word] == "" {
			s.t.Errorf("%s: the catalogue has no %q", id, word)
		}
	}
}

// wordMembers are the members that hold word ids.
var wordMembers = []string{"verdict", "name", "lookup", "prefill", "read"}

// answer goes through an answer and says all its words.
func (s sayer) answer(v any) {
	switch v := v.(type) {
	case []any:
		for _, e := range v {
			s.answer(e)
		}
	case map[string]any:
		if code, ok := v["code"].(string); ok {
			values, _ := v["values"].(map[string]any)
			s.say("finding."+code, values)
			if s.words["finding."+code+".do"] != "" {
				s.say("finding."+code+".do", values)
			}
			return
		}
		for name, e := range v {
			switch text, isText := e.(string); {
			case isText && slices.Contains(wordMembers, name):
				s.say(text, nil)
			case isText && strings.HasPrefix(text, "@"):
				s.say(text, nil)
			case isText && name == "standing":
				s.say("standing."+text, nil)
			}
			s.answer(e)
		}
	}
}

// Whatever is asked, a calculation answers or refuses, and every word it uses is
// in the catalogue with its placeholders filled. What ops.md asks is answered, by every one.
func TestCalculations_Words(t *testing.T) {
	forms := askedForms(t)
	words := specs.Sentences()
	says := func(t rapid.TB, op string, in []byte) core.Outcome {
		t.Helper()
		out, outcome := core.Do(op, in)
		if outcome != core.OK && outcome != core.Refused {
			t.Fatalf("%s %s: %s", op, in, out)
		}
		var answer any
		if err := json.Unmarshal(out, &answer); err != nil {
			t.Fatalf("%s %s: %s: %v", op, in, out, err)
		}
		sayer{t, words}.answer(answer)
		return outcome
	}
	for _, f := range forms {
		if in := exampleOf(f.Op); says(t, f.Op, []byte(in)) != core.OK {
			t.Errorf("%s does not answer its example %s", f.Op, in)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(forms).Draw(t, "calculation")
		input := drawInput(t, f.Fields)
		input["system"] = rapid.SampledFrom([]string{"metric", "us", "imperial"}).Draw(t, "system")
		in, err := json.Marshal(input)
		if err != nil {
			t.Fatal(err)
		}
		says(t, f.Op, in)
	})
}

// Each calculation has its title, and each field its label and each of its words
// to choose a sentence.
func TestCalculations_Labels(t *testing.T) {
	words, work := specs.Sentences(), specs.Words()[0].Part("work")
	var label func(op string, fields []askedField)
	label = func(op string, fields []askedField) {
		for _, f := range fields {
			if words["ask."+op+"."+f.Name] == "" && words["ask."+f.Name] == "" {
				t.Errorf("the catalogue has no ask.%s.%s", op, f.Name)
			}
			for _, w := range f.Words {
				if f.Family != "" && words[f.Family+w] == "" {
					t.Errorf("%s: the catalogue has no %q", op, f.Family+w)
				}
			}
			label(op, f.Rows)
		}
	}
	for _, f := range askedForms(t) {
		if words["calc."+f.Op+".why"] == "" {
			t.Errorf("the catalogue has no calc.%s.why", f.Op)
		}
		if work["calc."+f.Op] == "" {
			t.Errorf("work.json, which steps that link to it read, has no calc.%s", f.Op)
		}
		label(f.Op, f.Fields)
	}
}

// exampleOf gives the first example of an operation in ops.md.
func exampleOf(op string) string {
	for _, e := range specs.Examples() {
		if e.Op == op {
			return e.In
		}
	}
	return "{}"
}

// FuzzCalculation gives the calculations any bytes.
func FuzzCalculation(f *testing.F) {
	forms := askedForms(f)
	for n, form := range forms {
		f.Add(n, []byte(exampleOf(form.Op)))
	}
	f.Fuzz(func(t *testing.T, n int, in []byte) {
		op := forms[uint(n)%uint(len(forms))].Op
		if out, outcome := core.Do(op, in); outcome == core.Crashed || !json.Valid(out) {
			t.Fatalf("%s %q: %s", op, in, out)
		}
	})
}

// BenchmarkCalculation does each calculation's first example in ops.md.
func BenchmarkCalculation(b *testing.B) {
	for _, form := range askedForms(b) {
		in := []byte(exampleOf(form.Op))
		b.Run(form.Op, func(b *testing.B) {
			for b.Loop() {
				if _, outcome := core.Do(form.Op, in); outcome != core.OK {
					b.Fatal("no answer")
				}
			}
		})
	}
}
