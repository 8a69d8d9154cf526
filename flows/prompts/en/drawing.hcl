# Labels of the drawings of the circuit and of the places.

lang = "en"

terms "drawing" {
  primary         = "{part}, primary"
  secondary       = "{part}, secondary"
  first-wire      = "{part}, first wire"
  second-wire     = "{part}, second wire"
  coil            = "{part}, coil"
  contact         = "{part}, contact"
  resting-contact = "{part}, resting contact"
  flame-input     = "{part}, flame input"
  output          = "{part}, output {port}"
  input           = "{part}, input {port}"
  red             = "RED"
  black           = "BLACK"
  circuit         = "Circuit of the {title}"
  leads           = "Red lead on {red}, black lead on {black}"
  open            = "{name} (open)"
  closed          = "{name} (closed)"
  within          = "{name}, in: {outer}"
  small-words     = "of the a"
}
