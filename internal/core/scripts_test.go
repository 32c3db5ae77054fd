package core_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/specs"
)

// A number is a number in whatever digits and with whatever marks it is typed: each text
// that is read in the examples of the operations, in the digits of any script, gives byte
// for byte the same answer.
func TestScripts(t *testing.T) {
	read := textsRead(t)
	examples := slices.DeleteFunc(specs.Examples(), func(e specs.Example) bool {
		return len(read[e.Op]) == 0 || !json.Valid([]byte(e.In))
	})
	rapid.Check(t, func(t *rapid.T) {
		e := examples[rapid.IntRange(0, len(examples)-1).Draw(t, "example")]
		typed := newTyping(t)
		in, err := json.Marshal(retyped(decodeIn(t, e.In), "", func(where, text string) string {
			if !slices.Contains(read[e.Op], unnumbered(where)) || !strings.ContainsAny(text, "0123456789") {
				return text
			}
			return typed.text(text)
		}))
		if err != nil {
			t.Fatal(err)
		}
		want, got := core.Call(e.Op, []byte(e.In)), core.Call(e.Op, in)
		if string(got) != string(want) {
			t.Fatalf("%s: %s\nanswers %s\nand as %s\nanswers %s", e.Op, e.In, want, in, got)
		}
	})
}

// kept are texts of the calculations that nothing reads.
var kept = []string{"/number", "/seller", "/customer", "/remark", "/currency", "/estimate", "/lines/text", "/lines/of", "/id"}

// textsRead are the places of an operation's input, without their numbers, in which a
// person's text is read.
func textsRead(t *testing.T) map[string][]string {
	read := map[string][]string{"read-entry": {"/text"}, "plan": {"/bench/outside"}, "replay": {"/bench/outside", "/events/value"}, "bill-lines": {"/events/value"}, "due": {"/jobs/events/value"}}
	for _, of := range []string{`{}`, `{"of":"bill"}`} {
		var answer struct {
			OK struct {
				Forms []struct {
					Op     string
					Fields []formField
				}
			}
		}
		if err := json.Unmarshal(core.Call("forms", []byte(of)), &answer); err != nil || len(answer.OK.Forms) == 0 {
			t.Fatalf("forms %s: %v, %v", of, answer, err)
		}
		for _, form := range answer.OK.Forms {
			read[form.Op] = append(read[form.Op], places(form.Fields, "")...)
		}
	}
	return read
}

type formField struct {
	Name, Kind string
	Rows       []formField
}

func places(fields []formField, at string) (list []string) {
	for _, d := range fields {
		where := at + "/" + d.Name
		switch {
		case d.Kind == "list":
			list = append(list, places(d.Rows, where)...)
		case d.Kind != "choice" && d.Kind != "yes" && !slices.Contains(kept, where) && d.Name != "id":
			list = append(list, where)
		}
	}
	return list
}

// unnumbered is a pointer without the places in lists.
func unnumbered(where string) string {
	steps := strings.Split(where, "/")
	return strings.Join(slices.DeleteFunc(steps, func(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }), "/")
}

func decodeIn(t *rapid.T, text string) any {
	var v any
	d := json.NewDecoder(strings.NewReader(text))
	d.UseNumber()
	if err := d.Decode(&v); err != nil {
		t.Fatal(err)
	}
	return v
}

// retyped gives what stands there with each of its texts written anew.
func retyped(v any, where string, write func(where, text string) string) any {
	switch is := v.(type) {
	case map[string]any:
		for name, inner := range is {
			is[name] = retyped(inner, where+"/"+name, write)
		}
	case []any:
		for n, inner := range is {
			is[n] = retyped(inner, where+"/0", write)
		}
	case string:
		return write(where, is)
	}
	return v
}

// typing is a keyboard: the nought of its digits, its marks, and what it puts in unseen.
type typing struct {
	nought             rune
	point, comma, mark string
	percent            string
	unseen             []string
	at                 int
}

// noughts are those of every script that has digits.
var noughts = func() (list []rune) {
	for r := rune(0x80); r <= unicode.MaxRune; r++ {
		if unicode.Is(unicode.Nd, r) {
			if len(list) == 0 || r >= list[len(list)-1]+10 {
				list = append(list, r)
			}
		}
	}
	return list
}()

func newTyping(t *rapid.T) *typing {
	common := []rune{'٠', '۰', '०', '০', '０'}
	return &typing{
		nought:  rapid.OneOf(rapid.SampledFrom(common), rapid.SampledFrom(noughts)).Draw(t, "nought"),
		point:   rapid.SampledFrom([]string{".", "٫", "．", "。"}).Draw(t, "point"),
		comma:   rapid.SampledFrom([]string{",", "،", "，"}).Draw(t, "comma"),
		mark:    rapid.SampledFrom([]string{"'", "٬", "’"}).Draw(t, "mark of thousands"),
		percent: rapid.SampledFrom([]string{"%", "٪", "％"}).Draw(t, "percent"),
		unseen:  rapid.SliceOfN(rapid.SampledFrom([]string{"", "", "", "\u200e", "\u200f", "\u061c", "\u2066", "\u2067", "\u2068", "\u2069"}), 5, 5).Draw(t, "unseen"),
	}
}

// text writes a text with it. A point stands only before a digit: in words it is no mark.
func (k *typing) text(text string) string {
	var b strings.Builder
	for n, r := range text {
		before := n+1 < len(text) && text[n+1] >= '0' && text[n+1] <= '9'
		b.WriteString(k.unseen[k.at%len(k.unseen)])
		k.at++
		switch {
		case r >= '0' && r <= '9':
			b.WriteRune(k.nought + r - '0')
		case r == '.' && before:
			b.WriteString(k.point)
		case r == ',' && before:
			b.WriteString(k.comma)
		case r == '\'' && before:
			b.WriteString(k.mark)
		case r == '%':
			b.WriteString(k.percent)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteString(k.unseen[0])
	return b.String()
}

// Each script has ten digits in a row: by that they are read.
func TestScripts_TenEach(t *testing.T) {
	if len(noughts) < 60 {
		t.Errorf("only %d scripts have digits: %q", len(noughts), string(noughts))
	}
	for _, nought := range noughts {
		for n := range rune(10) {
			text := string([]rune{'1', '0' + n, '.', '5'})
			want := string(core.Call("convert", quoted(text+" km")))
			other := string([]rune{nought + 1, nought + n, '.', nought + 5})
			if got := string(core.Call("convert", quoted(other+" km"))); got != want || !strings.Contains(got, `"ok"`) {
				t.Errorf("%q: %s, want as %q: %s", other, got, text, want)
			}
		}
	}
}

func quoted(text string) []byte {
	in, err := json.Marshal(map[string]string{"text": text})
	if err != nil {
		panic(err)
	}
	return in
}
