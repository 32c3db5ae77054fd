package debris

// Reason is a rule that holds, with what it says: a finding's code.
type Reason struct {
	Code    string
	Verdict Verdict
	next    action
}

// rule holds for the signs that have all it names; 0 names nothing. A size and a
// depth are least ones.
type rule struct {
	bit, depth, size, amount, colour, magnet, oil int
	Reason
}

// rules, of which every one that holds is reported: common practice without a
// published source for motorcycles, where no source stands beside them.
var rules = [...]rule{
	{bit: Nothing, Reason: Reason{"debris-nothing", Normal, 0}},
	{bit: Paste, Reason: Reason{"debris-paste", Normal, photo}},
	{bit: Fuzz, Reason: Reason{"debris-fuzz", Normal, photo}},
	{depth: FiveMillimetres, Reason: Reason{"debris-deep", Watch, photo | keep | cut | soon}},
	{depth: Larger, Reason: Reason{"debris-heap", Stop, photo | keep | cut | open}},
	{bit: Heap, Reason: Reason{"debris-heap", Stop, photo | keep | cut | open}},
	{bit: Glitter, Reason: Reason{"debris-glitter", Watch, photo | cut | sample | soon}},
	{bit: Flakes, Reason: Reason{"debris-flakes", Watch, photo | keep | cut | short}},
	// US Army TM 1-1520-238-23 has more than ten flakes of 1.6 mm as the limit of a
	// gearbox, an aircraft manual's limit and not a motorcycle's. That more than ten of
	// anything else are no better has no source.
	{amount: Many, Reason: Reason{"debris-many", Stop, keep | cut | open}},
	{colour: Reddish, Reason: Reason{"debris-bronze", Watch, sample | soon}},
	// Soft grey metal is tin and lead, of plain bearings. A maintenance manual of piston
	// engines for aircraft sends chips of lead to the last of its actions at once.
	{colour: Dull, Reason: Reason{"debris-bearing", Stop, photo | keep | sample | pressure | open}},
	{colour: Bright, magnet: Sticks, Reason: Reason{"debris-steel", Normal, 0}},
	{colour: Bright, magnet: Free, Reason: Reason{"debris-light", Normal, 0}},
	{magnet: NotTried, Reason: Reason{"debris-not-tried", Normal, metal}},
	// "Granular steel, looks like sand": TM 1-1520-238-23; "any amount greater than a
	// trace": TM 1-1500-204-23-1.
	{bit: Sand, Reason: Reason{"debris-sand", Stop, photo | keep | open}},
	{bit: Chip, Reason: Reason{"debris-chip", Watch, photo | keep | soon}},
	{bit: Part, Reason: Reason{"debris-part", Stop, photo | keep | open}},
	{bit: Coil, Reason: Reason{"debris-coil", Stop, thread}},
	{bit: Clutch, Reason: Reason{"debris-clutch", Watch, strainer | half}},
	{bit: Clutch, size: Larger, Reason: Reason{"debris-lining", Stop, photo | keep | strainer | open}},
	{bit: Plastic, Reason: Reason{"debris-plastic", Watch, photo | strainer | soon}},
	{bit: Plastic, size: Larger, Reason: Reason{"debris-guide", Stop, keep | open}},
	{bit: Sealant, Reason: Reason{"debris-sealant", Watch, strainer}},
	{oil: Dark, Reason: Reason{"debris-dark", Normal, 0}},
	{oil: Foam, Reason: Reason{"debris-foam", Watch, hotRide}},
	{oil: Milky, Reason: Reason{"debris-milky", Stop, photo | open | twice}},
	{oil: Water, Reason: Reason{"debris-water", Stop, open | twice}},
	{oil: FuelSmell, Reason: Reason{"debris-fuel-smell", Watch, sample | soon}},
	// A level that rose so that one sees it is more than one part in twenty, which makes
	// an SAE 30 an SAE 20; laboratories act at 2.5 to 5 %.
	{oil: FuelThin, Reason: Reason{"debris-fuel", Stop, sample | leak | twice}},
	{oil: Fuel, Reason: Reason{"debris-fuel-either", Watch, sample | leak | soon}},
	{oil: Burnt, Reason: Reason{"debris-burnt", Watch, photo | half}},
}

func (r *rule) holds(s *Sign) bool {
	return (r.bit == 0 || r.bit == s.Bit) && s.Depth >= r.depth && s.Size >= r.size && is(r.amount, s.Amount) &&
		is(r.colour, s.Colour) && is(r.magnet, s.Magnet) && is(r.oil, s.Oil)
}

func is(want, got int) bool { return want == 0 || want == got }

// Judge gives the worst verdict of all that holds, and the reasons, the worst
// first. What was asked and isn't answered, and could be worse than all the rest, is
// one of them and keeps the verdict from being Normal; no answer at all is no verdict.
func Judge(s *Sign) (Verdict, []Reason) {
	verdict, list := s.weigh()
	if verdict > Unsaid && verdict < Stop {
		for n := range Asks {
			if r, open := s.open(n, verdict); open {
				list = append(list, r)
				verdict = max(verdict, Partly)
			}
		}
	}
	return verdict, worstFirst(list)
}

