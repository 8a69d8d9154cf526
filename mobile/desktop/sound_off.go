//go:build !sound

package main

import "readback/mobile/desktop/web"

// openPlayer: this program was built without the tag "sound", so the page speaks.
func openPlayer() (web.Player, string) { return nil, "" }
