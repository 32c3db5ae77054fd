// Package build makes a site out of a static folder.
//
// Build bundles the ES modules and the style sheet, minifies everything, names
// every file but three by its content, tells the page, the core worker and the
// service worker which names they belong to, and compresses the result once.
//
// Names are the whole defence against a page that mixes versions: the page
// bundle holds the URL of its worker and its data, the worker bundle holds the
// URL of its core, and each URL holds a hash of what is behind it.
//
// The package knows nothing of motorcycles; data comes in as bytes.
package build
