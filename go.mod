module doorpocket

go 1.26.8

require (
	github.com/BurntSushi/toml v1.6.0
	github.com/agnivade/levenshtein v1.2.2
	github.com/alecthomas/chroma/v2 v2.27.0
	github.com/alecthomas/kong v1.17.0
	github.com/boombuler/barcode v1.1.0
	github.com/google/go-cmp v0.7.0
	github.com/yuin/goldmark v1.8.7
	golang.org/x/text v0.44.0
)

require github.com/dlclark/regexp2/v2 v2.2.1 // indirect
