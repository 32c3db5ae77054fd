package bolt_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/bolt"
)

func TestAdapter_Setting(t *testing.T) {
	for _, f := range []struct {
		torque, grip, offset, angle float64 // any one unit of torque, of length
		want, off                   float64
		source                      string
	}{
		{40, 12, 4, 0, 30, 1e-9, "TM 9-2350-277-40&P"},
		{300, 10, 4, 0, 214, 0.5, "TM 1-1500-204-23-9"},
		{135, 10, 1.5, 0, 117.39, 0.005, "manual"},
		{70, 12, 2, 0, 60, 1e-9, "US Army TM 9-254, fig. 4-5"},
		{50, 16, 2, 0, 44.44, 0.005, "manual"},
		{20, 12, 3, 0, 16, 1e-9, "manual"},
		{25, 300, 50, 0, 21.429, 0.001, "computed"},
		{25, 300, 50, 45, 22.364, 0.001, "computed"},
		// "The actual value does not change" (Navy training manual 14008). A formula
		// in circulation, T·cos a·L/(L+E), gives 0 here and isn't used.
		{25, 300, 50, 90, 25, 1e-9, "Navy 14008"},
		{25, 300, 50, 180, 30, 1e-9, "computed; pointed back: subtract (Navy 14008)"},
		{40, 400, 60, 30, 35.401, 0.001, "computed"},
	} {
		a := bolt.Adapter{Grip: f.grip, Offset: f.offset, Angle: f.angle}
		got, ok := a.Setting(f.torque)
		if !ok {
			t.Errorf("%+v: no setting", f)
		}
		near(t, fmt.Sprintf("%v with %+v, %s", f.torque, a, f.source), got, f.want, f.off)
	}
	// TM 9-254 works it forward: 60 set with 12 and 2 applies 70. Its text has
	// "L x E" where the figure has L + E; only the sum gives this.
	forward := bolt.Adapter{Grip: 12, Offset: 2}
	near(t, "60 applied", forward.Applied(60), 70, 1e-9)
}

func TestAdapter_NoSetting(t *testing.T) {
	w, must := bolt.Wrench{Low: 5, High: 50}, bolt.MustBe(25, 0)
	for _, f := range []struct {
		adapter bolt.Adapter
		want    bolt.Fit
	}{
		{bolt.Adapter{Offset: 50}, bolt.NoGrip},
		{bolt.Adapter{Offset: 50, Angle: 90}, bolt.NoGrip},
		{bolt.Adapter{Offset: 300, Grip: 300, Angle: 180}, bolt.Backward},
		{bolt.Adapter{Offset: 400, Grip: 300, Angle: 180}, bolt.Backward},
		{bolt.Adapter{Offset: -300, Grip: 300}, bolt.Backward},
		// A tenth of the lever is left, 3 cm: two more or less are two thirds.
		{bolt.Adapter{Offset: 270, Grip: 300, Angle: 180}, bolt.Backward},
		{bolt.Adapter{Offset: 240, Grip: 300, Angle: 180}, bolt.Backward},
		{bolt.Adapter{Offset: 100, Grip: 300, Angle: 180}, bolt.SetsWide},
		{bolt.Adapter{Offset: 1000, Grip: 150}, bolt.SetsWide}, // far forward takes nothing away
		{bolt.Adapter{}, bolt.Sets},
	} {
		wide := bolt.Wrench{High: w.High}
		if f.adapter.Offset == 1000 {
			wide = bolt.Wrench{High: 10} // 25·150/1150 = 3.3 N·m
		}
		if got := wide.Set(&f.adapter, bolt.Click, &must, 0.1); got.Fit != f.want {
			t.Errorf("%+v: %+v, want %s", f.adapter, got, f.want)
		}
	}
}

