//go:build !wasm

package core_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"tidysump/internal/core"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// strange says what of a value is not as its record is described; "" for nothing.
func strange(r wire.Record, value any, where string) string {
	object, ok := value.(map[string]any)
	if !ok {
		return where + ": no object"
	}
	members := wire.Describe(r)
	for name := range object {
		if !slices.ContainsFunc(members, func(d wire.Member) bool { return d.Name == name }) {
			return where + "/" + name + ": not described"
		}
	}
	for _, d := range members {
		v, there := object[d.Name]
		at := where + "/" + d.Name
		switch list, isList := v.([]any); {
		case !there && d.Always:
			return at + ": not there"
		case !there:
		case d.Many != isList:
			return fmt.Sprintf("%s: many %v, a list %v", at, d.Many, isList)
		case isList:
			for n, v := range list {
				if text := strangeValue(d, v, fmt.Sprint(at, "/", n)); text != "" {
					return text
				}
			}
		default:
			if text := strangeValue(d, v, at); text != "" {
				return text
			}
		}
	}
	return ""
}

func strangeValue(d wire.Member, v any, at string) string {
	ok := true
	switch d.Kind {
	case wire.ObjectKind:
		return strange(d.Record, v, at)
	case wire.TextKind:
		_, ok = v.(string)
	case wire.BoolKind:
		_, ok = v.(bool)
	case wire.NumberKind:
		_, ok = v.(float64)
	case wire.IntegerKind:
		n, isNumber := v.(float64)
		ok = isNumber && n == math.Trunc(n)
	case wire.OtherKind:
		_, ok = v.(map[string]any)
	case wire.TextMapKind:
		texts, isMap := v.(map[string]any)
		ok = isMap
		for _, text := range texts {
			_, isText := text.(string)
			ok = ok && isText
		}
	}
	if !ok {
		return fmt.Sprintf("%s: %v is no %s", at, v, d.Kind)
	}
	return ""
}

// What operations answer is what they describe: to all examples, and of all cards.
func TestOperations_AreAsDescribed(t *testing.T) {
	examples := specs.Examples()
	for _, card := range specs.Cards() {
		in := `{"card":` + string(card) + `}`
		examples = append(examples, specs.Example{Op: "plan", In: in}, specs.Example{Op: "replay", In: in})
	}
	known := map[string]core.Operation{}
	for _, o := range core.Operations() {
		known[o.Name] = o
	}
	judged := 0
	for _, e := range examples {
		out, outcome := core.Do(e.Op, []byte(e.In))
		if outcome != core.OK {
			continue
		}
		judged++
		if text := strange(known[e.Op].Answer(), decode(t, out).(map[string]any)["ok"], ""); text != "" {
			t.Errorf("%s answers %s: %s", e.Op, out, text)
		}
	}
	if judged < len(known) {
		t.Errorf("%d answers judged", judged)
	}
}

// The comparison itself must be able to fail.
func TestStrange(t *testing.T) {
	plan := core.Operations()[slices.IndexFunc(core.Operations(), func(o core.Operation) bool { return o.Name == "plan" })].Answer()
	const rest = `, "card": "c", "name": "a"}`
	for _, text := range []string{
		`[]`, `{"card": "c"}`, `{"colour": "red"` + rest, `{"invented": "yes"` + rest, `{"oils": {}` + rest,
		`{"also": "a"` + rest, `{"card": ["c"], "name": "a"}`, `{"parts": [{"word": "p", "count": 1.5}]` + rest,
		`{"parts": [{"word": "p", "values": {"of": 1}}]` + rest, `{"parts": [{"count": 2}]` + rest,
	} {
		if strange(plan, decode(t, []byte(text)), "") == "" {
			t.Errorf("nothing is strange about %s", text)
		}
	}
	if text := strange(plan, decode(t, []byte(`{"card": "c", "name": "a", "parts": [{"word": "part", "count": 2, "values": {"of": "b"}}]}`)), ""); text != "" {
		t.Error(text)
	}
}
