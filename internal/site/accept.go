package site

import (
	"net/http"
	"strconv"
	"strings"
)

// chooseEncoding picks the smallest form of a file that the request accepts
// (RFC 9110, 12.5.3): "br", "gzip" or "" for the body as it is. Of two that are
// accepted the one with the higher weight wins; at equal weight the smaller.
func chooseEncoding(h http.Header, f *File) string {
	weights := acceptedWeights(strings.Join(h.Values("Accept-Encoding"), ","))
	best, bestWeight := "", weights.of("identity")
	for _, token := range []string{"gzip", "br"} { // the smaller one last
		if *f.Form(token) == nil {
			continue
		}
		if w := weights.of(token); w > 0 && w >= bestWeight {
			best, bestWeight = token, w
		}
	}
	return best
}

// weightOf holds the weight of each content coding that a request names, 0 to 1, as far
// as it matters here: a request may name thousands.
type weightOf map[string]float64

// acceptedWeights reads an Accept-Encoding field; a part that does not parse
// counts as not accepted.
func acceptedWeights(field string) weightOf {
	weights := weightOf{}
	for part := range strings.SplitSeq(field, ",") {
		coding, parameter, _ := strings.Cut(part, ";")
		coding = strings.ToLower(strings.TrimSpace(coding))
		if coding == "x-gzip" {
			coding = "gzip"
		}
		switch coding {
		case "br", "gzip", "identity", "*":
			weights[coding] = weight(parameter)
		}
	}
	return weights
}

// weight reads "q=0.5"; no parameter is 1.
func weight(parameter string) float64 {
	parameter = strings.TrimSpace(parameter)
	if parameter == "" {
		return 1
	}
	name, value, _ := strings.Cut(parameter, "=")
	q, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
	if strings.ToLower(strings.TrimSpace(name)) != "q" || err != nil || !(q >= 0 && q <= 1) {
		return 0
	}
	return q
}

// of returns the weight of a coding. One that isn't named goes by "*"; without
// that the body as it is stays acceptable, but after all that are named.
func (weights weightOf) of(coding string) float64 {
	if w, ok := weights[coding]; ok {
		return w
	}
	if w, ok := weights["*"]; ok {
		return w
	}
	if coding == "identity" {
		return 0.0001
	}
	return 0
}
