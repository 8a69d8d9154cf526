// Package page holds the one screen of both shells: plain modules, styles and pictures, served as they are.
package page

import "embed"

// Files are the page's files, by name.
//
//go:embed *.js *.css *.html *.svg
var Files embed.FS
