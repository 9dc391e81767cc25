package schema

import (
	"doorpocket/components"
	"doorpocket/components/quantity"
)

// steps are the steps that any file adds to the routines.
func (m *maker) steps() node {
	step := object(node{
		"id":       text("What constraints call it: own:ID."),
		"routine":  node{"description": "The list or lists in which it stands: of the library, or your own.", "anyOf": []node{{"type": "string"}, names("")}},
		"text":     words("What to do: one short sentence, or one in each language."),
		"after":    names("The steps that come before it, as family/system:step, family:step or own:step."),
		"before":   names("The steps that come after it."),
		"wait":     node{"allOf": []node{m.quantity(quantity.Time)}, "description": "How long one waits when it is done."},
		"holds":    names("The steps that the wait holds up; without, all that come after."),
		"when":     text("It stands where this holds: a system, body.NAME, or a fact of what it is about."),
		"caution":  text("The caution that stands before it, of what it is about."),
		"fitted":   text("What it is about: the name of something fitted. It stands where a van has that."),
		"at":       m.place(),
		"where":    oneOf([]string{components.WhereInside, components.WhereOutside, components.WhereCab, components.WhereAnywhere, components.WhereAnywhereInside}, "Where it is done if not at the thing."),
		"where_if": text("Where counts only where this holds."),
	}, "id", "routine", "text")
	return list(step, "Steps that you add to the lists of things to do.")
}

// routines are the operator's own, in fleet.toml and build sheets.
func (m *maker) routines() node {
	routine := object(node{
		"for":             oneOf([]string{"hirer", "staff"}, "What is for staff never reaches a hirer."),
		"begin":           oneOf([]string{"cab", "inside", "outside"}, "Where one starts."),
		"title":           words("What the list is called."),
		"about":           words("When to do it."),
		"words":           names("What people search for."),
		"steps":           names("Steps of the library that it takes in."),
		"facts":           node{"type": "boolean", "description": "At each step stand the facts of the thing, for staff to say."},
		"marks":           node{"type": "boolean", "description": "On its sheet stand drawings of the van, to mark damage on."},
		"signed_by_hirer": node{"type": "boolean", "description": "The hirer signs its sheet."},
	}, "for", "title", "about")
	return node{"type": "object", "additionalProperties": routine, "description": "Lists of things to do of your own."}
}

func names(about string) node { return list(node{"type": "string"}, about) }

// words are a text, or one in each language of the fleet.
func words(about string) node {
	return node{"description": about, "anyOf": []node{{"type": "string"}, {"type": "object", "additionalProperties": node{"type": "string"}}}}
}

// changed tells hirers what was otherwise a while ago.
func (m *maker) changed() node {
	note := object(node{
		"on":     date("Since when it is so."),
		"fitted": text("What it is about: the name of something fitted, or body. Alone, it says that the thing is new."),
		"fact":   text("The fact of it that changed."),
		"was":    node{"type": []string{"string", "integer", "boolean", "array"}, "description": "What the fact was, in the form of the fact. Leave it out where it was not stated."},
		"gone":   text("The system that is not there any more, such as electrics/tv."),
		"text":   words("What changed in your own words."),
	}, "on")
	return list(note, "What hirers who know the van may want to know has changed. What is older than a year before spec_date is not shown.")
}
