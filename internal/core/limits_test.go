package core_test

import (
	"encoding/json"
	"strings"
	"testing"

	"tidysump/internal/job"
	"tidysump/internal/ledger"
)

// What is offered to be typed can be taken in, in any alphabet: a letter has up to
// four bytes.
func TestLimits_LettersFitInAText(t *testing.T) {
	var limits struct{ Text, Note, Reading, Entry, Remark, Value int }
	must(t, "limits", []byte(`{}`), &limits)
	for name, letters := range map[string]int{"note": limits.Note, "reading": limits.Reading, "entry": limits.Entry, "remark": limits.Remark, "value": limits.Value} {
		if letters == 0 || 4*letters > limits.Text {
			t.Errorf("%s: %d letters in %d bytes", name, letters, limits.Text)
		}
	}
	note := strings.Repeat("🛢", limits.Note)
	in, err := json.Marshal(map[string]any{"card": json.RawMessage(rootFile(t, "testdata/card-minimal.json")),
		"events": []map[string]string{{"id": "a", "time": "2026-11-25T10:09:01.000Z", "kind": "note", "text": note}}})
	if err != nil {
		t.Fatal(err)
	}
	var state struct{ Notes []struct{ Text string } }
	must(t, "replay", in, &state)
	if len(state.Notes) != 1 || state.Notes[0].Text != note {
		t.Error("the longest note isn't taken in")
	}
}

// A remark in a fact may be as long as a note in a job: one number says both.
func TestLimits_Remark(t *testing.T) {
	if ledger.TextLetters != job.NoteLetters {
		t.Errorf("a fact's text may have %d letters, a note %d", ledger.TextLetters, job.NoteLetters)
	}
}

// Every field that is typed offers some letters, and what is chosen none.
func TestForms_Letters(t *testing.T) {
	type field struct {
		Name, Kind string
		Letters    int
		Lines      bool
		Rows       []field
	}
	for _, of := range []string{"", "bill"} {
		var answer struct{ Forms []struct{ Fields []field } }
		must(t, "forms", []byte(`{"of":"`+of+`"}`), &answer)
		var check func(f field)
		check = func(f field) {
			chosen := f.Kind == "choice" || f.Kind == "yes" || f.Kind == "list"
			if chosen != (f.Letters == 0) || f.Lines && f.Letters < 1000 {
				t.Errorf("%s %s offers %d letters, several lines %v", f.Kind, f.Name, f.Letters, f.Lines)
			}
			for _, row := range f.Rows {
				check(row)
			}
		}
		for _, form := range answer.Forms {
			for _, f := range form.Fields {
				check(f)
			}
		}
	}
}
