// Package sound plays through the computer's own loudspeaker by oto. It is built with the tag "sound" only, because on Linux it
// needs cgo and the ALSA headers; without the tag the page plays everything.
package sound
