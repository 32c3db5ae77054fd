package card

import "strconv"

// mostFirst is how many figures are asked for first: what one looks up in one go.
const mostFirst = 5

// First gives the places of the five figures that a plan of the card needs most, as
// pointers into it, in the order in which they are asked for: grade and volume of the
// engine's oil, how tight its drain and its filter get (of what kind that is instead, where
// nobody said it: how tight follows from it), then the volumes of the other oils, how the
// level is read, the thread of the drain. Which they are follows from the layout: from what
// the card has, and never from what it knows already. Common practice, no source.
func First(c *Card) []string {
	engine := 0
	for n := range c.Circuits {
		if c.Circuits[n].Role == EngineOil {
			engine = n
			break
		}
	}
	if len(c.Circuits) == 0 {
		return nil
	}
	oil := &c.Circuits[engine]
	volume := "oilOnly"
	if len(c.Filters) > 0 {
		volume = "withFilter"
	}
	list := []string{circuitAt(engine, "oil/grades"), circuitAt(engine, volume)}
	drain := -1
	for n := range c.Bolts {
		if b := &c.Bolts[n]; b.Drains && (b.Circuit == oil.ID || b.Circuit == "") {
			drain = n
			list = append(list, boltAt(n, "torque"))
			break
		}
	}
	for n := range c.Filters {
		if c.Filters[n].Kind == KindUnknown {
			list = append(list, "/filters/"+strconv.Itoa(n)+"/kind")
		}
	}
	for n := range c.Bolts {
		b := &c.Bolts[n]
		if b.Purpose == FilterCanned {
			list = append(list, boltAt(n, "turn"))
			break
		}
		if b.Purpose == FilterCover {
			list = append(list, boltAt(n, "torque"))
			break
		}
	}
	for n := range c.Circuits {
		if n != engine {
			list = append(list, circuitAt(n, "oilOnly"))
		}
	}
	list = append(list, circuitAt(engine, "level/device"))
	if drain >= 0 {
		list = append(list, boltAt(drain, "thread"), boltAt(drain, "seal/kind"))
	}
	list = append(list, circuitAt(engine, "level/state"), circuitAt(engine, "level/stance"))
	return list[:min(len(list), mostFirst)]
}

func circuitAt(n int, member string) string { return "/circuits/" + strconv.Itoa(n) + "/" + member }
func boltAt(n int, member string) string    { return "/bolts/" + strconv.Itoa(n) + "/" + member }
