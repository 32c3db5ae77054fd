package core_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"tidysump/internal/core"
)

// Of many bikes in one text nothing is sure before one is chosen, and each is judged once it
// is: as it is judged in a text of few.
func TestReadPage_ManyBikesAreJudgedOnceChosen(t *testing.T) {
	names := []string{"Hollin", "Tarrow", "Velden", "Brunsk", "Caddis", "Dorvan", "Ellert", "Osmund", "Gannet", "Hylax"}
	read := func(names []string, model string) (own []string) {
		t.Helper()
		var text strings.Builder
		for _, name := range names {
			text.WriteString(name + " 400\n\nOil drain plug M12 x 1.5  300 N·m\nEngine oil with filter change  1.2 L\n\n")
		}
		in, err := json.Marshal(map[string]any{"text": text.String(), "model": model})
		if err != nil {
			t.Fatal(err)
		}
		var answer struct {
			OK struct {
				Models   []string
				Readings []struct {
					What, Sure, Model string
					Doubts            []struct{ Code string }
				}
			}
		}
		if err := json.Unmarshal(core.Call("read-page", in), &answer); err != nil {
			t.Fatal(err)
		}
		if len(answer.OK.Models) != len(names) {
			t.Fatalf("models %q", answer.OK.Models)
		}
		for _, r := range answer.OK.Readings {
			if model == "" && r.Sure != "ask" {
				t.Errorf("%s of %s is sure", r.What, r.Model)
			}
			if r.What == "bolt.drain.torque" && r.Model == "Hollin 400" {
				for _, d := range r.Doubts {
					if !strings.HasPrefix(d.Code, "manual-") {
						own = append(own, d.Code)
					}
				}
			}
		}
		return own
	}
	few := read(names[:2], "Hollin 400")
	if len(few) == 0 {
		t.Fatal("300 N·m on M12 is believed")
	}
	if got := read(names, ""); len(got) > 0 {
		t.Errorf("%q before one is chosen", got)
	}
	if got := read(names, "Hollin 400"); !slices.Equal(got, few) {
		t.Errorf("%q of ten, %q of two", got, few)
	}
}
