package prose
import ("testing";"fmt";"doorpocket/components/problem")
func TestZZ(t *testing.T){
 p:=New()
 for _,s:=range []string{"a\n\nb <b>x</b> c\n","<div>\nx\n</div>\n","ü <!-- c -->","[a](javascript:x)","ü [a](&#106;avascript:x)","text ü [b](system:gas/x) and ![x](table:y) t","    code\n","```\ncode\n```","# x\n","> # ü\n","<https://a.example>","{$net} {$A}","### a {when=\"x\"}\n","> ## a {when=\"x\"}\n\nfoo","`{$net}`","[x][r]\n\n[r]: javascript:a\n","- a\n  <br>\n", "| a | b |\n|:--|--:|\n| <i> | ü [z](ftp:x) |\n","[![x](table:a)](system:b)","[a](< javascript:x>)","[a](JAVASCRIPT:x) [b](HTTPS://x.example) [c](\tjavascript:x) [d](java\\script:x)", "a\\\nb  \nc", "- [ ] x","1) x\n2) y\n\n   z\n", "5. x"} {
  pg,l:=p.Page("f.md",[]byte(s))
  fmt.Printf("%q\n",s)
  for _,x:=range l { fmt.Println("   ",x.Span,x.Length,x.Code) }
  for _,d:=range pg.Docs(){ for _,x:=range d.Pieces { fmt.Printf("      %d %d %q %q %s %s %v\n",x.Kind,x.Frame,x.HTML,x.Text,x.Scheme,x.Name,x.At)}}
 }
 _=problem.Span{}
}
