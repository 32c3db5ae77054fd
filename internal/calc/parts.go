package calc

import "slices"

// What the answer of each calculation may have, besides notes. A test holds that no
// answer has another member, and that each of these comes about.

// xAxis and yAxis are what stands along an axis of a picture.
var (
	xAxis = []part{{name: "xTicks", content: holdsPoints}, {name: "xTexts", content: holdsTexts}}
	yAxis = []part{{name: "yTicks", content: holdsPoints}, {name: "yTexts", content: holdsTexts}}
)

var oilSuitsParts = []part{
	{name: "verdict"},
	{name: "figures", content: holdsFigures},
	{name: "grades", content: holdsTexts},
}

var bottlesParts = []part{
	{name: "verdict"},
	{name: "pours", content: holdsRows, rows: []part{
		{name: "id"},
		{name: "place", content: holdsNumber},
		{name: "verdict"},
		{name: "pour", content: holdsNumber},
		{name: "pourTexts", content: holdsTexts},
		{name: "left", content: holdsNumber},
		{name: "leftTexts", content: holdsTexts},
	}},
	{name: "shelf", content: holdsRows, rows: []part{
		{name: "id"},
		{name: "size"},
		{name: "left"},
		{name: "opened", content: holdsYes},
		{name: "price"},
	}},
	{name: "opened", content: holdsNumber},
	{name: "left", content: holdsNumber},
	{name: "missing", content: holdsNumber},
	{name: "figures", content: holdsFigures},
	{name: "cost", content: holdsNumber},
}

var coolParts = slices.Concat([]part{
	{name: "assumed", content: holdsFigures},
	{name: "verdict"},
	{name: "minutes", content: holdsNumber},
	{name: "figures", content: holdsFigures},
	{name: "times", content: holdsPoints},
	{name: "temps", content: holdsPoints},
	{name: "touch", content: holdsFigures},
}, xAxis, yAxis)

var runOutParts = slices.Concat([]part{
	{name: "assumed", content: holdsFigures},
	{name: "viscosity", content: holdsNumber},
	{name: "times", content: holdsPoints},
	{name: "left", content: holdsPoints},
	{name: "warmer", content: holdsPoints},
	{name: "figures", content: holdsFigures},
}, xAxis, yAxis)

var debrisParts = []part{{name: "verdict"}}

var torqueParts = []part{
	{name: "verdict"},
	{name: "texts", content: holdsTexts},
	{name: "base", content: holdsNumber},
	{name: "meant"},
	{name: "figures", content: holdsFigures},
}

var guessParts = []part{{name: "figures", content: holdsFigures}}

var wrenchParts = []part{
	{name: "wrenches", content: holdsRows, rows: []part{
		{name: "id"},
		{name: "verdict"},
		{name: "unit"},
		{name: "low", content: holdsNumber},
		{name: "fifth", content: holdsNumber},
		{name: "high", content: holdsNumber},
		{name: "step", content: holdsNumber},
		{name: "mark", content: holdsNumber},
		{name: "usable", content: holdsNumber},
		{name: "usableAt", content: holdsNumber},
		{name: "markAt", content: holdsNumber},
		{name: "setting"},
		{name: "gets", content: holdsFigures},
	}},
	{name: "take"},
}

var turnParts = []part{{name: "figures", content: holdsFigures}}

var firstParts = []part{
	{name: "prefill"},
	{name: "read"},
	{name: "before", content: holdsFigures},
	{name: "after", content: holdsFigures},
}

var levelParts = []part{
	{name: "assumed", content: holdsFigures},
	{name: "figures", content: holdsFigures},
	{name: "verdict"},
	{name: "share", content: holdsNumber},
	{name: "corrected", content: holdsNumber},
	{name: "change", content: holdsNumber},
	{name: "gauge"},
	{name: "line", content: holdsNumber},
	{name: "lowMark", content: holdsNumber},
	{name: "highMark", content: holdsNumber},
	{name: "aimLow", content: holdsNumber},
	{name: "aimHigh", content: holdsNumber},
	{name: "covered", content: holdsNumber},
}

var oilCurveParts = slices.Concat([]part{
	{name: "figures", content: holdsFigures},
	{name: "assumed", content: holdsFigures},
	{name: "grades", content: holdsTexts},
	{name: "temps", content: holdsPoints},
	{name: "low", content: holdsPoints},
	{name: "high", content: holdsPoints},
}, xAxis, yAxis)

var oilMixParts = []part{
	{name: "figures", content: holdsFigures},
	{name: "grades", content: holdsTexts},
}

var oilVolumeParts = []part{
	{name: "assumed", content: holdsFigures},
	{name: "figures", content: holdsFigures},
}

var convertParts = []part{
	{name: "kind"},
	{name: "base", content: holdsNumber},
	{name: "texts", content: holdsTexts},
}

var billParts = []part{
	{name: "currency"},
	{name: "prices"},
	{name: "digits", content: holdsMoney},
	{name: "sum", content: holdsMoney},
	{name: "discount", content: holdsMoney},
	{name: "net", content: holdsMoney},
	{name: "tax", content: holdsMoney},
	{name: "rounding", content: holdsMoney},
	{name: "total", content: holdsMoney},
	{name: "lines", content: holdsRows, rows: []part{
		{name: "unit"},
		{name: "count"},
		{name: "rate"},
		{name: "price", content: holdsMoney},
		{name: "discount", content: holdsMoney},
		{name: "amount", content: holdsMoney},
	}},
	{name: "taxes", content: holdsRows, rows: []part{
		{name: "rate"},
		{name: "base", content: holdsMoney},
		{name: "tax", content: holdsMoney},
	}},
	{name: "estimate", content: holdsMoney},
	{name: "more", content: holdsMoney},
	{name: "less", content: holdsMoney},
}

var gaugeParts = []part{
	{name: "verdict"},
	{name: "trusted", content: holdsYes},
	{name: "scale", content: holdsNumber},
	{name: "edge", content: holdsNumber},
	{name: "low", content: holdsNumber},
	{name: "high", content: holdsNumber},
	{name: "ruler", content: holdsPoints},
	{name: "marks", content: holdsRows, rows: []part{
		{name: "across", content: holdsNumber},
		{name: "text"},
		{name: "size"},
	}},
}
