appliance "x" {
  title = "broken"
}
title = "outside"
