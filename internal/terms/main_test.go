package main

import (
	"os"
	"testing"

	"tidysump/specs"
)

// What the core reads by is what the files say.
func TestTable_IsCurrent(t *testing.T) {
	tables, err := tablesOf(specs.Terms())
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range tables {
		got, err := os.ReadFile("../manual/" + name)
		if err != nil {
			t.Fatal(err)
		}
		if string(got) != want {
			t.Errorf("internal/manual/%s is not what specs/terms says: make terms", name)
		}
	}
}

func TestTable_Refuses(t *testing.T) {
	for name, text := range map[string]string{
		"en.json": `{"language":"de"}`,
		"de.json": `{"language":"de","terms":{"with":["mit|ohne"]}}`,
		"fr.json": `{`,
	} {
		if _, err := tablesOf(map[string][]byte{name: []byte(text)}); err == nil {
			t.Errorf("%s: %s is taken", name, text)
		}
	}
}
