package schema

import "drawdown/geometry/finding"

// NoSchema reports a sort of file that has no schema.
const NoSchema finding.Code = "schema unknown file" // name, meant, allowed
