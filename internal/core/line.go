package core

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/line"
)

// readLine reads a line that was typed or said at the bench. What an earlier version left
// in the lists of a calculation refuses nothing here.
func readLine(i *line.Ask, read []finding.Finding) (*line.Reading, []finding.Finding) {
	read = slices.DeleteFunc(read, func(f finding.Finding) bool { return strings.HasPrefix(f.Where, "/kept/") })
	if finding.Refused(read) {
		return nil, read
	}
	if len(i.Text) > line.MostText {
		return nil, finding.Refusal("text-too-long", "/text", "most", strconv.Itoa(line.MostText))
	}
	system, list := systemOf(i.System)
	if list != nil {
		return nil, list
	}
	i.System = system
	return line.Read(i), nil
}
