package scenario

import (
	"readback/core/appliance"
)

// EngineSight looks through the engine: what the model itself predicts, at its nominal value.
func EngineSight(e *appliance.Engine) Sight {
	return func(modes []int, check int) Seen {
		o := e.Predict(modes, check)
		return Seen{Option: o.Option, Value: o.Value, State: o.State}
	}
}
