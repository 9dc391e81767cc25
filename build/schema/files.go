package schema

import (
	"path"
	"slices"

	"doorpocket/build/spec"
	"doorpocket/components"
	"doorpocket/components/quantity"
)

// fleet is fleet.toml.
func (m *maker) fleet() node {
	var spoken []string
	for _, s := range m.lib.Systems() {
		for lang := range s.Words {
			if !slices.Contains(spoken, lang) {
				spoken = append(spoken, lang)
			}
		}
	}
	slices.Sort(spoken)
	call := object(node{
		"helpline":  text("The number that a hirer calls, at night too: one number and nothing else."),
		"emergency": text("The number for fire, ambulance and police."),
		"hours":     text("When somebody answers."),
		"mail":      text("One mail address."),
	}, "helpline", "emergency")
	keys := node{
		"name":             text("What the operator is called."),
		"address":          node{"type": "string", "pattern": "^https?://[^/]", "description": "Where the hirers' guides are served. It is printed on every label."},
		"former_address":   node{"type": "string", "pattern": "^https?://[^/]", "description": "The address before the guides moved: older labels hold it."},
		"error_correction": oneOf([]string{"L", "M", "Q", "H"}, "How much of a QR symbol may be lost: about 7, 15, 25 or 30 %. Q is usual."),
		"languages":        list(oneOf(spoken, ""), "The languages of the guides. The first is the main one."),
		"draft":            node{"type": "boolean", "description": "The fleet holds invented values: inspect reminds of it."},
		"call":             call,
		"due":              m.due(),
		"conditions":       node{"type": "object", "additionalProperties": words("Your own words above the signatures on the sheet of a list that the hirer signs: handover, check-in, or one of your own."), "description": "Your own words on paper that hirers sign."},
	}
	keys["step"], keys["routine"], keys["changed"] = m.steps(), m.routines(), m.changed()
	return object(keys, "name", "address", "languages", "call")
}

// due is [due] of fleet.toml.
func (m *maker) due() node {
	years := node{}
	for _, d := range m.lib.Duties {
		if d.Years > 0 {
			years[d.Name] = node{"type": "integer", "minimum": 1, "maximum": 40, "description": sentence(d.Words[m.lang].Title, "Years that it lasts")}
		}
	}
	soon := node{"allOf": []node{m.quantity(quantity.Time)}, "description": "How long before a day it counts as near."}
	return object(node{"soon": soon, "years": object(years)})
}

// van is the spec of a van.
func (m *maker) van() node {
	keys := m.contents()
	keys["code"] = node{"type": "string", "pattern": "^[A-Z][A-Z0-9]{1,3}$", "description": "Two to four capital letters and digits: it stands on every label and is never given to another van."}
	keys["name"] = text("What the van is called.")
	keys["spec_date"] = date("The day when somebody last walked round the van with this file.")
	staff := node{"own": node{"type": "object", "description": "Whatever else staff want to note."}}
	for _, key := range spec.StaffTexts {
		staff[key] = text("For staff only.")
	}
	for _, key := range m.lib.StaffDates() {
		staff[key] = date("For staff only.")
	}
	keys["staff"] = object(staff)
	return object(keys, "code", "name", "spec_date")
}

// sheet is a build sheet.
func (m *maker) sheet() node {
	keys := m.contents()
	keys["routine"] = m.routines()
	return object(keys)
}

// contents are the keys that specs and build sheets share.
func (m *maker) contents() node {
	keys := node{
		"build":    text("The build sheet that this file stands on: a file in builds, without folder and ending."),
		"without":  list(node{"type": "string"}, "What the build sheet has and this van has not."),
		"complete": list(oneOf(m.lib.RuleNames(), ""), "What inspect calls missing although the van is right without it."),
		"fitted":   node{"type": "object", "additionalProperties": m.fitted(), "description": "What is on board, each under a name of its own."},
	}
	keys["step"], keys["changed"] = m.steps(), m.changed()
	if body := m.lib.System(components.BodySystem); body != nil {
		facts := m.facts(body)
		facts["without"] = without(body)
		keys["body"] = object(facts)
	}
	return keys
}

// fitted is one [fitted.NAME]. Where it names its system, it may state the facts
// of that system and nothing else; where it does not, it changes what a build
// sheet says, which this file does not show.
func (m *maker) fitted() node {
	var ids []string
	var cases []node
	for _, s := range m.lib.Systems() {
		if s.ID == components.BodySystem {
			continue
		}
		ids = append(ids, s.ID)
		cases = append(cases, node{
			"if":   node{"required": []string{"system"}, "properties": node{"system": node{"const": s.ID}}},
			"then": node{"$ref": "#/definitions/" + m.system(s)},
		})
	}
	return node{
		"type":       "object",
		"properties": node{"system": oneOf(ids, "The page of the library that this is.")},
		"allOf":      cases,
	}
}

// system defines what may be stated of a system.
func (m *maker) system(s *components.System) string {
	keys := m.facts(s)
	for key, n := range m.common() {
		keys[key] = n
	}
	keys["without"] = without(s, "at", "label", "note", "pictures", "title")
	n := object(keys)
	if words := s.Words[m.lang]; words != nil {
		n["title"] = words.Title
	}
	name := path.Dir(s.ID) + "." + path.Base(s.ID)
	m.shared[name] = n
	return name
}

// without names what a build sheet may state of a system and a van takes away:
// its facts, and more.
func without(s *components.System, more ...string) node {
	var names []string
	for _, d := range s.Facts {
		names = append(names, d.Name)
	}
	return list(oneOf(append(names, more...), ""), "What the build sheet states and this van has not.")
}

// place says where something is.
func (m *maker) place() node {
	length := func(about string) node {
		return node{"allOf": []node{m.quantity(quantity.Length)}, "description": about}
	}
	return object(node{
		"side":   oneOf(spec.Sides(), "Offside is the driver's side."),
		"along":  length("How far from the front bumper."),
		"up":     length("How far from the ground."),
		"across": length("How far from the nearside."),
	}, "side")
}

// common are the keys of every fitted system.
func (m *maker) common() node {
	share := func(about string) node {
		return node{"allOf": []node{m.quantity(quantity.Ratio)}, "description": about}
	}
	mark := object(node{
		"across": share("How far from the left of the upright picture, such as 30 %."),
		"down":   share("How far from its top."),
		"text":   text("What is there."),
	}, "across", "down", "text")
	picture := object(node{
		"file":  text("A file in the folder pictures, or in the van's own folder there: RW/gas-locker.jpg."),
		"alt":   text("What it shows, for those who cannot see it."),
		"marks": list(mark, "Places on it, numbered in this order."),
	}, "file", "alt")
	return node{
		"system":   node{"type": "string"},
		"label":    node{"type": "string", "pattern": "^([A-Z][1-9][0-9]?|none)$", "description": "The code on its sticker, such as G1, or none. Without it doorpocket labels gives one."},
		"was":      oneOrMore("What it was called before, or \"RW old-name\" where it came from another van: its label stays or leads here."),
		"replaces": oneOrMore("The names of what it has taken the place of: their labels lead here."),
		"at":       m.place(),
		"title":    text("Your own name for it."),
		"note":     text("Your own words about it."),
		"pictures": list(picture, "Photographs of it."),
	}
}

// oneOrMore is a text, or a list of texts.
func oneOrMore(about string) node {
	return node{"anyOf": []node{{"type": "string"}, {"type": "array", "items": node{"type": "string"}}}, "description": about}
}
