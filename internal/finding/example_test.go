package finding_test

import (
	"fmt"

	"tidysump/internal/finding"
)

// A torque that is doubtful can be used; one that can't be read can't.
func ExampleRefused() {
	doubt := finding.Finding{Code: "torque-doubtful", Where: "/card/bolts/0/torque", Grade: finding.Doubt, Values: finding.Values("torque", "60 N·m")}
	fmt.Println(doubt.Values["torque"], finding.Refused([]finding.Finding{doubt}))
	refusal := finding.Finding{Code: "not-a-number", Where: "/text", Grade: finding.Refuse}
	fmt.Println(finding.Refused([]finding.Finding{doubt, refusal}))
	// Output:
	// 60 N·m false
	// true
}
