module dropsheet

go 1.26.0

require (
	github.com/chromedp/cdproto v0.159.0
	github.com/chromedp/chromedp v0.23.0
	github.com/disintegration/imaging v1.6.2
	github.com/jung-kurt/gofpdf v1.16.2
	github.com/klippa-app/go-pdfium v1.21.4
	github.com/spf13/pflag v1.1.0
	github.com/stretchr/testify v1.12.1
	github.com/tetratelabs/wazero v1.12.0
	golang.org/x/image v0.47.0
	golang.org/x/sys v0.50.0
	golang.org/x/term v0.48.0
	golang.org/x/text v0.43.0
)

require (
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/google/uuid v1.6.0 // indirect
	github.com/jolestar/go-commons-pool/v2 v2.1.2 // indirect
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/sync v0.25.0 // indirect
)
