package wire_test

import (
	"fmt"

	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// plug is a drain plug as a card might have it.
type plug struct {
	id     string
	thread string
	torque float64 // N·m
	magnet bool
}

// Members names the plug's members.
func (p *plug) Members(m *wire.Members) {
	m.String("id", &p.id, wire.Required)
	m.String("thread", &p.thread)
	m.Float("torque", &p.torque)
	m.Bool("magnet", &p.magnet)
}

func ExampleWrite() {
	fmt.Printf("%s\n", wire.Write(&plug{id: "sump", torque: 24}))
	// Output:
	// {"id":"sump","torque":24}
}

// Reading reports all that is wrong, and where.
func ExampleRead() {
	var p plug
	list := wire.Read([]byte(`{"thread": "M12x1.5", "torque": "24", "colour": "red"}`), &p)
	for _, f := range list {
		fmt.Println(f.Where, f.Code)
	}
	fmt.Println(finding.Refused(list), p.thread)
	// Output:
	// /id missing
	// /torque wrong-type
	// /colour unknown-member
	// true M12x1.5
}
