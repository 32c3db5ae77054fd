package plan

// The short form of the job: find what leaks, top up, get home. No oil is changed, so
// that nothing is drained, and no interval begins anew.

func (p *planner) readyHome() {
	if p.atRoadside() {
		p.plain("traffic")
	}
	p.plain("identify")
}

func (p *planner) warmHome() { p.plain("cool-down") }

func (p *planner) lookHome() { p.plain("leak-find") }

// fillHome tops up by the level, each oil through its own opening.
func (p *planner) fillHome() {
	for _, c := range p.circuits {
		p.onCircuit("check-oil", c)
		for _, b := range p.boltsWhere(p.isFiller) {
			if b.Circuit == c.ID {
				p.onBolt("filler-off", b)
			}
		}
		p.withCoverOff(c, "top-up-home")
	}
	p.fillersOn()
	p.plain("first-start")
}

func (p *planner) settleHome() { p.plain("leak-look", "ride-home", "write-down", "second-look") }

// GetHome reports whether it is the short form, and no oil change.
func (p *Plan) GetHome() bool { return p.day.bench.GetHome }
