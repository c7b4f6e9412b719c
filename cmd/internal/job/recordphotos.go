package job

import (
	"drawdown/patterns/scan"
	sheet "drawdown/render/sheet/record"
)

// thumbnailPixels print a thumbnail of 58 mm at about 200 dots per inch.
const thumbnailPixels = 480

// photosOf makes the photos of entries small, for print. One that was deleted, or that
// cannot be read, is not printed: its entry names it.
func photosOf(kept Kept, sums []string) map[string]sheet.Photo {
	made := map[string]sheet.Photo{}
	for _, sum := range sums {
		if _, there := made[sum]; there || sum == "" {
			continue
		}
		data, err := kept.Photo(sum)
		if err != nil {
			continue
		}
		if small, width, height, err := scan.Thumbnail(data, thumbnailPixels); err == nil {
			made[sum] = sheet.Photo{JPEG: small, Width: width, Height: height}
		}
	}
	return made
}

// photoSums are the photos of entries.
func photoSums(entries []sheet.Entry) (sums []string) {
	for _, e := range entries {
		sums = append(sums, e.Photo)
	}
	return sums
}
