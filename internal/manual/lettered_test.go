package manual_test

import (
	"slices"
	"testing"
)

// A letter or a number in brackets stands for the part that the page has called so.
func TestRead_Lettered(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Undo the drain plug (A). Unscrew the strainer cap (B). Renew the copper washer of (A) and the O-ring of (B).", []string{"bolt.drain.seal flat-copper", "bolt.strainer.seal o-ring"}},
		{"Undo the oil drain bolt (1) and the strainer plug (2). Fit a new aluminium washer on (1) and an O-ring on (2).", []string{"bolt.drain.seal flat-aluminium", "bolt.strainer.seal o-ring"}},
		{"Ölablassschraube (A) und Siebdeckel (B) abnehmen. Den Kupferring der (A) und den O-Ring der (B) ersetzen.", []string{"bolt.drain.seal flat-copper", "bolt.strainer.seal o-ring"}},
		{"Svitare il tappo di scarico olio (A) e il tappo del filtro a rete (B). Sostituire la rondella di alluminio del (A) e l'O-ring del (B).", []string{"bolt.drain.seal flat-aluminium", "bolt.strainer.seal o-ring"}},
		{"Drain the engine oil. Take off the fork cap (A). Renew the O-ring of (A).", nil},
		{"Drain the oil. (1) Undo the drain plug, with its copper washer. (2) Fit the plug.", []string{"bolt.drain.seal flat-copper"}},
	} {
		got := slices.DeleteFunc(said(c.text, "bolt."), func(s string) bool { return !slices.Contains(c.want, s) && !hasSeal(s) })
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

func hasSeal(s string) bool {
	for i := 0; i+6 < len(s); i++ {
		if s[i:i+6] == ".seal " {
			return true
		}
	}
	return false
}