func TestWrench_FitOf(t *testing.T) {
	const lbfFt = 1.3558179483314004
	for _, f := range []struct {
		low, high, torque float64
		want              bolt.Fit
	}{
		{20, 100, 20, bolt.Sets},
		{20, 100, 100, bolt.Sets},
		{10, 100, 19.9, bolt.BelowFifth},
		{40, 200, 25, bolt.BelowScale},
		{2, 10, 25, bolt.AboveScale},
		{10 * lbfFt, 80 * lbfFt, 16 * lbfFt, bolt.Sets}, // just a fifth
	} {
		if got := (bolt.Wrench{Low: f.low, High: f.high}).FitOf(f.torque); got != f.want {
			t.Errorf("%v to %v at %v: %s, want %s", f.low, f.high, f.torque, got, f.want)
		}
	}
}

// What the fastener gets, with all that may be off: the tool, the mark, the adapter's
// length, the hand's place. Computed by hand.
func TestWrench_Gets(t *testing.T) {
	back := bolt.Adapter{Grip: 300, Offset: 200, Angle: 180}
	for _, f := range []struct {
		what             string
		high             float64
		tool             bolt.Tool
		adapter          bolt.Adapter
		torque, step     float64
		fit              bolt.Fit
		at, low, highest float64
		off              float64
	}{
		// ISO 6789:2003, 4 % and 6 %.
		{"nothing but the wrench", 100, bolt.Click, bolt.Adapter{}, 25, 0.5, bolt.Sets, 25, 24, 26, 1e-9},
		{"a small one", 10, 0, bolt.Adapter{}, 8, 0.1, bolt.Sets, 8, 7.52, 8.48, 1e-9},
		{"a dial", 100, bolt.Dial, bolt.Adapter{}, 25, 0.5, bolt.Sets, 25, 24, 26, 1e-9},
		{"a beam, 6 % on a torque that is 4 %", 100, bolt.Beam, bolt.Adapter{}, 25, 1, bolt.SetsWide, 25, 23.5, 26.5, 1e-9},
		// 21.43 goes to 21: 24.5, and the adapter is 49 to 51 mm at 280 to 320 mm, within
		// 5° of straight on.
		{"adapter straight on", 100, bolt.Click, bolt.Adapter{Grip: 300, Offset: 50}, 25, 1, bolt.SetsWide, 21,
			21 * 0.96 * (1 + 49*0.99619/320), 21 * 1.04 * (1 + 51/280.0), 1e-3},
		// A third of the lever is left, 10 cm, and the hand may be 2 cm nearer or farther.
		{"adapter straight back", 100, bolt.Click, back, 25, 1, bolt.SetsWide, 75, 75 * 0.96 * (1 - 201/280.0), 75 * 1.04 * (1 - 199*0.99619/320), 1e-3},
	} {
		w, must := bolt.Wrench{High: f.high}, bolt.MustBe(f.torque, 0)
		s := w.Set(&f.adapter, f.tool, &must, f.step)
		if s.Fit != f.fit || len(s.Beside) > 0 {
			t.Errorf("%s: %+v, want %s", f.what, s, f.fit)
		}
		near(t, f.what+", set to", s.At, f.at, 1e-9)
		near(t, f.what+", low", s.Gets.Low, f.low, f.off)
		near(t, f.what+", high", s.Gets.High, f.highest, f.off)
	}
}

