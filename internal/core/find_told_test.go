package core_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/core"
)

// machine is what is told of one bike, and what its card has.
type machine struct{ called, plate, owner, model, grade, volume string }

// machines are invented; no two share a word that is searched for.
var machines = []machine{
	{"the green one", "KX 12 AB", "Ada Pell", "Plainford Heron 480", "10W-40", "2.5 L"},
	{"workhorse", "MO-77 ZT", "Bruno Vantell", "Orrinshaw Pike 500", "20W-50", "3.8 L"},
	{"sunday", "R 9041", "Celia Drummet", "Marl Vole 125", "15W-40", "0.9 L"},
}

// told gives the bikes that follow from the facts that tell of machines, as the lines in
// which the page searches: all that was told, the plate and the grade without their signs
// too, in small letters.
func told(t *rapid.T, all []machine) (lines, volumes []string) {
	type fact struct {
		Book  string `json:"book"`
		Of    string `json:"of"`
		ID    string `json:"id"`
		Kind  string `json:"kind"`
		Time  string `json:"time"`
		Seq   int    `json:"seq"`
		What  string `json:"what"`
		Value string `json:"value"`
	}
	var facts []fact
	for n, m := range all {
		for k, f := range [][2]string{{"called", m.called}, {"plate", "XX 1"}, {"plate", m.plate}, {"owner", m.owner}} { // a plate may be told anew
			facts = append(facts, fact{"bike", fmt.Sprint("b-", n), fmt.Sprint("f", n, "-", k), "told", "2026-11-30T08:00:00.000Z", k + 1, f[0], f[1]})
		}
	}
	in, err := json.Marshal(map[string]any{"facts": rapid.Permutation(facts).Draw(t, "facts")})
	var out struct {
		OK struct {
			Bikes []struct{ ID, Called, Plate, Owner string }
		}
	}
	if err != nil || json.Unmarshal(core.Call("garage", in), &out) != nil || len(out.OK.Bikes) != len(all) {
		t.Fatalf("%s: %+v, %v", in, out, err)
	}
	bare := strings.NewReplacer(" ", "", "-", "")
	for n, b := range out.OK.Bikes {
		m := all[n]
		lines = append(lines, strings.ToLower(strings.Join([]string{b.Called, b.Plate, bare.Replace(b.Plate), b.Owner, m.model, m.grade, bare.Replace(m.grade)}, " ")))
		volumes = append(volumes, m.volume)
	}
	return lines, volumes
}

// A bike is found by what was told of it last, in whatever order the facts come: its name,
// its plate however it is parted, its owner, its model, its grade, its volume in any unit,
// and by a word of it with a slip of one letter. Of a plate that it has no more, of a figure
// that is not its own, and of two words of two bikes it isn't.
func TestFind_WhatWasTold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines, volumes := told(t, machines)
		for _, c := range []struct {
			typed string
			want  string // the places, and whether they are near only
		}{
			{"green", "[0] false"}, {"KX 12 AB", "[0] false"}, {"kx12ab", "[0] false"}, {"mo77zt", "[1] false"}, {"mo-77", "[1] false"},
			{"xx 1", "[] false"}, {"Ada", "[0] false"}, {"vantell bruno", "[1] false"}, {"ada vantell", "[] false"}, {"vole 125", "[2] false"},
			{"20W-50", "[1] false"}, {"15w40", "[2] false"}, {"2.5 L", "[0] false"}, {"2500 mL", "[0] false"}, {"4 US qt", "[1] false"},
			{"0,9 l", "[2] false"}, {"2.7 L", "[] false"}, {"drumet", "[2] true"}, {"drumnet", "[2] true"}, {"vantlel", "[1] true"}, {"hron", "[0] true"},
			{"heron 481", "[] false"}, {"9042", "[] false"},
		} {
			in, err := json.Marshal(map[string]any{"typed": strings.ToLower(c.typed), "lines": lines, "volumes": volumes})
			var out struct {
				OK struct {
					Fits []int
					Near bool
				}
			}
			if err != nil || json.Unmarshal(core.Call("find", in), &out) != nil {
				t.Fatal(c.typed, err)
			}
			if got := fmt.Sprint(out.OK.Fits, out.OK.Near); got != c.want {
				t.Errorf("%q: %s, want %s in %q", c.typed, got, c.want, lines)
			}
		}
	})
}
