package components_test
import ("testing";"fmt";"doorpocket/components/reading";"strings")
func TestProbe(t *testing.T){ lib:=library(t)
 for _,s:=range lib.Systems(){ c:=wordCheck{T:t,lib:lib,system:s,words:s.Words["en"],seen:map[string]bool{}}
  lo,hi,g,gp:=99999,0,-9.0,-9.0
  for _,v:=range vansWith(lib,s){ p,f:=c.page(v); n:=len(reading.Words(p+" "+f)); lo=min(lo,n);hi=max(hi,n); g=max(g,reading.Grade(p+"\n\n"+strings.Join(c.lines(v),"\n\n"))); gp=max(gp,reading.Grade(p))}
  fmt.Printf("PROBE %s %d %d %.1f %.1f\n",s.ID,lo,hi,g,gp)}}
