package report

import "doorpocket/components/problem"

// The parts of SARIF 2.1.0 that are used here.
//
// Source: OASIS Standard "Static Analysis Results Interchange Format (SARIF)
// Version 2.1.0", sections 3.13 to 3.30 (from memory).
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool       sarifTool     `json:"tool"`
		ColumnKind string        `json:"columnKind"`
		Results    []sarifResult `json:"results"`
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name    string      `json:"name"`
		Version string      `json:"version"`
		Rules   []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID string `json:"id"`
	}
	sarifResult struct {
		RuleID    string          `json:"ruleId"`
		RuleIndex int             `json:"ruleIndex"`
		Level     string          `json:"level"`
		Message   sarifText       `json:"message"`
		Locations []sarifLocation `json:"locations"`
		Related   []sarifLocation `json:"relatedLocations,omitempty"`
	}
	sarifText struct {
		Text string `json:"text"`
	}
	sarifLocation struct {
		ID       int           `json:"id,omitempty"`
		Physical sarifPhysical `json:"physicalLocation"`
		Message  *sarifText    `json:"message,omitempty"`
	}
	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   *sarifRegion  `json:"region,omitempty"`
	}
	sarifArtifact struct {
		URI string `json:"uri"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn,omitempty"`
		EndColumn   int `json:"endColumn,omitempty"`
	}
)

func sarif(list problem.List, version string) sarifLog {
	run := sarifRun{
		Tool: sarifTool{Driver: sarifDriver{Name: "doorpocket", Version: version, Rules: []sarifRule{}}},
		// Columns count characters, as in the messages.
		ColumnKind: "unicodeCodePoints",
		Results:    []sarifResult{},
	}
	rules := map[string]int{}
	for _, p := range list {
		index, known := rules[p.Code]
		if !known {
			index = len(rules)
			rules[p.Code] = index
			run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRule{ID: p.Code})
		}
		run.Results = append(run.Results, result(p, index))
	}
	return sarifLog{Schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json", Version: "2.1.0", Runs: []sarifRun{run}}
}

func result(p problem.Problem, rule int) sarifResult {
	text := p.Summary + "."
	if p.Detail != "" {
		text += " " + p.Detail
	}
	r := sarifResult{RuleID: p.Code, RuleIndex: rule, Level: p.Severity.String(), Message: sarifText{text},
		Locations: []sarifLocation{{Physical: physical(p.Span)}}}
	for i, n := range p.Notes {
		r.Related = append(r.Related, sarifLocation{ID: i + 1, Physical: physical(n.Span), Message: &sarifText{n.Text}})
	}
	return r
}

func physical(s problem.Span) sarifPhysical {
	at := sarifPhysical{Artifact: sarifArtifact{URI: address(s.File)}}
	if !s.Start.Known() {
		return at
	}
	at.Region = &sarifRegion{StartLine: s.Start.Line, StartColumn: s.Start.Column}
	if s.Start.Column > 0 && s.Length > 0 {
		at.Region.EndColumn = s.Start.Column + s.Length
	}
	return at
}
