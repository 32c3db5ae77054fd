package main

import (
	"encoding/json"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/specs"
)

// The list of the samples says of each bike what the core says that a list shows.
func TestShownBikes(t *testing.T) {
	out := core.Call("cards", slices.Concat([]byte(`{"cards":`), specs.Samples(), []byte(`}`)))
	text, err := shownBikes(out)
	if err != nil {
		t.Fatal(err)
	}
	type bike struct {
		ID, Name, Years, Layout string
		Invented                bool
		Gaps                    int
		Oils                    []struct {
			Due    struct{ Texts []string }
			Grades []string
		}
	}
	var whole struct{ OK struct{ Bikes []bike } }
	var shown struct{ Bikes []bike }
	if err := json.Unmarshal(out, &whole); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &shown); err != nil {
		t.Fatal(err)
	}
	if len(shown.Bikes) != len(specs.Cards()) {
		t.Fatalf("%d bikes of %d cards", len(shown.Bikes), len(specs.Cards()))
	}
	for n, got := range shown.Bikes {
		want := whole.OK.Bikes[n]
		if got.ID != want.ID || got.Name != want.Name || got.Years != want.Years || got.Layout != want.Layout || !got.Invented || got.Gaps != want.Gaps {
			t.Errorf("%+v, want %+v", got, want)
		}
		if len(got.Oils) != 1 || !slices.Equal(got.Oils[0].Due.Texts, want.Oils[0].Due.Texts[:len(got.Oils[0].Due.Texts)]) || len(want.Oils[0].Due.Texts) > 0 && len(got.Oils[0].Due.Texts) != 1 {
			t.Errorf("%s: %+v, want the first of %+v", got.ID, got.Oils, want.Oils)
		}
		if len(want.Oils[0].Grades) > 0 && got.Oils[0].Grades[0] != want.Oils[0].Grades[0] {
			t.Errorf("%s: grades %v, want the first of %v", got.ID, got.Oils[0].Grades, want.Oils[0].Grades)
		}
	}
}
