package render

import (
	"html/template"
	"net/url"
	"strings"
)

// report makes the link by which a hirer tells of a fault: the mail or message is
// begun with the van, the label, the page and its revision (RFC 6068, RFC
// 5724).
func (v *van) report(code, page string) *reportView {
	g := v.guide
	label := code
	if label == "" {
		label = v.w.must("report_no_code")
	}
	text := query(v.w.must("report_text", "van", g.Van.Code, "name", g.Van.Name, "code", label, "page", page, "revision", revisionToken))
	subject := query(strings.Join(strings.Fields(v.w.must("report_subject", "van", g.Van.Code, "code", code, "page", page)), " "))
	call := g.Operator.Call
	if call.Mail != "" {
		return &reportView{template.URL("mailto:" + call.Mail + "?subject=" + subject + "&body=" + text)}
	}
	return &reportView{template.URL("sms:" + strings.TrimPrefix(string(dial(call.Helpline)), "tel:") + "?body=" + text)}
}

// query writes a text as these addresses have it: spaces are not plus signs, and
// a new line is two characters.
func query(text string) string {
	return strings.ReplaceAll(url.QueryEscape(strings.ReplaceAll(text, "\n", "\r\n")), "+", "%20")
}
