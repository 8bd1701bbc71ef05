// The shape drawn before a finding, so that colour is never alone.
#pragma once

namespace beamfork {

enum class FindingSign { cross, triangle, dot, tick };

}  // namespace beamfork
