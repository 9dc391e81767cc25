package main

import (
	"os"
	"doorpocket/build/sample"
	"doorpocket/build/spec"
	"doorpocket/build/publication"
	"doorpocket/components"
)

func main() {
	lib, _ := components.Load(components.Embedded())
	os.CopyFS("/tmp/evfleet", sample.Everything(lib, 0))
	fleet, _ := spec.Load(os.DirFS("/tmp/evfleet"), "", lib)
	m, err := publication.Publish(fleet, "/tmp/evsite", "dev")
	println(m.Pages, m.Labels)
	if err != nil { println(err.Error()) }
}
