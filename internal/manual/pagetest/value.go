package pagetest

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"tidysump/internal/quantity"
)

// Kinds of values that are no quantities.
const (
	words   = "words" // one of a few, or a name
	grade   = "grade"
	mark    = "mark"
	service = "service"
	count   = "count"
	thread  = "thread"
	years   = "years"
)

const oils = `(engine|gearbox|primary|final)`

// kinds says what can be asked of a page, and what kind of value answers.
var kinds = []struct {
	what *regexp.Regexp
	kind quantity.Kind
}{
	{regexp.MustCompile(`^(make|model|cooling)$`), words},
	{regexp.MustCompile(`^years$`), years},
	{regexp.MustCompile(`^displacement$`), quantity.Volume},
	{regexp.MustCompile(`^oil\.(engine\.(with-filter|oil-only|dry)|(gearbox|primary|final)\.(volume|dry))$`), quantity.Volume},
	{regexp.MustCompile(`^oil\.` + oils + `\.grades$`), grade},
	{regexp.MustCompile(`^oil\.` + oils + `\.marks$`), mark},
	{regexp.MustCompile(`^oil\.` + oils + `\.service$`), service},
	{regexp.MustCompile(`^level(\.(gearbox|primary|final))?\.(device|state|stance)$`), words},
	{regexp.MustCompile(`^level(\.(gearbox|primary|final))?\.(wait|run)$`), quantity.Duration},
	{regexp.MustCompile(`^level(\.(gearbox|primary|final))?\.band$`), quantity.Volume},
	{regexp.MustCompile(`^interval\.((first|severe)-)?(months|hours)$`), quantity.Duration},
	{regexp.MustCompile(`^interval\.(distance|first|severe)$`), quantity.Distance},
	{regexp.MustCompile(`^interval\.(filter|strainer|gearbox|primary|final)(-first|-severe)?$`), quantity.Distance},
	{regexp.MustCompile(`^interval\.(filter|strainer|gearbox|primary|final)-(months|hours)$`), quantity.Duration},
	{regexp.MustCompile(`^filter\.kind$`), words},
	{regexp.MustCompile(`^(filter|strainer)\.every$`), count},
	{regexp.MustCompile(`^bolt\.filter-cover\.count$`), count},
	{regexp.MustCompile(`^bolt\.` + parts + `\.torque$`), quantity.Torque},
	{regexp.MustCompile(`^bolt\.` + parts + `\.turn$`), quantity.Angle},
	{regexp.MustCompile(`^bolt\.` + parts + `\.thread$`), thread},
	{regexp.MustCompile(`^bolt\.` + parts + `\.size$`), quantity.Length},
	{regexp.MustCompile(`^bolt\.` + parts + `\.(drive|seal)$`), words},
	{regexp.MustCompile(`^warm\.target$`), quantity.Temperature},
	{regexp.MustCompile(`^warm\.time$`), quantity.Duration},
}

// choices are the words of which one answers.
var choices = []struct{ what, words string }{
	{"cooling", "air oil liquid"},
	{".device", "window stick-resting stick-screwed stick-pushed hole measured"},
	{".state", "cold warm hot"},
	{".stance", "upright side-stand centre-stand"},
	{"filter.kind", "spin-on cartridge centrifugal"},
	{".drive", "hexagon hexagon-key six-lobe hand strap"},
	{".seal", "flat-aluminium flat-copper folded bonded o-ring paper fibre square-ring"},
}

const parts = `(((gearbox|primary|final)-)?(drain|level|filler)|tank-drain|filter|filter-cover|strainer)`

func kindOf(what string) quantity.Kind {
	for _, k := range kinds {
		if k.what.MatchString(what) {
			return k.kind
		}
	}
	return ""
}

// families are the units that are exact multiples of each other, as far as manuals
// print them so: half a mile is never told from 0.8 km, but 1 L is 1000 mL.
var families = [][]string{
	{"L", "mL", "cm³", "cL", "dL"},
	{"US fl oz", "US pt", "US qt", "US gal"},
	{"imp fl oz", "imp pt", "imp qt", "imp gal"},
	{"N·m", "daN·m"},
	{"kgf·m", "kgf·cm"},
	{"mm", "cm"},
	{"s", "min", "h"},
	{"days", "weeks", "months", "years"},
	{"°", "turn"},
}

// reading is a figure with its ends, of which each may be half a step of its last
// digit off.
type reading struct {
	unit      string
	kind      quantity.Kind
	low, high end
	middle    *end // of a tolerance
}

type end struct{ value, half float64 }

var (
	number = `\d+ \d+/\d+|\d+/\d+|\d{1,3}(?:[, ]\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?`
	// figure is how a reader prints one: "2.5 L", "26–34 N·m", "30 ± 4 N·m", "1/2 turn".
	figure  = regexp.MustCompile(`^(` + number + `)(?:\s*([–-]|±)\s*(` + number + `))?\s*([^\d\s].*)$`)
	printed = regexp.MustCompile(number)
	zeros   = regexp.MustCompile(`0+$`)
	year    = regexp.MustCompile(`\d{4}`)
	open    = regexp.MustCompile(`\d{4}\s*[-–]`)
)