// What is set is a mark that gives the torque, or it is said that none does.
func TestWrench_Marks(t *testing.T) {
	for _, f := range []struct {
		what                string
		wrench              bolt.Wrench
		adapter             bolt.Adapter
		torque, upper, step float64
		fit                 bolt.Fit
		at                  float64
		beside              []float64
	}{
		// 25·300/350 = 21.43; 20 gives 23.3 and 25 gives 29.2, more than 4 % away.
		{"between 20 and 25", bolt.Wrench{Low: 10, High: 100}, bolt.Adapter{Grip: 300, Offset: 50}, 25, 0, 5, bolt.BetweenMarks, 21.42857142857143, []float64{20, 25}},
		{"a range that reaches a mark", bolt.Wrench{Low: 10, High: 100}, bolt.Adapter{Grip: 300, Offset: 50}, 22, 28, 5, bolt.Sets, 20, nil},
		// The lowest mark that may be used is not a mark a fifth up the scale.
		{"no mark at a fifth", bolt.Wrench{High: 80}, bolt.Adapter{}, 17, 0, 5, bolt.BetweenMarks, 17, []float64{20}},
		{"below a fifth, which will do", bolt.Wrench{High: 100}, bolt.Adapter{}, 19.9, 0, 1, bolt.Sets, 20, nil},
		{"below a fifth", bolt.Wrench{High: 100}, bolt.Adapter{}, 19, 0, 1, bolt.BelowFifth, 19, nil},
		{"a range that begins below a fifth", bolt.Wrench{High: 100}, bolt.Adapter{}, 16, 23, 1, bolt.Sets, 20, nil},
		{"beyond its end", bolt.Wrench{High: 24}, bolt.Adapter{}, 25, 0, 1, bolt.SetsWide, 24, nil},
		{"too far beyond its end", bolt.Wrench{High: 23.9}, bolt.Adapter{}, 25, 0, 1, bolt.AboveScale, 25, nil},
		{"the end of the scale is a mark", bolt.Wrench{Low: 7, High: 32}, bolt.Adapter{}, 32, 0, 3, bolt.Sets, 32, nil},
		{"so is its beginning", bolt.Wrench{Low: 7, High: 32}, bolt.Adapter{}, 7, 0, 3, bolt.Sets, 7, nil},
	} {
		must := bolt.MustBe(f.torque, f.upper)
		s := f.wrench.Set(&f.adapter, bolt.Click, &must, f.step)
		var beside []float64
		for _, m := range s.Beside {
			beside = append(beside, m.At)
		}
		if s.Fit != f.fit || math.Abs(s.At-f.at) > 1e-9 || !slices.Equal(beside, f.beside) {
			t.Errorf("%s: %+v, want %s at %v beside %v", f.what, s, f.fit, f.at, f.beside)
		}
	}
}

func TestWrench_Properties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grip := rapid.Float64Range(100, 1000).Draw(t, "grip")
		a := bolt.Adapter{Grip: grip, Offset: rapid.Float64Range(0, 300).Draw(t, "offset"), Angle: rapid.Float64Range(-360, 360).Draw(t, "angle")}
		nm := rapid.Float64Range(1, 300).Draw(t, "torque")
		set, ok := a.Setting(nm)
		if !ok {
			left := grip + a.Offset*math.Cos(a.Angle*math.Pi/180)
			if lost := 1 - (left-21-a.Offset*math.Sin(5*math.Pi/180))/left; left > 0 && lost < 0.2 {
				t.Fatalf("%+v: no setting, and %v mm of the lever are left", a, left)
			}
			return
		}
		if back := a.Applied(set); math.Abs(back-nm) > 1e-9*nm {
			t.Fatalf("%v N·m came back as %v", nm, back)
		}
		forward, longer := bolt.Adapter{Grip: grip, Offset: a.Offset}, bolt.Adapter{Grip: grip, Offset: a.Offset + 10}
		s, _ := forward.Setting(nm)
		if l, _ := longer.Setting(nm); l >= s || s > nm {
			t.Fatalf("forward: %v mm sets %v, 10 mm more sets %v", a.Offset, s, l)
		}
	})
}

