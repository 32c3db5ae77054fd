//go:build !inside

package main

// inside is empty in a program that was built without the site.
var inside []byte
