package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
)

// A refusal that finds fault in very many places tells the first of them, and says
// that there are more.
func TestWithText_Many(t *testing.T) {
	for _, many := range []int{1, mostTold, mostTold + 1, 50 * mostTold} {
		var parts []string
		for i := range many {
			parts = append(parts, fmt.Sprintf(`{"code":"missing","where":"/%d","grade":"refuse","values":{"name":"n"}}`, i))
		}
		var got findings
		if err := json.Unmarshal(withText([]byte(`{"findings":[`+strings.Join(parts, ",")+`]}`)), &got); err != nil {
			t.Fatal(err)
		}
		want := min(many, mostTold)
		if many > mostTold {
			want++
		}
		if len(got.Findings) != want {
			t.Fatalf("of %d findings it tells %d, want %d", many, len(got.Findings), want)
		}
		last := got.Findings[want-1]
		if more := last.Code == "http.more"; more != (many > mostTold) || last.Text == "" {
			t.Errorf("of %d findings the last is %+v", many, last)
		}
	}
}

func TestWithText_Other(t *testing.T) {
	for _, out := range []string{``, `{"ok":1}`, `{"findings":{}}`, `{"findings":[{"code":1}]}`, `[]`} {
		if got := string(withText([]byte(out))); got != out {
			t.Errorf("%s: %s", out, got)
		}
	}
}
