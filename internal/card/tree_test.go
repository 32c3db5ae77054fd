package card_test

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"
)

func decode(t testing.TB, text []byte) any {
	t.Helper()
	var v any
	if err := json.Unmarshal(text, &v); err != nil {
		t.Fatalf("%.80s: %v", text, err)
	}
	return v
}

// at gives the value at a path of names and numbers; nil if there is none.
func at(v any, path string) any {
	for name := range strings.SplitSeq(path, "/") {
		switch w := v.(type) {
		case map[string]any:
			v = w[name]
		case []any:
			i, err := strconv.Atoi(name)
			if err != nil || i >= len(w) {
				return nil
			}
			v = w[i]
		default:
			return nil
		}
	}
	return v
}

// put sets the value at a path.
func put(v any, path []string, to any) {
	last := path[len(path)-1]
	holder := v
	if len(path) > 1 {
		holder = at(v, strings.Join(path[:len(path)-1], "/"))
	}
	switch w := holder.(type) {
	case map[string]any:
		w[last] = to
	case []any:
		i, err := strconv.Atoi(last)
		if err != nil {
			panic(last)
		}
		w[i] = to
	default:
		panic("no such place: " + strings.Join(path, "/"))
	}
}
