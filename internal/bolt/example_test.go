package bolt_test

import (
	"fmt"

	"tidysump/internal/bolt"
	"tidysump/internal/quantity"
)

// How tight is a drain plug M12×1.5 with a copper ring, in an aluminium sump, when
// nothing but its thread is known?
func ExampleJoint_Published() {
	thread, _ := bolt.ParseThread("M12x1.5")
	joint := bolt.Joint{Thread: thread, What: bolt.Plug, Seal: bolt.FlatCopper, Seat: bolt.Aluminium}
	band := joint.Published()
	fmt.Println(band.Torques(quantity.Metric))
	fmt.Println(band.Torques(quantity.US))
	// Output:
	// [25–27.5 N·m 18.4–20.3 lbf·ft]
	// [18.4–20.3 lbf·ft 25–27.5 N·m]
}

// Somebody wrote 25 for that plug, which engages 18 mm. In which units is that
// believable?
func ExampleJudgement_Judge() {
	thread, _ := bolt.ParseThread("M12x1.5")
	joint := bolt.Joint{Thread: thread, What: bolt.Plug, Seal: bolt.FlatCopper, Seat: bolt.Aluminium, Length: 18}
	joint.Settle()
	for _, unit := range []string{"N·m", "lbf·ft", "kgf·m"} {
		u, _ := quantity.Find(unit)
		var g bolt.Judgement
		g.Judge(&joint, u.ToBase(25), u.Scale, quantity.Metric)
		fmt.Printf("25 %s: %s (meant: %q)\n", unit, g.Verdict, g.Meant)
	}
	// Output:
	// 25 N·m: believable (meant: "")
	// 25 lbf·ft: doubtful (meant: "")
	// 25 kgf·m: not-believable (meant: "N·m")
}

// The wrench goes from 20 to 100 N·m, the plug wants 22 to 26 N·m, and a crow's foot of
// 40 mm stands at a right angle, or straight out. What is to be set?
func ExampleWrench_Set() {
	wrench := bolt.Wrench{Low: 20, High: 100}
	must := bolt.MustBe(22, 26)
	for _, angle := range []float64{90, 0} {
		s := wrench.Set(&bolt.Adapter{Grip: 300, Offset: 40, Angle: angle}, bolt.Click, &must, 0.5)
		fmt.Println(s.At, "N·m", s.Fit, s.Gets.Torques(quantity.Metric)[0])
	}
	// Output:
	// 24 N·m sets 22.7–25.3 N·m
	// 21 N·m sets 22.6–25 N·m
}

// Which wrenches does it take for a strainer cover at 6 N·m, a plug at 24, a filter
// bolt at 12 and an axle nut at 110?
func ExampleNeeded() {
	for _, w := range bolt.Needed([]float64{6, 12, 24, 110}) {
		fmt.Println(w.Low, "to", w.High, "N·m")
	}
	// Output:
	// 6 to 24 N·m
	// 110 to 110 N·m
}
