package quote

import "strings"

// The currencies in use by the number of decimals of their minor unit: ISO 4217,
// list one, as the public data set datasets/currency-codes keeps it (a copy of
// about 2012 read whole, that of 2017-01-01 in part), without funds, metals and
// test codes. What came later (MRU, SLE, STN, VES, XCG, ZMW, ZWG) is from memory.
const (
	withNone  = "BIF,CLP,DJF,GNF,ISK,JPY,KMF,KRW,PYG,RWF,UGX,VND,VUV,XAF,XOF,XPF"
	withThree = "BHD,IQD,JOD,KWD,LYD,OMR,TND"
	withTwo   = "AED,AFN,ALL,AMD,ANG,AOA,ARS,AUD,AWG,AZN,BAM,BBD,BDT,BGN,BMD,BND,BOB,BRL,BSD,BTN,BWP,BYN,BZD," +
		"CAD,CDF,CHF,CNY,COP,CRC,CUP,CVE,CZK,DKK,DOP,DZD,EGP,ERN,ETB,EUR,FJD,FKP,GBP,GEL,GHS,GIP,GMD,GTQ,GYD," +
		"HKD,HNL,HTG,HUF,IDR,ILS,INR,IRR,JMD,KES,KGS,KHR,KPW,KYD,KZT,LAK,LBP,LKR,LRD,LSL,MAD,MDL,MGA,MKD,MMK," +
		"MNT,MOP,MRU,MUR,MVR,MWK,MXN,MYR,MZN,NAD,NGN,NIO,NOK,NPR,NZD,PAB,PEN,PGK,PHP,PKR,PLN,QAR,RON,RSD,RUB," +
		"SAR,SBD,SCR,SDG,SEK,SGD,SHP,SLE,SOS,SRD,SSP,STN,SVC,SYP,SZL,THB,TJS,TMT,TOP,TRY,TTD,TWD,TZS,UAH,USD," +
		"UYU,UZS,VES,WST,XCD,XCG,YER,ZAR,ZMW,ZWG"
)

// Digits gives the decimals of a currency's minor unit: 0, 2 or 3. It reports
// false for what is no code of a currency in use.
func Digits(code string) (int, bool) {
	if len(code) != 3 || strings.Contains(code, ",") {
		return 0, false
	}
	switch {
	case strings.Contains(withTwo, code):
		return 2, true
	case strings.Contains(withNone, code):
		return 0, true
	}
	return 3, strings.Contains(withThree, code)
}
