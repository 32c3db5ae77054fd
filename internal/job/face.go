package job

import (
	"tidysump/internal/card"
	"tidysump/internal/plan"
	"tidysump/internal/wire"
)

// Deed is one of the four figures that a finished job shows first.
type Deed struct {
	Name   string   // word id
	Of     string   // word id of the oil's role after "@", or the fastener's place; empty for the bike
	Texts  []string // in the person's units, or a word id after "@"; empty where it was not told
	Beside []string // word ids of how it was told
}

// Members names the members of a deed.
func (d *Deed) Members(m *wire.Members) {
	m.String("name", &d.Name, wire.Required)
	m.String("of", &d.Of)
	wire.Texts(m, "texts", &d.Texts)
	wire.Texts(m, "beside", &d.Beside)
}

// face tells what a finished job did in four figures: the oil that went in, the plug as it
// was tightened, the level or else what came out, and the odometer. What nobody told is
// shown as that. The oil is the engine's where that was changed, else the first.
func (r *replayer) face() {
	s := r.state
	if s.Finished == "" {
		return
	}
	oil := &Balance{} // of a job on no oil nothing is told
	if len(s.Oils) > 0 {
		oil = &s.Oils[0]
	}
	for i := range s.Oils {
		if c := r.plan.Card().Circuit(s.Oils[i].Circuit); c != nil && c.Role == card.EngineOil {
			oil = &s.Oils[i]
			break
		}
	}
	role := ""
	if oil.Role != "" {
		role = "@" + oil.Role
	}
	in := Deed{Name: "face.in", Of: role, Texts: oil.Poured}
	plug := Deed{Name: "face.plug"}
	for i := range s.Readings {
		read := &s.Readings[i]
		b := r.plan.Card().Bolt(read.About)
		if read.What == plan.AskTorque && read.Stands && b != nil && b.Drains && b.Circuit == oil.Circuit && plug.Texts == nil {
			plug.Of, plug.Texts, plug.Beside = read.Name, read.Texts, read.Manners
		}
	}
	came := Deed{Name: "face.out", Of: role, Texts: oil.Drained}
	if oil.Level != "" {
		came = Deed{Name: "face.level", Of: role, Texts: []string{"@" + oil.Level}}
	}
	ridden := Deed{Name: "face.odometer"}
	for i := range s.Readings {
		if read := &s.Readings[i]; read.What == plan.AskOdometer && read.Stands {
			ridden.Texts, ridden.Beside = read.Texts, read.Manners
		}
	}
	s.Face = []Deed{in, plug, came, ridden}
}
