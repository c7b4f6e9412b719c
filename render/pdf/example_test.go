package pdf_test

import (
	"bytes"
	"fmt"
	"time"

	"drawdown/render/pdf"
	"drawdown/render/scene"
)

func ExampleWrite() {
	doc := scene.Document{Title: "Cover", Language: "en", Pages: []scene.Page{{Name: "card", Width: 210, Height: 297}}}
	var file bytes.Buffer
	err := pdf.Write(&file, doc, time.Date(2026, 3, 14, 0, 0, 0, 0, time.UTC))
	fmt.Println(bytes.HasPrefix(file.Bytes(), []byte("%PDF-")), err)

	doc.Pages[0].Items = []scene.Item{scene.Text{Size: 4, Ink: scene.Black, Content: "spanner 🔧"}}
	fmt.Println(pdf.Write(&file, doc, time.Time{}))
	// Output:
	// true <nil>
	// page "card", item 1: text "spanner 🔧": the typeface has no '🔧' (U+1F527); it holds Latin, Greek and Cyrillic letters and the signs of the trade
}
