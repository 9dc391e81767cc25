// Package schema describes fleet.toml, build sheets and specs as JSON Schema,
// draft 7, so that an editor can offer names, explain facts and mark mistakes
// while somebody types. It is made from the library, the fleet's own systems
// included.
//
// A schema sees one file. It never calls right what inspect would refuse for
// that file alone without saying so here: ranges of quantities and facts that a
// build sheet still has to give are left to inspect.
package schema

import (
	"encoding/json"
	"strings"

	"doorpocket/components"
)

// File is one schema and the name under which it is kept.
type File struct {
	Name string
	Data []byte
}

// node is a piece of a schema. Keys come out sorted, so that the same library
// gives the same bytes.
type node map[string]any

// Files makes the schemas. lang is the language of the explanations; facts
// without words in it are explained by their type alone.
func Files(lib *components.Library, lang string) []File {
	m := maker{lib: lib, lang: lang, shared: node{}}
	return []File{
		{"fleet.json", m.finish("Fleet", m.fleet())},
		{"build.json", m.finish("Build sheet", m.sheet())},
		{"van.json", m.finish("Spec of a van", m.van())},
	}
}

// maker gathers the definitions that a schema refers to.
type maker struct {
	lib    *components.Library
	lang   string
	shared node
}

// finish adds the definitions and gives the bytes.
func (m *maker) finish(title string, root node) []byte {
	root["$schema"] = "http://json-schema.org/draft-07/schema#"
	root["title"] = title
	if len(m.shared) > 0 {
		root["definitions"] = m.shared
	}
	m.shared = node{}
	data, err := json.MarshalIndent(root, "", " ")
	if err != nil {
		panic(err) // nothing but maps, lists and strings
	}
	return append(data, '\n')
}

// object is a table with just these keys.
func object(properties node, required ...string) node {
	n := node{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		n["required"] = required
	}
	return n
}

func text(about string) node { return node{"type": "string", "description": about} }

func date(about string) node {
	return node{"type": "string", "format": "date", "description": about}
}

func list(of node, about string) node {
	return node{"type": "array", "items": of, "description": about}
}

func oneOf(words []string, about string) node {
	return node{"type": "string", "enum": words, "description": about}
}

// sentence joins what is known of something and leaves out what is not.
func sentence(parts ...string) string {
	var b strings.Builder
	for _, p := range parts {
		if p = strings.TrimSuffix(strings.TrimSpace(p), "."); p == "" {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(strings.ToUpper(p[:1]) + p[1:] + ".")
	}
	return b.String()
}
