package oil

import (
	"slices"
	"testing"
)

// read is a bottle of that grade of which all else is as it was asked for.
func read(g Grade, marks ...string) *Bottle {
	return &Bottle{Grade: g, Marks: marks, Service: []string{"SL"}}
}

func asking(g Grade) *Need {
	return &Need{Grades: []Grade{g}, Marks: []string{"MA2"}, Service: []string{"SL"}, WetClutch: true, Coldest: unasked, Hottest: unasked, Share: unasked}
}

// Over all pairs of grades: the more of another oil is added the worse it is judged,
// what is no top-up is judged as a change, and no verdict is milder than the grades that
// the mixture may have.
func TestJudge_NeverMilderThanItsMixture(t *testing.T) {
	shares := []float64{0.01, 0.05, 0.1, 0.2, 0.25, 0.26, 0.4, 0.5, 0.75, 0.92, 1}
	for _, asked := range allGrades() {
		for _, has := range allGrades() {
			for _, mark := range []string{"MA2", "MA", "MB", None, "FC"} {
				need, bottle := asking(asked), read(has, mark)
				change, _ := Judge(need, bottle)
				need.TopUp = true
				unknown, _ := Judge(need, bottle)
				before := Suits
				for _, share := range shares {
					need.Share = share
					verdict, _ := Judge(need, bottle)
					if verdict < before && before != Open {
						t.Fatalf("%v of a %s %s in a %s is %s, and less of it is %s", share, has, mark, asked, verdict, before)
					}
					before = verdict
					if share > MostTopUp && verdict != change {
						t.Fatalf("%v of a %s %s in a %s is %s, and a change %s", share, has, mark, asked, verdict, change)
					}
					if share == MostTopUp && verdict != unknown {
						t.Fatalf("a top-up of a %s %s in a %s is %s, and one of unknown share %s", has, mark, asked, verdict, unknown)
					}
					in, known := asked.Band()
					added, alsoKnown := has.Band()
					apart := has.summer - asked.summer
					if !known || !alsoKnown || asked.Gear() != has.Gear() || verdict == Unfit || apart >= -1 && apart <= 1 {
						continue
					}
					mix := in.Mix(added, share)
					low, high := GradesAt(mix.Low, mix.Low, asked.Gear()), GradesAt(mix.High, mix.High, asked.Gear())
					if steps := slices.Index(summerNames, low[len(low)-1]) - asked.summer; steps < -1 {
						t.Fatalf("%v of a %s in a %s may make a %v, and is %s", share, has, asked, low, verdict)
					}
					if steps := slices.Index(summerNames, high[0]) - asked.summer; (asked.Gear() || mix.High < 26.1) && steps > 1 {
						t.Fatalf("%v of a %s in a %s may make a %v, and is %s", share, has, asked, high, verdict)
					}
				}
			}
		}
	}
}

// Over all grades and temperatures: colder air is never judged milder, and none is
// trusted below the test of pumping.
func TestJudge_NeverMilderInTheCold(t *testing.T) {
	for _, g := range allGrades() {
		if g.Gear() {
			continue
		}
		_, pumped := testedAt(g)
		for _, asked := range []Grade{g, gradeOf("0W-60")} {
			before := Unfit
			for air := -60.0; air <= 60; air += 0.5 {
				j := judge{need: asking(asked), bottle: read(g, "MA2")}
				j.need.Coldest = air
				weight, code := j.season(g, asked == g)
				if weight != Open && weight > before {
					t.Fatalf("a %s at %v °C is %s, and in colder air %s", g, air, weightNames[weight], weightNames[before])
				}
				if weight != Open {
					before = weight
				}
				if air < pumped && weight != Unfit {
					t.Fatalf("a %s at %v °C, pumped at %v, is %s %s", g, air, pumped, weightNames[weight], code)
				}
				if code == "season-cold" && air < -35 {
					t.Fatalf("a %s at %v °C is started gently", g, air)
				}
			}
		}
	}
}

// Over all gear grades: nothing is said down to the temperature at which J306 measures the
// W grade, that of 85W where there is none; in colder air it is a limit, or a no where the
// card asks for another.
func TestJudge_GearsInTheCold(t *testing.T) {
	for _, g := range allGrades() {
		if !g.Gear() {
			continue
		}
		measuredAt := -12.0
		if w, _, _ := g.Limits(); w.Pumping > 0 {
			measuredAt = w.PumpingAt
		}
		for _, asked := range []bool{true, false} {
			for air := -60.0; air <= 60; air += 0.5 {
				j := judge{need: asking(g), bottle: read(g, "GL-5")}
				j.need.Coldest = air
				weight, code := j.gearSeason(g, asked)
				want := Suits
				if air < measuredAt {
					want = Unfit
					if asked {
						want = Limited
					}
				}
				if weight != want || (code == "") != (want == Suits) {
					t.Fatalf("%s, measured at %v °C, in air of %v: %s %q", g, measuredAt, air, weightNames[weight], code)
				}
			}
		}
	}
}

// Over all pairs of grades of one standard: the farther apart the worse.
func TestJudge_NeverMilderFartherApart(t *testing.T) {
	for _, asked := range allGrades() {
		for _, near := range allGrades() {
			for _, far := range allGrades() {
				between := asked.summer < near.summer && near.summer <= far.summer || asked.summer > near.summer && near.summer >= far.summer
				if near.winter != far.winter || asked.summer == 0 || far.summer == 0 || near.summer == 0 || !between || near.Gear() != far.Gear() {
					continue
				}
				one, _ := compare(asked, near, 0)
				two, _ := compare(asked, far, 0)
				if two < one {
					t.Fatalf("%s for %s is %s, and %s is %s", near, asked, weightNames[one], far, weightNames[two])
				}
			}
		}
	}
}

// Of no bottle is it said that it suits, or suits with a limit, before its grade and,
// where a clutch runs in the oil, its mark were read.
func TestJudge_NobodyHasRead(t *testing.T) {
	for _, asked := range allGrades() {
		for _, topUp := range []bool{false, true} {
			for _, share := range []float64{unasked, 0.05, 0.25, 0.9} {
				for _, bottle := range []*Bottle{{}, read(asked), read(Grade{}, "MA2"), {Service: []string{"SL"}, Conserving: true}, {Grade: asked}} {
					need := asking(asked)
					need.TopUp, need.Share, need.Coldest = topUp, share, 5
					if verdict, reasons := Judge(need, bottle); verdict < Open {
						t.Fatalf("top-up %v of %v for a %s, %+v: %s %v", topUp, share, asked, bottle, verdict, reasons)
					}
				}
			}
		}
	}
}