// Whatever the wrench, its unit and the adapter: a mark that is set gives what the
// torque must be; what it may come to lies within that, or it is said that it may
// not; and where nothing is set, no mark that may be used gives it.
func TestWrench_SetProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]float64{1, 1.3558179483314004, 9.80665}).Draw(t, "unit") // N·m, lbf·ft, kgf·m
		step := rapid.SampledFrom([]float64{0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10}).Draw(t, "step")
		high := step * float64(rapid.IntRange(10, 150).Draw(t, "marks"))
		w := bolt.Wrench{Low: rapid.SampledFrom([]float64{0, 0.1, 0.2, 0.3}).Draw(t, "low") * high * unit, High: high * unit}
		step *= unit
		a := bolt.Adapter{Grip: rapid.Float64Range(100, 1000).Draw(t, "grip"), Offset: rapid.Float64Range(-200, 300).Draw(t, "offset"),
			Angle: rapid.SampledFrom([]float64{0, 30, 90, 100, 180, -45}).Draw(t, "angle")}
		if rapid.Bool().Draw(t, "bare") {
			a.Offset = 0
		}
		tool := bolt.Tool(rapid.IntRange(0, len(bolt.Tools)).Draw(t, "tool"))
		figure, upper := rapid.Float64Range(0.1, 1.2).Draw(t, "torque")*w.High, 0.0
		if rapid.Bool().Draw(t, "range") {
			upper = figure * rapid.Float64Range(1, 1.3).Draw(t, "upper")
		}
		must := bolt.MustBe(figure, upper)
		s := w.Set(&a, tool, &must, step)
		gain := 1 + a.Offset*math.Cos(a.Angle*math.Pi/180)/a.Grip
		gives := func(at float64) bool {
			return at*gain >= must.Low*(1-1e-9) && at*gain <= must.High*(1+1e-9)
		}
		usable := func(at float64) bool {
			return at >= max(w.Low, 0.2*w.High)*(1-1e-9) && at <= w.High*(1+1e-9)
		}
		marked := func(at float64) bool {
			off := math.Abs(at - math.Round(at/step)*step)
			return off < 1e-9*at || math.Abs(at-w.Low) < 1e-9*at || math.Abs(at-w.High) < 1e-9*at
		}
		within := func(m bolt.Mark) {
			dev := 0.04
			if tool == bolt.Beam || w.High <= 10*(1+1e-9) {
				dev = 0.06
			}
			grip := a.Grip + rapid.Float64Range(-20, 20).Draw(t, "hand")
			length := math.Abs(a.Offset) + rapid.Float64Range(-1, 1).Draw(t, "length")
			turned := a.Angle + rapid.Float64Range(-5, 5).Draw(t, "turned")
			got := 1 + math.Copysign(max(0, length), a.Offset)*math.Cos(turned*math.Pi/180)/grip
			if a.Offset == 0 {
				got = 1
			}
			got *= m.At * (1 + dev*rapid.Float64Range(-1, 1).Draw(t, "tool's"))
			if got < m.Gets.Low*(1-1e-3) || got > m.Gets.High*(1+1e-3) {
				t.Fatalf("set to %v the fastener may get %v, and is told to get %+v", m.At, got, m.Gets)
			}
		}
		inside := s.Gets.Low >= must.Whole.Low*(1-1e-9) && s.Gets.High <= must.Whole.High*(1+1e-9)
		if s.Fit == bolt.Backward {
			if nearer := 1 + a.Offset*math.Cos(a.Angle*math.Pi/180)/(a.Grip-21); gain > 0.9 && nearer > 0.9*gain {
				t.Fatalf("refused, and the hand's place changes %v to no less than %v", gain, nearer)
			}
			return
		}
		if gain <= 0 {
			t.Fatalf("%+v takes the lever away, and is %+v", a, s)
		}
		if s.Fit.OK() {
			if !gives(s.At) || !usable(s.At) || !marked(s.At) || inside != (s.Fit == bolt.Sets) || len(s.Beside) > 0 {
				t.Fatalf("%+v, of which the fastener gets %v of %+v", s, s.At*gain, must)
			}
			within(s.Mark)
			return
		}
		for n := 0.0; n*step <= w.High; n++ {
			if at := n * step; usable(at) && gives(at) {
				t.Fatalf("%s, and the mark %v gives %v of %+v", s.Fit, at, at*gain, must)
			}
		}
		if (s.Fit == bolt.BetweenMarks) != (len(s.Beside) > 0) {
			t.Fatalf("%+v", s)
		}
		for _, m := range s.Beside {
			if !usable(m.At) || !marked(m.At) || gives(m.At) || math.Abs(m.At-s.At) > step*(1+1e-9) {
				t.Fatalf("beside %v: %v", s.At, m.At)
			}
			within(m)
		}
	})
}
