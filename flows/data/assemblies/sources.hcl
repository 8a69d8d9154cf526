# Where the numbers come from.
assembly "sources" {}

source "T03" { text = "gas technician training text, unit 3" }
source "T05" { text = "gas technician training text, unit 5" }
source "T11" { text = "gas technician training text, unit 11" }
source "T12" { text = "gas technician training text, unit 12" }
source "T13" { text = "gas technician training text, unit 13" }
source "T15" { text = "gas technician training text, unit 15" }
source "T17" { text = "gas technician training text, unit 17" }
source "T19" { text = "gas technician training text, unit 19" }
source "T22" { text = "gas technician training text, unit 22" }
source "T24" { text = "gas technician training text, unit 24" }
source "IRC" { text = "2018 residential code, appendix D, pages 870 to 874" }
source "EPA" { text = "US outdoor air limits, 9 ppm over 8 hours, not read in the original" }
source "ILL" { text = "Illinois Commerce Commission rule 410.300 (not read in the original)" }
source "MH" { text = "code newsletter on class 2 circuits" }
source "AIRH" { text = "web page on gas control circuits" }
source "HS" { text = "trainer's note on capacitance while running" }
source "STW" { text = "web page on stator winding tests" }
source "own" { text = "own case of this project, no outside source" }
