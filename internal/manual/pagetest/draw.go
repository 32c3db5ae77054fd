package pagetest

import (
	"math"
	"strconv"
	"strings"

	"pgregory.net/rapid"

	"tidysump/internal/quantity"
)

// printing is how one author prints: one page has one of each.
type printing struct {
	leader  func(label string) string
	torque  [3]string // how the units of a torque are spelled
	volume  [3]string
	twins   int  // how many units stand beside the first
	columns bool // the units stand in the head, the figures below them
	upper   bool
	comma   bool // 1,000 km and not 1000 km
}

// entry is a row that a page may have: what it says, the words for it, and between
// which figures it lies: newton metres, or tenths of a litre.
type entry struct {
	what      string // "" for a place of another job
	low, high int
	labels    []string
}

var torques = []entry{
	{"bolt.drain.torque", 15, 45, []string{"Oil drain bolt", "Engine oil drain plug", "Oil drain plug", "Engine drain plug", "Engine oil drain bolt", "Crankcase drain plug", "Sump plug", "Drain plug, engine oil"}},
	{"bolt.filter.torque", 10, 26, []string{"Oil filter", "Oil filter cartridge", "Engine oil filter", "Spin-on oil filter"}},
	{"bolt.filter-cover.torque", 5, 13, []string{"Oil filter cover bolts", "Oil filter cover screws", "Oil filter element cover bolt", "Screws of the oil filter cover", "Oil filter cap bolts"}},
	{"bolt.strainer.torque", 10, 35, []string{"Oil strainer cap", "Oil strainer plug", "Oil screen plug", "Oil strainer cover bolt", "Oil filter screen cap", "Engine oil strainer plug"}},
	{"bolt.gearbox-drain.torque", 15, 40, []string{"Gearbox drain plug", "Transmission drain plug", "Transmission oil drain bolt", "Gearbox oil drain plug", "Drain plug of the gearbox"}},
	{"bolt.primary-drain.torque", 15, 40, []string{"Primary drain plug", "Primary chaincase drain plug", "Primary case drain plug"}},
	{"bolt.final-drain.torque", 12, 30, []string{"Final drive drain bolt", "Final drive oil drain plug", "Final gear oil drain bolt"}},
	{"bolt.final-filler.torque", 8, 25, []string{"Final drive filler cap", "Final drive filler plug", "Final gear oil filler cap"}},
	{"", 5, 120, []string{"Spark plug", "Clutch cover bolts", "Rear axle nut", "Front axle", "Cylinder head bolts", "Coolant drain bolt",
		"Brake caliper bolts", "Fork drain screw", "Oil pressure switch", "Oil pump bolts", "Generator cover bolts", "Chain adjuster lock nut",
		"Oil cooler union bolts", "Swingarm pivot nut", "Exhaust pipe nuts", "Handlebar clamp bolts", "Rear sprocket nuts", "Neutral switch"}},
}

var volumes = []entry{
	{"oil.engine.oil-only", 10, 25, []string{"Engine oil, without filter change", "Engine oil after draining", "Engine oil, oil change", "Engine oil (filter not changed)", "Engine oil, oil change only", "Engine oil, periodic oil change", "Engine oil, filter not replaced"}},
	{"oil.engine.with-filter", 26, 29, []string{"Engine oil, with filter change", "Engine oil after filter change", "Engine oil with oil filter replacement", "Engine oil, oil and filter change", "Engine oil with filter", "Engine oil, filter renewed", "Engine oil when the filter is changed"}},
	{"oil.engine.dry", 30, 36, []string{"Engine oil after disassembly", "Engine oil, total amount", "Engine oil after overhaul", "Engine oil, dry engine", "Engine oil, engine stripped", "Engine oil, total capacity"}},
	{"oil.gearbox.volume", 5, 12, []string{"Gearbox oil", "Transmission oil", "Gearbox oil at change", "Gearbox", "Oil in the gearbox"}},
	{"oil.primary.volume", 3, 12, []string{"Primary chaincase oil", "Primary oil", "Primary chaincase", "Primary case"}},
	{"oil.final.volume", 1, 3, []string{"Final drive oil", "Final gear oil", "Final drive oil at change", "Final drive", "Rear drive oil"}},
	{"", 2, 180, []string{"Coolant", "Fork oil, each leg", "Fuel tank", "Brake fluid", "Coolant reservoir", "Fuel reserve", "Cooling system", "Front fork, left and right"}},
}

