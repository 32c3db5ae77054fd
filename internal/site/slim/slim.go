package slim

import (
	"fmt"
	"slices"
	"strings"
)

// Seen lists the minor versions of Go whose programs Program knows.
var Seen = []string{"1.26", "1.27"}

// Program returns a WebAssembly program made by Go without what only the trace of
// a crash shows (the names of functions, in which file and line their code stands, and
// the functions that print it) and without what never runs in a page. Of a name stays
// what the runtime looks at: whether it is one of its own, or of reflect's. It gives an
// error where the program is none, was made by a version that is not in Seen, or where
// the table of functions is not as expected. The program given is not changed.
func Program(program []byte) ([]byte, error) {
	sections, err := sectionsOf(program)
	if err != nil {
		return nil, err
	}
	version, err := sections.version()
	if err != nil {
		return nil, err
	}
	if !slices.Contains(Seen, minor(version)) {
		return nil, fmt.Errorf("made by Go %s, where slimming knows %s: add %q to Seen in internal/site/slim and run `make test-go`, which tells whether it still answers alike",
			version, strings.Join(Seen, ", "), minor(version))
	}
	segments, err := sections.segments()
	if err != nil {
		return nil, err
	}
	m := load(program, segments)
	count, idle, err := m.slim()
	if err == nil {
		program, err = sections.stubbed(m.store(program, segments), count, idle)
	}
	if err != nil {
		return nil, fmt.Errorf("made by Go %s in a layout that slimming doesn't know: %w", version, err)
	}
	return program, nil
}

// minor gives "1.26" of "1.26.8" and of "1.26rc1".
func minor(version string) string {
	major, rest, _ := strings.Cut(version, ".")
	end := strings.IndexFunc(rest, func(r rune) bool { return r < '0' || r > '9' })
	if end < 0 {
		end = len(rest)
	}
	return major + "." + rest[:end]
}
