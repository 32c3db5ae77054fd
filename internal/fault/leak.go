package fault

// leakStops are the answers of the table's questions at which a bike that leaks stays
// where it is, whatever the leak is and however slow: its rows hold them to it.
var leakStops = [...]struct{ question, answers string }{
	{"tyre", "yes"},
	{"lamp", "flickers on"},
	{"side", "pressed"},
	{"level", "low"},
}

// LeakStops reports whether an answer of one of the table's questions keeps a bike that
// leaks where it is. What nobody looked at counts as the worst that it may be.
func LeakStops(question, answer string) bool {
	for _, s := range leakStops {
		if s.question == question {
			return answer == "" || answer == Other || has(s.answers, answer)
		}
	}
	return false
}