// Draw makes a page of rows out of one truth: any order, any leader, any spelling of
// the units, rows of other jobs in between.
func Draw(t *rapid.T) *Page {
	p := &Page{Name: "drawn", Kind: Clean}
	pick := func(label string, from ...string) string { return rapid.SampledFrom(from).Draw(t, label) }
	flip := func(label string) bool { return rapid.Bool().Draw(t, label) }
	width := rapid.IntRange(44, 60).Draw(t, "width")
	lead := pick("leader", "dots", "spaced dots", "colon", "blanks", "tab", "dash")
	w := printing{
		torque:  [3]string{pick("N·m", "N·m", "Nm", "N.m", "N-m"), pick("kgf·m", "kgf·m", "kgf-m", "kg-m", "m·kgf"), pick("lbf·ft", "lbf·ft", "ft-lb", "lb-ft", "ft·lbf", "lb.ft")},
		volume:  [3]string{pick("L", "L", "l", "litres", "liters", "ltr"), "US qt", pick("imp qt", "Imp qt", "imp. qt", "Imp. qt")},
		twins:   rapid.IntRange(0, 2).Draw(t, "twins"),
		columns: flip("columns"),
		upper:   flip("upper"),
		comma:   flip("comma"),
		leader: func(label string) string {
			gap := max(3, width-len(label))
			switch lead {
			case "dots":
				return " " + strings.Repeat(".", gap) + " "
			case "spaced dots":
				return strings.Repeat(" .", gap/2+1) + " "
			case "colon":
				return ": "
			case "tab":
				return "\t"
			case "dash":
				return " – "
			}
			return strings.Repeat(" ", gap)
		},
	}
	var blocks []string
	for _, draw := range []func() string{
		func() string { return p.torqueRows(t, &w) },
		func() string { return p.volumeRows(t, &w) },
		func() string { return p.oilRow(t) },
		func() string { return p.intervalRow(t, &w) },
	} {
		if block := draw(); block != "" {
			blocks = append(blocks, block)
		}
	}
	order := rapid.Permutation(blocks).Draw(t, "order")
	p.Text = strings.Join(order, "\n\n")
	return p
}

// rows are the entries of a table that this page has, in any order.
func rows(t *rapid.T, table []entry, foreign int) []entry {
	var list []entry
	for _, e := range table {
		n := 1
		if e.what == "" {
			n = rapid.IntRange(0, foreign).Draw(t, "foreign")
		} else if !rapid.Bool().Draw(t, e.what) {
			n = 0
		}
		for _, label := range rapid.Permutation(e.labels).Draw(t, "label")[:n] {
			list = append(list, entry{e.what, e.low, e.high, []string{label}})
		}
	}
	return rapid.Permutation(list).Draw(t, "rows")
}

func (p *Page) say(what, value, quote string, alt ...string) {
	p.Truth = append(p.Truth, Fact{What: what, Value: value, Alt: alt, Quote: quote})
}

