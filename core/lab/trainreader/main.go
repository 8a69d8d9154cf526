// Command trainreader draws the samples that learn.py trains the finder, the aligner and the row reader of core/internal/ocr on:
//
//	go run ./core/lab/trainreader -draw DIR -parts 900 -each 1200 -digits testdata/camera/lcd-digits.zip -seed 12
package main

import (
	"archive/zip"
	"flag"
	"log"

	"readback/core/lab/digits"
)

func main() {
	photos := flag.String("digits", "", "archive of photographed digits; those whose name hashes odd are learnt from")
	seed := flag.Uint64("seed", 1, "seed of everything drawn")
	dir := flag.String("draw", "", "folder for the samples")
	parts := flag.Int("parts", 1, "files of samples to draw")
	each := flag.Int("each", 1000, "pictures in each")
	flag.Parse()
	if *dir == "" {
		log.Fatal("trainreader: -draw names no folder for the samples")
	}
	if *photos != "" {
		if err := photoSamples(*photos, *dir, 24, *seed); err != nil {
			log.Fatal(err)
		}
	}
	if err := drawSamples(*dir, *parts, *each, *seed, log.Printf); err != nil {
		log.Fatal(err)
	}
}

// open reads the archive of photographed digits.
func open(archive string) ([]digits.Photo, error) {
	z, err := zip.OpenReader(archive)
	if err != nil {
		return nil, err
	}
	defer z.Close()
	return digits.Read(&z.Reader)
}
