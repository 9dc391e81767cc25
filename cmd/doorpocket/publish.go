package main

type publish struct {
	Folder string `arg:"" optional:""`
}

func (c *publish) Run(out *speaker) error { return nil }
