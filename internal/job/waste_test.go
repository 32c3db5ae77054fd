package job_test

import (
	"strconv"
	"testing"

	"tidysump/internal/job"
	waste "tidysump/internal/oil"
	"tidysump/internal/plan"
	"tidysump/internal/plan/plantest"
)

// What was drained goes to the old oil of what it served, and apart where a look at that
// very oil saw coolant, water or more than a smell of fuel in it.
func TestReplay_Waste(t *testing.T) {
	c := plantest.Sample(t, "brunnveld-halvar-940")
	var measured []job.Event
	for n, of := range []string{"engine", "gearbox"} {
		e := read("measure-"+of, "drained", of, "0.6 L")
		e.ID = "m" + strconv.Itoa(n)
		measured = append(measured, e)
	}
	for _, f := range []struct {
		look            []job.Event
		engine, gearbox waste.Waste
	}{
		{nil, waste.EngineWaste, waste.GearWaste},
		{[]job.Event{lookAt("a", 1, "look-oil-engine", "oil", "dark")}, waste.EngineWaste, waste.GearWaste},
		{[]job.Event{lookAt("a", 1, "look-oil-engine", "oil", "foam")}, waste.EngineWaste, waste.GearWaste},
		{[]job.Event{lookAt("a", 1, "look-oil-engine", "oil", "fuel-smell")}, waste.EngineWaste, waste.GearWaste},
		{[]job.Event{lookAt("a", 1, "look-oil-engine", "oil", "fuel-thin")}, waste.SpoiledWaste, waste.GearWaste},
		{[]job.Event{lookAt("a", 1, "look-oil-engine", "oil", "milky")}, waste.SpoiledWaste, waste.GearWaste},
		{[]job.Event{lookAt("a", 1, "look-oil-gearbox", "oil", "water")}, waste.EngineWaste, waste.SpoiledWaste},
		{[]job.Event{lookAt("a", 1, "look-oil-engine", "oil", "water"), lookAt("b", 2, "look-oil-engine", "oil", "dark")}, waste.EngineWaste, waste.GearWaste},
	} {
		s, list := replayed(c, plan.Bench{Circuits: []string{"engine", "gearbox"}}, append(measured, f.look...))
		if s == nil {
			t.Fatalf("no state: %v", list)
		}
		if got := [2]waste.Waste{s.Oils[0].Waste, s.Oils[1].Waste}; got != [2]waste.Waste{f.engine, f.gearbox} {
			t.Errorf("%v: %q, want %q and %q", f.look, got, f.engine, f.gearbox)
		}
	}
	if s, _ := replayed(c, plan.Bench{}, nil); s.Oils[0].Waste != "" {
		t.Errorf("nothing drained: %q", s.Oils[0].Waste)
	}
}
