package garage

import (
	"cmp"
	"slices"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/ledger"
)

// byClock orders facts of several bikes, whose numbers say nothing of each other. What is
// about to be written is judged after all that stands.
func (g *garage) byClock(list []*ledger.Fact) {
	slices.SortStableFunc(list, func(x, y *ledger.Fact) int {
		switch g.New {
		case x:
			return 1
		case y:
			return -1
		}
		return cmp.Compare(x.Time, y.Time)
	})
}

// joins says into which bike each one goes.
type joins map[string]string

// root gives the bike that one went into at last. Ways get shorter as they are gone.
func (j joins) root(id string) string {
	root := id
	for j[root] != "" {
		root = j[root]
	}
	for id != root {
		id, j[id] = j[id], root
	}
	return root
}

// join makes one bike of two, in the order of the clock. All that were joined with
// either go along: it was said that they are one machine. What is one already, be it by
// a circle, stays as it is.
func (g *garage) join(list []*ledger.Fact) joins {
	into := joins{}
	g.byClock(list)
	for _, f := range list {
		from, to := into.root(f.Of), into.root(f.Value)
		switch {
		case strings.TrimSpace(f.Value) == "":
			g.Fault(f, "unknown-bike", "/value", finding.Refuse)
		case f.Of == f.Value:
			g.Fault(f, "join-itself", "/value", finding.Refuse)
		case from == to:
			g.Fault(f, "join-already", "/value", finding.Refuse)
		default:
			into[from] = to
		}
	}
	return into
}

// claims says to which bike each job was moved: to the one that asked for it last.
func (g *garage) claims(list []*ledger.Fact) map[string]string {
	g.byClock(list)
	of := map[string]string{}
	for _, f := range list {
		of[f.What] = f.Of
	}
	return of
}
