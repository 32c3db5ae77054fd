package main

import (
	"os"
	"testing"

	"tidysump/specs"
)

// What the core reads by is what the files say.
func TestTable_IsCurrent(t *testing.T) {
	want, err := table(specs.Terms())
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("../manual/terms_table.go")
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Error("internal/manual/terms_table.go is not what specs/terms says: make terms")
	}
}

func TestTable_Refuses(t *testing.T) {
	for name, text := range map[string]string{
		"en.json": `{"language":"de"}`,
		"de.json": `{"language":"de","terms":{"with":["mit|ohne"]}}`,
		"fr.json": `{`,
	} {
		if _, err := table(map[string][]byte{name: []byte(text)}); err == nil {
			t.Errorf("%s: %s is taken", name, text)
		}
	}
}
