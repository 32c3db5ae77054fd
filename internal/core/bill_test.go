package core_test

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
	"tidysump/specs"
)

// billAnswer is what "bill" comes to, read without the program's own reader.
type billAnswer struct {
	Currency, Prices                      string
	Digits, Sum, Discount, Net, Tax       int
	Rounding, Total, Estimate, More, Less int
	Lines                                 []struct {
		Count, Unit, Rate       string
		Price, Discount, Amount int
	}
	Taxes []struct {
		Rate      string
		Base, Tax int
	}
	Notes []struct{ Code, Where, Grade string }
}

func billOf(t reporter, in string) billAnswer {
	var b billAnswer
	answered(t, "bill", []byte(in), &b)
	return b
}

// How much of a line: litres for mL, tenths of an hour, pieces.
func TestBill_Counts(t *testing.T) {
	for _, c := range []struct{ kind, count, want, unit string }{
		{"oil", "3.4 L", "3.4", "L"}, {"oil", "3,4", "3.4", "L"}, {"oil", "340 mL", "0.34", "L"}, {"oil", "2.5 US qt", "2.5", "US qt"},
		{"oil", "", "1", "L"}, {"labour", "0.7 h", "0.7", "h"}, {"labour", "0,7", "0.7", "h"}, {"labour", "42 min", "0.7", "h"},
		{"labour", "43 min", "0.8", "h"}, {"labour", "0.71 h", "0.8", "h"}, {"part", "2", "2", ""}, {"bottle", "1", "1", ""},
		{"flat", "", "1", ""}, {"free", "0.5", "0.5", ""}, {"part", "0", "0", ""},
	} {
		l := billOf(t, fmt.Sprintf(`{"currency":"EUR","lines":[{"kind":%q,"count":%q,"price":"10.00"}]}`, c.kind, c.count)).Lines[0]
		if l.Count != c.want || (l.Unit != c.unit && c.count != "") {
			t.Errorf("%s %q: %s %s, want %s %s", c.kind, c.count, l.Count, l.Unit, c.want, c.unit)
		}
	}
}

// Labour that is billed as more than it took says so, and no other does.
func TestBill_LabourRounded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minutes := rapid.IntRange(1, 600).Draw(t, "minutes")
		count := fmt.Sprintf("%d min", minutes)
		if minutes%3 == 0 && rapid.Bool().Draw(t, "in hours") {
			count = strings.TrimSpace(fmt.Sprintf("%g", float64(minutes)/60) + " h")
		}
		b := billOf(t, fmt.Sprintf(`{"currency":"EUR","lines":[{"kind":"labour","count":%q,"price":"10.00"}]}`, count))
		told := false
		for _, n := range b.Notes {
			told = told || n.Code == "labour-rounded" && n.Where == "/lines/0/count"
		}
		if told != (minutes%6 != 0) {
			t.Fatalf("%s is billed as %s h, told: %t", count, b.Lines[0].Count, told)
		}
	})
}