// unknowns are what to say of an answer that is missing and may be a worse one.
var unknowns = [...]struct {
	of string
	Reason
}{
	{"found", Reason{"debris-found-unknown", Partly, tell}},
	{"depth", Reason{"debris-depth-unknown", Partly, fur}},
	{"size", Reason{"debris-size-unknown", Partly, measure}},
	{"amount", Reason{"debris-amount-unknown", Partly, measure}},
	{"colour", Reason{"debris-colour-unknown", Partly, metal}},
	{"oil", Reason{"debris-oil-unknown", Partly, tell}},
}

// open gives what to say of the nth of Asks where it was asked, isn't answered, and
// some answer to it would be worse than the verdict.
func (s *Sign) open(n int, verdict Verdict) (Reason, bool) {
	if !s.asked(n) {
		return Reason{}, false
	}
	for u := range unknowns {
		if unknowns[u].of != Asks[n].Name {
			continue
		}
		for answer := range Asks[n].Words {
			told := *s
			if Asks[n].set(&told, 0); told != *s {
				return Reason{}, false // it is answered
			}
			Asks[n].set(&told, answer+1)
			if v, _ := told.weigh(); v > verdict {
				return unknowns[u].Reason, true
			}
		}
	}
	return Reason{}, false
}

// weigh judges what was told by itself.
func (s *Sign) weigh() (Verdict, []Reason) {
	var list []Reason
	worst := Unsaid
	for n := range rules {
		if rules[n].holds(s) {
			list = append(list, rules[n].Reason)
			worst = max(worst, rules[n].Verdict)
		}
	}
	if r, holds := s.pieces(); holds {
		list = append(list, r)
		worst = max(worst, r.Verdict)
	}
	return s.modify(worst, list)
}

// pieces weighs the size of metal: pieces of more than a couple of millimetres
// stop any engine (common practice; the aircraft manuals' limit is 1.6 × 4.8 mm). What
// was measured and not named may be such a one.
func (s *Sign) pieces() (Reason, bool) {
	switch {
	case s.metal() && s.Size >= FiveMillimetres:
		return Reason{"debris-large", Stop, photo | keep | open}, true
	case s.Bit == 0 && s.Size+s.Depth+s.Amount+s.Colour+s.Magnet > 0:
		return Reason{"debris-found-unknown", Watch, measure | metal}, true
	}
	return Reason{}, false
}

// modify makes a verdict worse for what the rider hears and sees and for what was
// there before, and takes back what the first service explains.
func (s *Sign) modify(worst Verdict, list []Reason) (Verdict, []Reason) {
	if s.usual(worst) {
		kept := list[:0]
		for _, r := range list {
			if r.Verdict < Watch {
				kept = append(kept, r)
			}
		}
		return Normal, append(kept, Reason{"debris-first-service", Normal, photo | half})
	}
	if s.Noise == Fades {
		list = append(list, Reason{"debris-sick", Watch, open})
		worst = worst.worse()
	}
	// What was left as it is after it was to be watched doesn't get better: common
	// practice; TM 1-1520-238-23 replaces a gearbox at the fourth warning, however small.
	switch {
	case worst > Unsaid && s.More:
		list = append(list, Reason{"debris-more", Watch, half})
		worst = worst.worse()
	case worst > Unsaid && s.Again:
		list = append(list, Reason{"debris-again", Watch, open | half})
		worst = worst.worse()
	}
	if s.Noise == Stays {
		list = append(list, Reason{"debris-noise", Stop, open})
		worst = Stop
	}
	if s.Lamp {
		list = append(list, Reason{"debris-lamp", Stop, pressure | open})
		worst = Stop
	}
	return worst, list
}

// usual reports whether all that speaks against an engine is what its first service
// explains: glitter, or few small flakes, bright ones; with nothing about the oil, and
// nothing that was heard, seen or there before. Common practice, no source.
func (s *Sign) usual(worst Verdict) bool {
	small := s.Bit == Glitter && s.Size <= TwoMillimetres && s.Amount < Many ||
		s.Bit == Flakes && s.Size > 0 && s.Size <= TwoMillimetres && s.Amount == Few
	return s.FirstService && worst == Watch && small && s.Colour == Bright && s.Depth < FiveMillimetres && s.Oil <= Dark &&
		s.Noise <= NoNoise && !s.Lamp && !s.More && !s.Again
}

func worstFirst(list []Reason) []Reason {
	out := make([]Reason, 0, len(list))
	for v := Stop; v >= Unsaid; v-- {
		for _, r := range list {
			if r.Verdict == v && !said(out, r.Code) {
				out = append(out, r)
			}
		}
	}
	return out
}

func said(list []Reason, code string) bool {
	for _, r := range list {
		if r.Code == code {
			return true
		}
	}
	return false
}
