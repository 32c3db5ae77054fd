//go:build !wasm

package main

import (
	"bytes"
	"maps"
	"os"
	"strings"
	"testing"
)

const root, declared = "../..", "../../static/app/core/core.d.ts"

// What the page is checked against is what the core says now.
func TestDeclarations_AreUpToDate(t *testing.T) {
	want, err := declarations(root)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(declared)
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("core.d.ts is not what the operations say now (%v): make types", err)
	}
}

// A line of each kind of thing that is declared.
func TestDeclarations_Lines(t *testing.T) {
	text, err := declarations(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"  plan: { in: PlanInput; out: Plan };",
		"  'torque-check': { in: TorqueCheckInput; out: TorqueCheckAnswer };",
		"export type Litres = number;",
		"export type Stance = 'upright' | 'side-stand' | 'centre-stand';",
		"  card: Card;", // an input must have it
		"  bench?: Bench | null;",
		"  due: ShownFigure;", // an answer always has it
		"  rows?: Field[];",   // a record within itself
		"  signs?: { [name: string]: string };",
		"  /** cm³ */\n  displacement?: CubicCentimetres;",
		"  times?: Minutes[];", // a calculation's own
		"  warns?: Warn[];",    // of an embedded record
		"/** Remark is a note that counts. */\nexport interface Remark {",
		"  code: string;",
	} {
		if !strings.Contains(string(text), line+"\n") {
			t.Errorf("nothing declares %q", line)
		}
	}
}

// A number whose unit nobody gave stops the program, and so does a unit of nothing.
func TestDeclarations_EveryNumberHasAUnit(t *testing.T) {
	whole := maps.Clone(units)
	t.Cleanup(func() { units = whole })
	for key, change := range map[string]func(){
		"Balance.out, number":    func() { delete(units, "Balance.out") },
		`Plug.gold has a unit`:   func() { units["Plug.gold"] = "Litres" },
		`State.odometer, number`: func() { units["State.odometer"] = "Furlongs" },
	} {
		units = maps.Clone(whole)
		change()
		if _, err := declarations(root); err == nil || !strings.Contains(err.Error(), key) {
			t.Errorf("want an error about %q, got %v", key, err)
		}
	}
}
