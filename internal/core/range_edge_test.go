package core_test

import (
	"encoding/json"
	"strings"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/quantity"
)

// The two ends of a range are of one kind, and the second isn't below the first: over
// all pairs of units, joined in each way that ranges are written.
func TestConvert_RangesOfOneKind(t *testing.T) {
	for i := range quantity.Units {
		for j := range quantity.Units {
			u, v := &quantity.Units[i], &quantity.Units[j]
			if u.Kind == v.Kind {
				continue
			}
			for _, between := range []string{"–", " to ", " ± ", "~", "..."} {
				if u.ID == "oz" || v.ID == "oz" || v.ID == "%" && between == " ± " {
					continue // an "oz" beside a volume is a fluid one, a percentage is one of the figure
				}
				text := "20 " + u.ID + between + "3 " + v.ID
				if code := refusal(t, text); code != "unit-of-other-kind" {
					t.Errorf("%s: %q", text, code)
				}
			}
		}
	}
	for text, want := range map[string]string{
		"22–18 N·m": "range-reversed", "1--2 L": "range-reversed", "1 ± 2 L": "negative",
		"18–22 N·m": "", "-10 to -5 °C": "", "4 ± 1 kg": "", "2 kg ± 100 g": "", "3 ft–1 m": "",
	} {
		if code := refusal(t, text); code != want {
			t.Errorf("%s: %q, not %q", text, code, want)
		}
	}
}

// A number of a card that nobody can read is told shortened, with its place.
func TestCheckCard_LongNumber(t *testing.T) {
	card := `{"card":{"format":"tidysump-card","version":1,"id":"one","make":"P","model":"One","layout":"wet-sump","circuits":[
		{"id":"engine","role":"engine","oilOnly":{"value":1e300,"unit":"L","standing":"measured","method":"poured"}}]}}`
	answer := string(core.Call("check-card", []byte(card)))
	if !strings.Contains(answer, `"not-believable"`) || !strings.Contains(answer, "/card/circuits/0/oilOnly/value") || len(answer) > 400 {
		t.Errorf("%s", answer)
	}
}

// refusal gives the code with which convert refuses a text, "" where it reads it.
func refusal(t *testing.T, text string) string {
	t.Helper()
	in, _ := json.Marshal(map[string]string{"text": text})
	var answer struct{ Findings []struct{ Code string } }
	if err := json.Unmarshal(core.Call("convert", in), &answer); err != nil {
		t.Fatal(err)
	}
	for _, f := range answer.Findings {
		if f.Code != "unit-read-as" && f.Code != "number-read-as" {
			return f.Code
		}
	}
	return ""
}