func (p *Page) torqueRows(t *rapid.T, w *printing) string {
	list := rows(t, torques, 4)
	if len(list) == 0 {
		return ""
	}
	ids := []string{"N·m", "kgf·m", "lbf·ft"}[:1+w.twins]
	title := "TORQUES"
	lead := w.leader
	if w.columns {
		title = w.titled(title, w.torque[:len(ids)])
		lead = func(label string) string { return padded(label) }
	}
	lines := []string{title}
	for _, e := range list {
		value := float64(rapid.IntRange(e.low, e.high).Draw(t, "torque"))
		line := p.row(e, "N·m", value, ids, w, w.torque[:], lead)
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

func (p *Page) volumeRows(t *rapid.T, w *printing) string {
	list := rows(t, volumes, 3)
	if len(list) == 0 {
		return ""
	}
	ids := []string{"L", "US qt", "imp qt"}[:1+w.twins]
	lines := []string{"CAPACITIES"}
	plain := *w
	plain.columns = false
	for _, e := range list {
		value := float64(rapid.IntRange(e.low, e.high).Draw(t, "volume")) / 10
		lines = append(lines, p.row(e, "L", value, ids, &plain, w.volume[:], w.leader))
	}
	return strings.Join(lines, "\n")
}

const cell = 12

func padded(label string) string { return strings.Repeat(" ", max(3, 56-len(label))) }

func (w *printing) titled(title string, units []string) string {
	line := title + padded(title)
	for _, u := range units {
		line += u + strings.Repeat(" ", cell-len([]rune(u)))
	}
	return strings.TrimRight(line, " ")
}

// row prints a figure in all its units, each rounded as manuals round it.
func (p *Page) row(e entry, id string, value float64, ids []string, w *printing, spelled []string, lead func(string) string) string {
	label := e.labels[0]
	if w.upper {
		label = strings.ToUpper(label)
	}
	from, _ := quantity.Find(id)
	var figures, texts []string
	for _, to := range ids {
		u, _ := quantity.Find(to)
		figures = append(figures, rounded(u.FromBase(from.ToBase(value)), to))
		texts = append(texts, figures[len(figures)-1]+" "+to)
	}
	line := label + lead(label)
	if w.columns {
		for _, f := range figures {
			line += f + strings.Repeat(" ", cell-len(f))
		}
		line = strings.TrimRight(line, " ")
	} else {
		line += figures[0] + " " + spelled[0]
		var more []string
		for i := 1; i < len(figures); i++ {
			more = append(more, figures[i]+" "+spelled[i])
		}
		if len(more) > 0 {
			line += " (" + strings.Join(more, ", ") + ")"
		}
	}
	if e.what == "" {
		p.Not = append(p.Not, line)
	} else {
		p.say(e.what, texts[0], line, texts[1:]...)
		for _, kind := range []string{"spin-on", "cartridge"} { // what kind it is can be argued
			if e.what == "bolt.filter.torque" || e.what == "bolt.filter-cover.torque" {
				p.May = append(p.May, Fact{What: "filter.kind", Value: kind, Quote: line})
			}
		}
	}
	return line
}

func rounded(value float64, id string) string {
	decimals := 0
	if id == "kgf·m" || id == "L" || id == "US qt" || id == "imp qt" || id == "lbf·ft" && value < 8 {
		decimals = 1
	}
	return strconv.FormatFloat(value, 'f', decimals, 64)
}

func (p *Page) oilRow(t *rapid.T) string {
	if !rapid.Bool().Draw(t, "oil") {
		return ""
	}
	grade := rapid.SampledFrom([]string{"10W-40", "20W-50", "15W-50", "5W-30", "10W-30"}).Draw(t, "grade")
	line := rapid.SampledFrom([]string{"Engine oil", "Recommended engine oil", "Engine oil grade"}).Draw(t, "oil label") + ": SAE " + grade
	p.say("oil.engine.grades", grade, line)
	if rapid.Bool().Draw(t, "marked") {
		mark := rapid.SampledFrom([]string{"MA", "MA2", "MB"}).Draw(t, "mark")
		p.say("oil.engine.marks", mark, "JASO "+mark)
		line += ", JASO " + mark
	}
	if rapid.Bool().Draw(t, "classed") {
		class := rapid.SampledFrom([]string{"SG", "SJ", "SL", "SM", "SN"}).Draw(t, "class")
		p.say("oil.engine.service", class, "API "+class)
		line += ", API " + class
	}
	return line
}

func (p *Page) intervalRow(t *rapid.T, w *printing) string {
	if !rapid.Bool().Draw(t, "interval") {
		return ""
	}
	thousands := func(km int) string {
		text := strconv.Itoa(km)
		if w.comma && km >= 1000 {
			text = text[:len(text)-3] + "," + text[len(text)-3:]
		}
		return text
	}
	every := rapid.IntRange(4, 24).Draw(t, "every") * 500
	first := rapid.SampledFrom([]int{300, 500, 800, 1000}).Draw(t, "first")
	miles := strconv.Itoa(int(math.Round(float64(every)/1.609344/100)) * 100)
	line := rapid.SampledFrom([]string{"Oil change", "Engine oil", "Change the engine oil"}).Draw(t, "interval label") + ": "
	if rapid.Bool().Draw(t, "has first") {
		quote := rapid.SampledFrom([]string{"first at ", "first after ", "initially at "}).Draw(t, "first word") + thousands(first) + " km"
		p.say("interval.first", strconv.Itoa(first)+" km", quote)
		line += quote + ", then "
	}
	quote := rapid.SampledFrom([]string{"every ", "each "}).Draw(t, "every word") + thousands(every) + " km"
	if rapid.Bool().Draw(t, "has miles") {
		quote += " (" + miles + " mi)"
		p.say("interval.distance", strconv.Itoa(every)+" km", quote, miles+" mi")
	} else {
		p.say("interval.distance", strconv.Itoa(every)+" km", quote)
	}
	line += quote
	if rapid.Bool().Draw(t, "has months") {
		months := rapid.SampledFrom([]string{"6", "12", "24"}).Draw(t, "months")
		p.say("interval.months", months+" months", "or "+months+" months")
		line += " or " + months + " months"
	}
	return line
}
