package debris

// Reason is a rule that holds, with what it says: a finding's code.
type Reason struct {
	Code    string
	Verdict Verdict
	next    action
}

// rule holds for the signs that have all it names; 0 names nothing. A size is a
// least size.
type rule struct {
	bit, size, amount, colour, oil int
	lamp                           bool
	Reason
}

// rules, of which every one that holds is reported.
var rules = [...]rule{
	{bit: Nothing, Reason: Reason{"debris-nothing", Normal, 0}},
	{bit: Paste, Reason: Reason{"debris-paste", Normal, photo}},
	{bit: Fuzz, Reason: Reason{"debris-fuzz", Normal, photo}},
	{bit: Glitter, Reason: Reason{"debris-glitter", Watch, photo | cut | sample | soon}},
	{bit: Flakes, Reason: Reason{"debris-flakes", Watch, photo | keep | cut | short}},
	// US Army TM 1-1520-238-23 has more than ten flakes of 1.6 mm as the limit of a
	// gearbox, an aircraft manual's limit and not a motorcycle's.
	{bit: Flakes, amount: Many, Reason: Reason{"debris-many", Stop, keep | cut | open}},
	{bit: Flakes, colour: Reddish, Reason: Reason{"debris-bronze", Watch, sample | soon}},
	{bit: Flakes, colour: Dull, Reason: Reason{"debris-bearing", Watch, sample | pressure}},
	{bit: Flakes, colour: Dull, lamp: true, Reason: Reason{"debris-bearing-lamp", Stop, pressure | open}},
	// "Granular steel, looks like sand": TM 1-1520-238-23; "any amount greater than a
	// trace": TM 1-1500-204-23-1.
	{bit: Sand, Reason: Reason{"debris-sand", Stop, photo | keep | open}},
	{bit: Chip, Reason: Reason{"debris-chip", Watch, photo | keep | soon}},
	{bit: Part, Reason: Reason{"debris-part", Stop, photo | keep | open}},
	{bit: Coil, Reason: Reason{"debris-coil", Stop, thread}},
	{bit: Clutch, Reason: Reason{"debris-clutch", Watch, strainer | half}},
	{bit: Plastic, Reason: Reason{"debris-plastic", Watch, photo | strainer | soon}},
	{bit: Plastic, size: Larger, Reason: Reason{"debris-guide", Stop, keep | open}},
	{bit: Sealant, Reason: Reason{"debris-sealant", Watch, strainer}},
	{oil: Dark, Reason: Reason{"debris-dark", Normal, 0}},
	{oil: Foam, Reason: Reason{"debris-foam", Watch, hotRide}},
	{oil: Milky, Reason: Reason{"debris-milky", Stop, photo | open | twice}},
	{oil: Water, Reason: Reason{"debris-water", Stop, open | twice}},
	{oil: Fuel, Reason: Reason{"debris-fuel", Watch, sample | soon}},
	{oil: Burnt, Reason: Reason{"debris-burnt", Watch, photo | half}},
}

func (r *rule) holds(s *Sign) bool {
	return (r.bit == 0 || r.bit == s.Bit) && s.Size >= r.size && (r.amount == 0 || r.amount == s.Amount) &&
		(r.colour == 0 || r.colour == s.Colour) && (r.oil == 0 || r.oil == s.Oil) && (!r.lamp || s.Lamp || s.Noise)
}

// Judge gives the worst verdict of all that holds, and the reasons, the worst
// first. What isn't reported counts against: metal whose size or amount nobody measured
// is at least watched, and no answer at all is no verdict.
func Judge(s *Sign) (Verdict, []Reason) {
	var list []Reason
	for n := range rules {
		if rules[n].holds(s) {
			list = append(list, rules[n].Reason)
		}
	}
	if s.sized() {
		list = append(list, s.measured()...)
	}
	worst := Unsaid
	for _, r := range list {
		worst = max(worst, r.Verdict)
	}
	worst, list = s.modify(worst, list)
	return worst, worstFirst(list)
}

// measured weighs the size of metal: pieces of more than a couple of millimetres
// stop any engine (common practice; the aircraft manuals' limit is 1.6 × 4.8 mm).
func (s *Sign) measured() []Reason {
	switch {
	case s.Size >= FiveMillimetres:
		return []Reason{{"debris-large", Stop, photo | keep | open}}
	case s.Size == 0:
		return []Reason{{"debris-size-unknown", Watch, measure}}
	case s.Bit == Flakes && s.Amount == 0:
		return []Reason{{"debris-amount-unknown", Watch, measure}}
	}
	return nil
}

// modify makes a verdict a step worse for what the rider hears and sees, and what
// is only watched a step better within the first service.
func (s *Sign) modify(worst Verdict, list []Reason) (Verdict, []Reason) {
	if worst == Unsaid && !s.Noise && !s.Lamp {
		return worst, list
	}
	if s.Noise || s.Lamp {
		list = append(list, Reason{"debris-sick", Watch, open})
		worst = min(max(worst, Normal)+1, Stop)
	}
	if s.More && worst > Unsaid {
		list = append(list, Reason{"debris-more", Watch, half})
		worst = min(worst+1, Stop)
	}
	if s.FirstService && worst == Watch && !s.Noise && !s.Lamp && !s.More && s.small() {
		return Normal, append(list, Reason{"debris-first-service", Normal, half})
	}
	return worst, list
}

func worstFirst(list []Reason) []Reason {
	out := make([]Reason, 0, len(list))
	for v := Stop; v >= Unsaid; v-- {
		for _, r := range list {
			if r.Verdict == v {
				out = append(out, r)
			}
		}
	}
	return out
}
