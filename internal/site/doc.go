// Package site serves a built page from memory.
//
// A Site is every file of the page with its compressed forms. Handler serves it
// with its security headers; Write and Read keep it as one archive, which the
// program that serves it carries inside; Export writes it to a folder for a host
// that serves files. Package build, below, makes one.
package site
