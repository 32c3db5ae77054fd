package pages

import (
	"encoding/json"
	"net/http"

	"tidysump/internal/core"
)

// What the core answers, as far as the pages say it.

type finding struct {
	Code, Where, Grade string
	Values             values
}

type figure struct {
	Name, Standing, Source, Page, Method, Kept, Quote, Lookup string
	Texts                                                     []string
	Values                                                    values
}

type item struct {
	Word    string
	Values  values
	Count   int
	Against []string
	Lookup  string
}

type warn struct{ Signal, Word string }

type help struct {
	Op    string
	Given values
}

type oil struct {
	Circuit, Role string
	Today         bool
	Due, Need     figure
	Figures, Read []figure
	Chart, Rows   *figure
}

type bolt struct {
	Purpose, Place, Thread, By, Seal, SealSize string
	Count                                      int
	Tool                                       []string
	Torque                                     figure
	Turn, Hand                                 *figure
	Today, Listed, Leave                       bool
}

// Tight is the figure that counts for how tight it gets.
func (b bolt) Tight() figure {
	if b.By == "turn" && b.Turn != nil {
		return *b.Turn
	}
	return b.Torque
}

type step struct {
	ID, Stage, Word string
	Values          values
	Warns           []warn
	Figures, Timers []figure
	Helps           []help
	Takes, Tally    []item
	Notes           []string
	Must            bool
}

type plan struct {
	Name          string
	Invented      bool
	Oils          []oil
	Bolts         []bolt
	Parts, Tools  []item
	Steps         []step
	Gaps, Also    []item
	MayKeepFilter bool
	FilterNth     int
	Findings      []finding
}

type listed struct {
	ID, Name, Years, Layout string
	Gaps                    int
}

type field struct {
	Name, Kind, Unit, Family, On string
	Needed, Front, Lines         bool
	Letters                      int
	Words, When                  []string
	Rows                         []field
}

type form struct {
	Op, Caution string
	Fields      []field
}

// worked is what a calculation came to.
type worked struct {
	Verdict, Warmth, Take                  string
	Texts, Actions, Grades                 []string
	Before, After, Figures, Touch, Assumed []figure
	Wrenches                               []wrench
	Rings                                  []ring
	Pours                                  []pour
	Notes                                  []finding
}

type wrench struct {
	ID, Verdict, Setting string
	Gets                 []figure
	Beside               []wrench
}

type ring struct {
	ID, Series, Verdict string
	Texts               []string
	Figures             []figure
}

type pour struct {
	ID, Verdict          string
	PourTexts, LeftTexts []string
	Left                 float64
}

type outcome struct {
	Outcome, To, Why, Sure, Source  string
	Feared                          bool
	Other, Now, Limits, Home, Until []string
	Warns                           []warn
}

// Statuses says how each outcome of the core is told over HTTP, by the pages and by the
// operations.
var Statuses = map[core.Outcome]int{
	core.OK:        http.StatusOK,
	core.UnknownOp: http.StatusNotFound,
	core.Malformed: http.StatusBadRequest,
	core.Refused:   http.StatusUnprocessableEntity,
	core.TooLarge:  http.StatusRequestEntityTooLarge,
	core.Crashed:   http.StatusInternalServerError,
}

// Do is the one door of the core: core.Do, or what stands in for it in a test.
type Do func(op string, in []byte) ([]byte, core.Outcome)

// call asks the core. Where it refuses, ok is false and found says why.
func call[T any](do Do, op string, in any) (answer T, found []finding, status int) {
	text, err := json.Marshal(in)
	if err != nil {
		panic(err) // texts, lists and what was JSON before always marshal
	}
	out, outcome := do(op, text)
	var all struct {
		OK       T
		Findings []finding
	}
	if err := json.Unmarshal(out, &all); err != nil {
		panic(err) // the core answers in JSON, and a test holds that these types fit
	}
	return all.OK, all.Findings, Statuses[outcome]
}
