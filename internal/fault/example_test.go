package fault_test

import (
	"fmt"

	"tidysump/internal/fault"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// The drain plug drips. May one ride on? It depends on what is at hand; and as long as
// nobody wiped it off and looked again, the worst counts.
func ExampleJudge() {
	var table fault.Table
	if list := wire.Read(specs.Faults, &table); list != nil {
		fmt.Println(list)
	}
	problem := table.Find("drop-plug")
	drops := map[string]string{"returns": "drops"}
	for _, verdict := range []*fault.Verdict{
		fault.Judge(&table, problem, drops, []string{"spanner", "washer", "oil"}),
		fault.Judge(&table, problem, drops, nil),
		fault.Judge(&table, problem, nil, nil),
	} {
		fmt.Println(verdict.Outcome, verdict.Now, verdict.Open)
	}
	// Output:
	// ride-gently [do.plug-washer do.level-right do.dry-look] []
	// do-not-ride [do.off do.level-read do.tow] []
	// do-not-ride [do.off do.tow] [returns]
}
