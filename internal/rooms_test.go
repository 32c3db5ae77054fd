//go:build !js

// Package internal_test holds which room may use which.
package internal_test

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// rooms are the folders of this program, each with those that it may use, in the
// order of the house: a room uses none that stands after it.
var rooms = []struct {
	name string
	uses string
}{
	// Ground.
	{"internal/finding", ""},
	{"internal/date", ""},
	{"internal/wire", "finding"},
	{"internal/quantity", "finding"},
	{"internal/csv", "quantity"},
	{"internal/calendar", "date"},
	{"internal/ledger", "finding date wire"},
	// The mechanic's figures.
	{"internal/oil", "quantity"},
	{"internal/drain", "quantity"},
	{"internal/bolt", "finding quantity"},
	{"internal/ring", "quantity"},
	{"internal/fill", "quantity oil"},
	{"internal/due", "date wire"},
	{"internal/debris", ""},
	{"internal/fault", "wire"},
	{"internal/quote", "quantity"},
	// The bike, the plan, the job.
	{"internal/card", "finding wire quantity oil bolt"},
	{"internal/place", "finding wire quantity bolt card"},
	{"internal/garage", "finding date wire ledger quantity due card"},
	{"internal/shown", "wire quantity card"},
	{"internal/changes", "wire quantity card shown"},
	{"internal/roadside", "finding wire quantity fault card shown"},
	{"internal/plan", "finding wire quantity oil drain bolt fill card shown"},
	{"internal/job", "finding date wire quantity oil drain bolt fill due debris fault card shown plan"},
	{"internal/outlook", "finding date wire quantity due card shown plan job"},
	{"internal/visit", "finding date wire ledger quantity quote"},
	{"internal/calc", "finding wire quantity oil drain bolt ring fill debris fault quote card shown"},
	{"internal/find", "finding wire quantity card shown roadside plan"},
	// What a manual's page says.
	{"internal/manual", "finding quantity oil bolt"},
	{"internal/line", "finding wire quantity oil bolt calc place manual"},
	// A workshop's own books.
	{"internal/books", "finding date wire ledger quantity oil bolt fill card shown plan calc"},
	// The door.
	{"internal/core", "finding date wire ledger quantity oil csv calendar due fault card place garage roadside plan manual find job outlook visit calc line books changes"},
	{"internal/declare", "core wire"},
	{"wasm", "core"},
	{"specs", ""},
	{"internal/terms", "manual specs"},
	// The site's build, which knows no mechanic's room.
	{"internal/site/slim", ""},
	{"internal/site/palette", ""},
	{"internal/site", ""},
	{"internal/site/build", "site site/slim"},
	{"server/pages", "core specs"},
	{"server", "finding core site specs server/pages"},
	{"server/build", "core site/build specs"},
	// For those who work on it.
	{"server/watch", ""},
	// For tests only.
	{"internal/manual/pagetest", "quantity"},
	{"internal/plan/plantest", "finding quantity card shown plan specs"},
}

// Arrows point one way: each folder uses what the table says, and no other.
func TestRooms(t *testing.T) {
	table := map[string][]string{}
	for _, r := range rooms {
		var uses []string
		for _, name := range strings.Fields(r.uses) {
			if name != "specs" && name != "server/pages" {
				name = "internal/" + name
			}
			if table[name] == nil {
				t.Errorf("%s may use %s, which stands after it or nowhere", r.name, name)
			}
			uses = append(uses, name)
		}
		table[r.name] = append(uses, r.name)
	}
	seen := map[string]bool{}
	for _, r := range listed(t) {
		allowed, known := table[r.name]
		if seen[r.name] = true; !known {
			t.Errorf("%s stands nowhere in the table of rooms", r.name)
			continue
		}
		for _, used := range r.uses {
			if !slices.Contains(allowed, used) {
				t.Errorf("%s uses %s, and may not", r.name, used)
			}
		}
		for _, may := range allowed {
			if may != r.name && !slices.Contains(r.uses, may) {
				t.Errorf("%s may use %s, and does not: take it out of the table", r.name, may)
			}
		}
	}
	for name := range table {
		if !seen[name] {
			t.Errorf("the table has %s, which there is none of", name)
		}
	}
}

type room struct {
	name string
	uses []string
}

// listed gives the folders of this program and what they use of it, in their tests
// not counted.
func listed(t *testing.T) []room {
	t.Helper()
	const module = "tidysump/"
	list := map[string][]string{}
	var order []string
	for _, system := range []string{"", "GOOS=js GOARCH=wasm"} {
		cmd := exec.Command("go", "list", "-f", `{{if .GoFiles}}{{.ImportPath}} {{join .Imports " "}}{{end}}`, "./...")
		cmd.Dir = ".."
		cmd.Env = append(cmd.Environ(), strings.Fields(system)...)
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		for line := range strings.Lines(string(out)) {
			words := strings.Fields(line)
			if len(words) == 0 {
				continue
			}
			name := strings.TrimPrefix(words[0], module)
			if list[name] == nil {
				order = append(order, name)
				list[name] = []string{}
			}
			for _, used := range words[1:] {
				if own, ok := strings.CutPrefix(used, module); ok && !slices.Contains(list[name], own) {
					list[name] = append(list[name], own)
				}
			}
		}
	}
	var all []room
	for _, name := range order {
		all = append(all, room{name, list[name]})
	}
	return all
}
