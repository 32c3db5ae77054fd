package specs

import (
	"encoding/json"
	"slices"
	"testing"
)

func TestExamples(t *testing.T) {
	const in, out, end = "```json in plan\n", "```json out\n", "```\n"
	for _, tt := range []struct {
		name, doc string
		want      []Example
		refused   bool
	}{
		{"a pair", "## plan\n\n" + in + "{}\n" + end + "so:\n" + out + "{\"ok\": 1}\n" + end, []Example{{"plan", "plan", "{}", `{"ok": 1}`}}, false},
		{"another block between", in + "{}\n" + end + "```sh\nmake\n```\n" + out + "1\n" + end, []Example{{"", "plan", "{}", "1"}}, false},
		{"no answer", in + "{}\n" + end, nil, true},
		{"no end", in + "{}\n", nil, true},
		{"two inputs", in + "{}\n" + end + in + "{}\n" + end, nil, true},
		{"an answer to nothing", out + "{}\n" + end, nil, true},
		{"a block of neither kind", "```json\n{}\n" + end, nil, true},
	} {
		got, err := examples(tt.doc)
		if !slices.Equal(got, tt.want) || tt.refused != (err != nil) {
			t.Errorf("%s: %v, %v", tt.name, got, err)
		}
	}
	for _, e := range Examples() {
		if !json.Valid([]byte(e.Out)) {
			t.Errorf("%s: the answer of %s is no JSON: %s", e.Heading, e.Op, e.Out)
		}
	}
}
