package calc

import "slices"

// What the answer of each calculation may have, besides notes. A test holds that no
// answer has another member, and that each of these comes about.

// xAxis and yAxis are what stands along an axis of a picture.
var (
	xAxis = []shape{{name: "xTicks", content: holdsPoints}, {name: "xTexts", content: holdsTexts}}
	yAxis = []shape{{name: "yTicks", content: holdsPoints}, {name: "yTexts", content: holdsTexts}}
)

var oilSuitsShape = []shape{
	{name: "verdict"},
	{name: "figures", content: holdsFigures},
	{name: "grades", content: holdsTexts},
}

var bottlesShape = []shape{
	{name: "verdict"},
	{name: "pours", content: holdsRows, rows: []shape{
		{name: "id"},
		{name: "place", content: holdsNumber},
		{name: "verdict"},
		{name: "pour", content: holdsNumber},
		{name: "pourTexts", content: holdsTexts},
		{name: "left", content: holdsNumber},
		{name: "leftTexts", content: holdsTexts},
	}},
	{name: "shelf", content: holdsRows, rows: []shape{
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

var coolShape = slices.Concat([]shape{
	{name: "assumed", content: holdsFigures},
	{name: "verdict"},
	{name: "figures", content: holdsFigures},
	{name: "times", content: holdsPoints},
	{name: "low", content: holdsPoints},
	{name: "high", content: holdsPoints},
	{name: "touch", content: holdsFigures},
	{name: "warmth"},
}, xAxis, yAxis)

var runOutShape = slices.Concat([]shape{
	{name: "assumed", content: holdsFigures},
	{name: "viscosity", content: holdsNumber},
	{name: "times", content: holdsPoints},
	{name: "left", content: holdsPoints},
	{name: "warmer", content: holdsPoints},
	{name: "figures", content: holdsFigures},
	{name: "warmth"},
}, xAxis, yAxis)

var leakShape = []shape{
	{name: "verdict"},
	{name: "assumed", content: holdsFigures},
	{name: "figures", content: holdsFigures},
}

var debrisShape = []shape{{name: "verdict"}, {name: "actions", content: holdsTexts}}

var torqueShape = []shape{
	{name: "verdict"},
	{name: "texts", content: holdsTexts},
	{name: "base", content: holdsNumber},
	{name: "meant"},
	{name: "figures", content: holdsFigures},
}

var guessShape = []shape{{name: "figures", content: holdsFigures}}

var wrenchShape = []shape{
	{name: "wrenches", content: holdsRows, rows: []shape{
		{name: "id"},
		{name: "verdict"},
		{name: "unit"},
		{name: "low", content: holdsNumber},
		{name: "high", content: holdsNumber},
		{name: "step", content: holdsNumber},
		{name: "mark", content: holdsNumber},
		{name: "usable", content: holdsNumber},
		{name: "usableAt", content: holdsNumber},
		{name: "markAt", content: holdsNumber},
		{name: "setting"},
		{name: "gets", content: holdsFigures},
		{name: "beside", content: holdsRows, rows: []shape{
			{name: "setting"},
			{name: "gets", content: holdsFigures},
		}},
	}},
	{name: "take"},
	{name: "figures", content: holdsFigures},
}

var wrenchCheckShape = []shape{
	{name: "assumed", content: holdsFigures},
	{name: "verdict"},
	{name: "figures", content: holdsFigures},
}

var ringShape = []shape{
	{name: "rings", content: holdsRows, rows: []shape{
		{name: "id"},
		{name: "series"},
		{name: "verdict"},
		{name: "texts", content: holdsTexts},
		{name: "figures", content: holdsFigures},
	}},
	{name: "verdict"},
}

var turnShape = []shape{{name: "figures", content: holdsFigures}}

var firstShape = []shape{
	{name: "prefill"},
	{name: "read"},
	{name: "before", content: holdsFigures},
	{name: "after", content: holdsFigures},
}

var levelShape = []shape{
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

var oilCurveShape = slices.Concat([]shape{
	{name: "figures", content: holdsFigures},
	{name: "assumed", content: holdsFigures},
	{name: "grades", content: holdsTexts},
	{name: "temps", content: holdsPoints},
	{name: "low", content: holdsPoints},
	{name: "high", content: holdsPoints},
}, xAxis, yAxis)

var oilMixShape = []shape{
	{name: "figures", content: holdsFigures},
	{name: "grades", content: holdsTexts},
}

var fuelShape = []shape{
	{name: "figures", content: holdsFigures},
	{name: "assumed", content: holdsFigures},
	{name: "grades", content: holdsTexts},
	{name: "verdict"},
}

var oilVolumeShape = []shape{
	{name: "assumed", content: holdsFigures},
	{name: "figures", content: holdsFigures},
}

var oilPressureShape = []shape{
	{name: "assumed", content: holdsFigures},
	{name: "verdict"},
	{name: "figures", content: holdsFigures},
}

var convertShape = []shape{
	{name: "kind"},
	{name: "base", content: holdsNumber},
	{name: "to", content: holdsNumber},
	{name: "texts", content: holdsTexts},
}

var billShape = []shape{
	{name: "currency"},
	{name: "prices"},
	{name: "digits", content: holdsMoney},
	{name: "sum", content: holdsMoney},
	{name: "discount", content: holdsMoney},
	{name: "net", content: holdsMoney},
	{name: "tax", content: holdsMoney},
	{name: "rounding", content: holdsMoney},
	{name: "total", content: holdsMoney},
	{name: "lines", content: holdsRows, rows: []shape{
		{name: "unit"},
		{name: "count"},
		{name: "rate"},
		{name: "price", content: holdsMoney},
		{name: "discount", content: holdsMoney},
		{name: "amount", content: holdsMoney},
	}},
	{name: "taxes", content: holdsRows, rows: []shape{
		{name: "rate"},
		{name: "base", content: holdsMoney},
		{name: "tax", content: holdsMoney},
	}},
	{name: "estimate", content: holdsMoney},
	{name: "more", content: holdsMoney},
	{name: "less", content: holdsMoney},
}

var rulerShape = []shape{
	{name: "verdict"},
	{name: "trusted", content: holdsYes},
	{name: "scale", content: holdsNumber},
	{name: "edge", content: holdsNumber},
	{name: "low", content: holdsNumber},
	{name: "high", content: holdsNumber},
	{name: "ruler", content: holdsPoints},
	{name: "marks", content: holdsRows, rows: []shape{
		{name: "across", content: holdsNumber},
		{name: "text"},
		{name: "size"},
	}},
}