// What can't be a bill is refused, one finding beside its field.
func TestBill_Refuses(t *testing.T) {
	for _, c := range []struct{ in, code, where string }{
		{`{"lines":[{"kind":"part"}]}`, "missing", "/currency"},
		{`{"currency":"EUR"}`, "missing", "/lines"},
		{`{"currency":"ERU","lines":[{"kind":"part"}]}`, "unknown-currency", "/currency"},
		{`{"currency":"EUR","lines":[{"kind":"part","price":"abc"}]}`, "no-plain-number", "/lines/0/price"},
		{`{"currency":"EUR","lines":[{"kind":"part","price":"1"},{"kind":"part","price":"-5"}]}`, "negative", "/lines/1/price"},
		{`{"currency":"EUR","lines":[{"kind":"part","price":"1,400"}]}`, "number-two-ways", "/lines/0/price"},
		{`{"currency":"JPY","lines":[{"kind":"part","price":"100.5"}]}`, "too-many-decimals", "/lines/0/price"},
		{`{"currency":"JPY","cash":"0.05","lines":[{"kind":"part","price":"100"}]}`, "too-many-decimals", "/cash"},
		{`{"currency":"EUR","lines":[{"kind":"part","price":"999999999999"}]}`, "more-than-can-be", "/lines/0/price"},
		{`{"currency":"EUR","lines":[{"kind":"part","price":"3 %"}]}`, "no-plain-number", "/lines/0/price"},
		{`{"currency":"EUR","lines":[{"kind":"oil","count":"3 km","price":"1"}]}`, "unit-of-other-kind", "/lines/0/count"},
		{`{"currency":"EUR","lines":[{"kind":"labour","count":"45","price":"1"}]}`, "number-two-ways", "/lines/0/count"},
		{`{"currency":"EUR","lines":[{"kind":"labour","count":"-1 h","price":"1"}]}`, "not-believable", "/lines/0/count"},
		{`{"currency":"EUR","lines":[{"kind":"part","count":"1001","price":"1"}]}`, "more-than-can-be", "/lines/0/count"},
		{`{"currency":"EUR","lines":[{"kind":"cheese","price":"1"}]}`, "unknown-word", "/lines/0/kind"},
		{`{"currency":"EUR","lines":[{"kind":"part","price":"1","discount":"1.01"}]}`, "discount-too-large", "/lines/0/discount"},
		{`{"currency":"EUR","lines":[{"kind":"part","price":"1","discount":"101 %"}]}`, "more-than-can-be", "/lines/0/discount"},
		{`{"currency":"EUR","discount":"2","lines":[{"kind":"part","price":"1"}]}`, "discount-too-large", "/discount"},
		{`{"currency":"EUR","prices":"net","lines":[{"kind":"part","price":"1"}]}`, "no-tax-rate", "/tax"},
		{`{"currency":"EUR","prices":"net","tax":"120","lines":[{"kind":"part","price":"1"}]}`, "more-than-can-be", "/tax"},
	} {
		out, outcome := core.Do("bill", []byte(c.in))
		var a answer
		if err := json.Unmarshal(out, &a); err != nil || outcome != core.Refused || len(a.Findings) != 1 {
			t.Errorf("%s: %s", c.in, out)
			continue
		}
		if f := a.Findings[0]; f.Code != c.code || f.Where != c.where {
			t.Errorf("%s: %s at %s, want %s at %s", c.in, f.Code, f.Where, c.code, c.where)
		}
	}
}

// Small materials are a share of the labour, whatever stands between them.
func TestBill_Materials(t *testing.T) {
	b := billOf(t, `{"currency":"EUR","lines":[{"kind":"materials","price":"3 %"},{"kind":"labour","count":"0.7 h","price":"70"},
		{"kind":"part","price":"12"},{"kind":"labour","count":"0.5 h","price":"60","discount":"10 %"}]}`)
	// 49.00 and 27.00 of labour: 3 % of 76.00.
	if got := b.Lines[0].Amount; got != 228 {
		t.Errorf("materials %d, want 228", got)
	}
}

// The estimate is compared with the bill; more than a tenth above it is reported.
func TestBill_Estimate(t *testing.T) {
	in := func(price, estimate string) string {
		text, _ := json.Marshal(`{"currency":"EUR","lines":[{"kind":"flat","price":"` + estimate + `"}]}`)
		return `{"seller":"We","customer":"You","currency":"EUR","lines":[{"kind":"flat","price":"` + price + `"}],"estimate":` + string(text) + `}`
	}
	for _, c := range []struct {
		price, estimate string
		more, less      int
		told            string
	}{
		{"110.00", "100", 1000, 0, ""},
		{"110.01", "100", 1001, 0, "over-estimate"},
		{"90", "100", 0, 1000, ""},
		{"100", "100", 0, 0, ""},
		{"100", "x", 0, 0, "estimate-unreadable"},
	} {
		b := billOf(t, in(c.price, c.estimate))
		told := ""
		for _, n := range b.Notes {
			told = n.Code
		}
		if b.More != c.more || b.Less != c.less || told != c.told {
			t.Errorf("%s for %s: more %d less %d %q", c.price, c.estimate, b.More, b.Less, told)
		}
	}
}

// What a paper has to show and does not is told of each kind of paper, and of nothing
// else: seller and customer of both, number and reason of a bill.
func TestBill_Lacks(t *testing.T) {
	has := map[string]string{"seller": "We, 3 Mill Lane", "customer": "You", "number": "2026-17", "remark": "Small business", "prices": "net"}
	for _, c := range []struct{ what, without, want string }{
		{"estimate", "", ""}, {"bill", "", ""},
		{"estimate", "seller", "bill-no-seller"}, {"bill", "seller", "bill-no-seller"},
		{"estimate", "customer", "bill-no-customer"}, {"bill", "customer", "bill-no-customer"},
		{"estimate", "number", ""}, {"bill", "number", "bill-no-number"},
		{"bill", "remark", ""}, {"bill", "prices", ""},
		{"bill", "remark prices", "bill-no-tax"}, {"estimate", "remark prices", ""},
	} {
		in := map[string]any{"what": c.what, "currency": "EUR", "tax": "20 %", "lines": []map[string]string{{"kind": "flat", "price": "10"}}}
		for name, text := range has {
			if !strings.Contains(c.without, name) {
				in[name] = text
			}
		}
		text, err := json.Marshal(in)
		if err != nil {
			t.Fatal(err)
		}
		var told []string
		for _, n := range billOf(t, string(text)).Notes {
			told = append(told, n.Code)
		}
		if got := strings.Join(told, " "); got != c.want {
			t.Errorf("%s without %s: %q, want %q", c.what, c.without, got, c.want)
		}
	}
}

