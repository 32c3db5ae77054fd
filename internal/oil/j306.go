package oil

// The limits are those of SAE J306, edition of February 2019, as two public copies
// give them, which agree where both have a row. The edition of 2005 began 80 at 7.0
// mm²/s, 80W at 7.0 and 75W at 4.1: superseded.

// gearWinters are the W grades: 70W, 75W, 80W, 85W. What a gear oil may be when it
// is cold is a viscosity of 150 000 mPa·s by ASTM D2983, at the warmest at PumpingAt.
var gearWinters = [...]Winter{
	{0, 0, 150000, -55, 3.8},
	{0, 0, 150000, -40, 3.8},
	{0, 0, 150000, -26, 8.5},
	{0, 0, 150000, -12, 11},
}

// gearSummers are the grades without W: 80, 85, 90, 110, 140, 190, 250. The last has
// no upper limit.
var gearSummers = [...]Summer{
	{8.5, 11, 0},
	{11, 13.5, 0},
	{13.5, 18.5, 0},
	{18.5, 24, 0},
	{24, 32.5, 0},
	{32.5, 41, 0},
	{41, 0, 0},
}