func readFigure(text string) (r reading, ok bool) {
	m := figure.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return r, false
	}
	id := m[4]
	switch id {
	case "cm³": // cubic centimetres are another word for millilitres
		id = "mL"
	case "day", "week", "month", "year":
		id += "s"
	case "turns":
		id = "turn"
	}
	unit, ok := quantity.Find(id)
	if !ok {
		return r, false
	}
	r.unit, r.kind = id, unit.Kind
	first := readEnd(m[1], unit)
	r.low, r.high = first, first
	if m[2] == "" {
		return r, true
	}
	second := readEnd(m[3], unit)
	if m[2] != "±" {
		r.high = second
		return r, true
	}
	delta := second.value - unit.Offset*unit.Scale
	r.middle = &first
	r.low = end{first.value - delta, max(first.half, second.half)}
	r.high = end{first.value + delta, max(first.half, second.half)}
	return r, true
}

func readEnd(text string, unit *quantity.Unit) end {
	plain := strings.ReplaceAll(text, ",", "")
	var value, half float64
	if whole, fraction, mixed := strings.Cut(plain, "/"); mixed {
		below, _ := strconv.ParseFloat(fraction, 64)
		if whole, above, both := strings.Cut(whole, " "); both {
			value, _ = strconv.ParseFloat(whole, 64)
			a, _ := strconv.ParseFloat(above, 64)
			value += a / below
		} else {
			value, _ = strconv.ParseFloat(whole, 64)
			value /= below
		}
		half = 0.02 * value
	} else {
		plain = strings.ReplaceAll(plain, " ", "")
		value, _ = strconv.ParseFloat(plain, 64)
		_, decimals, _ := strings.Cut(plain, ".")
		half = 0.5 * math.Pow10(-len(decimals))
		// Distances are rounded to hundreds and thousands, millilitres to tens.
		if at := zeros.FindString(plain); decimals == "" && at != "" {
			switch {
			case unit.Kind == quantity.Distance:
				half = min(0.5*math.Pow10(len(at)), 0.05*value)
			case unit.ID == "mL":
				half = 5
			}
		}
	}
	return end{unit.ToBase(value), half * unit.Scale}
}

// sameFigure reports whether two are one: in one family of units exactly, else within
// the rounding of the coarser one, or of both where both are rounded from a third.
func sameFigure(a, b reading, bothRounded bool) bool {
	if a.kind != b.kind {
		return false
	}
	exact := a.unit == b.unit || slices.ContainsFunc(families, func(family []string) bool {
		return slices.Contains(family, a.unit) && slices.Contains(family, b.unit)
	})
	near := func(x, y end) bool {
		off := 1e-6 * math.Abs(x.value)
		switch {
		case exact:
		case bothRounded:
			off += x.half + y.half
		default:
			off += max(x.half, y.half)
		}
		return math.Abs(x.value-y.value) <= off
	}
	ends := func(a, b reading) bool { return near(a.low, b.low) && near(a.high, b.high) }
	point := func(r reading) reading { r.low, r.high = *r.middle, *r.middle; return r }
	return ends(a, b) || a.middle != nil && ends(point(a), b) || b.middle != nil && ends(a, point(b))
}

// bare is a word without what parts its letters and digits.
func bare(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, text)
}

// plainValue is the one form of a value that is no quantity, "" for what is none.
func plainValue(kind quantity.Kind, text string) string {
	switch kind {
	case grade:
		return strings.TrimPrefix(bare(text), "sae")
	case mark:
		return strings.TrimPrefix(bare(text), "jaso")
	case service:
		return strings.TrimPrefix(bare(text), "api")
	case thread:
		text = strings.NewReplacer("×", "x", "*", "x", ",", ".", " ", "").Replace(strings.ToLower(text))
		if strings.Contains(text, ".") { // M12x1.50 and M8x1.0
			text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
		}
		return text
	case years:
		y := year.FindAllString(text, -1)
		switch {
		case len(y) > 1:
			return y[0] + "-" + y[1]
		case len(y) == 1 && open.MatchString(text):
			return y[0] + "-"
		case len(y) == 1:
			return y[0] + "-" + y[0]
		}
		return ""
	}
	return bare(text)
}

func isQuantity(kind quantity.Kind) bool { return quantity.Base(kind) != "" }

func readable(what, value string) bool {
	kind := kindOf(what)
	if !isQuantity(kind) {
		for _, c := range choices {
			if strings.HasSuffix(what, c.what) && kind == words {
				return slices.Contains(strings.Fields(c.words), value)
			}
		}
		return plainValue(kind, value) != ""
	}
	r, ok := readFigure(value)
	return ok && r.kind == kind
}

// agree reports whether two values of one fact do not contradict each other. Words
// of one may differ: of a name, or where two of them are as good.
func agree(what, a, b string) bool {
	one, ok := readFigure(a)
	other, okay := readFigure(b)
	if !isQuantity(kindOf(what)) {
		return true
	}
	return ok && okay && sameFigure(one, other, true)
}

// same reports whether an answer is what a fact says.
func same(what, want, got string) bool {
	kind := kindOf(what)
	if !isQuantity(kind) {
		return plainValue(kind, want) != "" && plainValue(kind, want) == plainValue(kind, got)
	}
	one, ok := readFigure(want)
	other, okay := readFigure(got)
	return ok && okay && sameFigure(one, other, false)
}