// Whatever is typed, a bill is added up or refused, what is reported has words, and
// what is added up adds up.
func TestBill_Words(t *testing.T) {
	words := specs.Sentences()
	money := rapid.SampledFrom([]string{"", "14.00", "14,5", "0", "-1", "x", "10 %", "3,333 %", "1,400", "9e9", "100000000", "1 000"})
	count := rapid.SampledFrom([]string{"", "1", "3.4 L", "2 qt", "42 min", "0.7 h", "12", "-2", "L", "9999"})
	rapid.Check(t, func(t *rapid.T) {
		line := func() map[string]string {
			return map[string]string{
				"kind":     rapid.SampledFrom([]string{"part", "oil", "bottle", "labour", "flat", "waste", "materials", "free"}).Draw(t, "kind"),
				"count":    count.Draw(t, "count"),
				"price":    money.Draw(t, "price"),
				"discount": money.Draw(t, "discount"),
				"tax":      money.Draw(t, "tax"),
			}
		}
		input := map[string]any{"currency": rapid.SampledFrom([]string{"EUR", "JPY", "KWD", "XXX"}).Draw(t, "currency"), "tax": money.Draw(t, "usual"),
			"prices": rapid.SampledFrom([]string{"", "none", "net", "gross"}).Draw(t, "prices"), "cash": rapid.SampledFrom([]string{"", "0.05", "1"}).Draw(t, "cash")}
		var lines []map[string]string
		for range rapid.IntRange(1, 4).Draw(t, "lines") {
			lines = append(lines, line())
		}
		input["lines"] = lines
		in, err := json.Marshal(input)
		if err != nil {
			t.Fatal(err)
		}
		out, outcome := core.Do("bill", in)
		if outcome != core.OK && outcome != core.Refused {
			t.Fatalf("%s: %s", in, out)
		}
		var a any
		if err := json.Unmarshal(out, &a); err != nil {
			t.Fatal(err)
		}
		sayer{t, words}.answer(a)
		if outcome == core.OK {
			if b := billOf(t, string(in)); b.Net+b.Tax+b.Rounding != b.Total {
				t.Fatalf("%s: %s", in, out)
			}
		}
	})
}

// The lines proposed for a job are what it used: each part, the oil as poured,
// and what is proposed can be billed.
func TestBillLines(t *testing.T) {
	for name, card := range specs.Cards() {
		in := `{"card":` + string(card) + `}`
		var proposed struct {
			Lines []struct {
				Word   string
				Values map[string]string
			}
		}
		answered(t, "bill-lines", []byte(in), &proposed)
		var plan struct {
			Parts []struct {
				Word   string
				Values map[string]string
				Count  int
			}
		}
		answered(t, "plan", []byte(in), &plan)
		kinds := map[string]bool{}
		for n, p := range plan.Parts {
			kind := p.Values["kind"] + p.Values["size"] // seals that are alike are one line
			if kind == "" {
				kind = strconv.Itoa(n)
			}
			kinds[kind] = true
		}
		if want := len(kinds) + 2; len(proposed.Lines) != want {
			t.Errorf("%s: %d lines for %d parts, want %d", name, len(proposed.Lines), len(plan.Parts), want)
		}
		var lines []string
		for n, l := range proposed.Lines {
			lines = append(lines, fmt.Sprintf(`{"kind":%q,"count":%q,"price":"1"}`, l.Values["line"], l.Values["count"]))
			if l.Values["line"] == "oil" && plan.Parts[n].Values["volume"] != "@not-known" && l.Values["count"] != plan.Parts[n].Values["volume"] {
				t.Errorf("%s: %s of oil, due is %s", name, l.Values["count"], plan.Parts[n].Values["volume"])
			}
		}
		billOf(t, `{"currency":"EUR","lines":[`+strings.Join(lines, ",")+`]}`)
	}
}
