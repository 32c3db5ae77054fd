package plan

// Gate reports whether something is to be looked at, touched or read at a step before
// one goes on: what came out; and where the step must be done, what is counted there or
// asked there.
func (s *Step) Gate() bool {
	return len(s.Signs) > 0 || s.Must && (len(s.Tally) > 0 || len(s.Asks) > 0)
}
