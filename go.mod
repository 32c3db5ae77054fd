module tidysump

go 1.26
