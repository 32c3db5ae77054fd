package debris

// action is a set of what to do next.
type action uint

// What to do next: common practice, no source.
const (
	noStart  action = 1 << iota // neither start nor ride it
	tell                        // look where it isn't told, and say what is there
	thread                      // a new thread in the hole
	fur                         // measure how deep the fur is
	measure                     // measure and count the pieces
	metal                       // nail, colour and magnet: of what metal they are
	photo                       // beside a ruler
	keep                        // keep the pieces for whoever opens the engine
	cut                         // cut the filter open
	strainer                    // clean the strainer before oil goes in
	sample                      // oil to a laboratory
	pressure                    // have the oil pressure measured, hot
	open                        // ask someone who may open the engine
	leak                        // find where the fuel comes in
	twice                       // once mended, change the oil twice
	short                       // new oil and filter, 20 to 30 minutes, open the filter again
	soon                        // new oil and filter, look again after 200 to 500 km
	half                        // look again after half the usual distance
	hotRide                     // one long hot ride
)

// Actions are their names, in the order of doing.
var Actions = []string{"no-start", "tell", "thread", "fur", "measure", "metal", "photo", "keep", "cut", "strainer", "sample", "pressure", "open", "leak", "twice", "short", "soon", "half", "hot-ride"}

// NotLooked is the reason where nobody looked at all, which has no sentence of its own.
var NotLooked = Reason{"", Partly, tell}

// onTheRoad are those that want the engine to run.
const onTheRoad = short | soon | half | hotRide

// Next lists what to do next after a judgement, in the order of doing. Where the
// verdict is to stop, or another of the same engine is (stopped), nothing is advised
// for which the engine must run; of several distances the shortest counts.
func Next(verdict Verdict, reasons []Reason, stopped bool) []string {
	var all action
	for _, r := range reasons {
		all |= r.next
	}
	if verdict == Stop {
		all |= noStart
	}
	if verdict == Stop || stopped {
		all &^= onTheRoad
	}
	if all&(short|soon) > 0 {
		all &^= half
	}
	if all&short > 0 {
		all &^= soon
	}
	var names []string
	for n := range Actions {
		if all&(1<<n) > 0 {
			names = append(names, Actions[n])
		}
	}
	return names
}
