// In which parts, and in which of their numbers, two setups differ.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "train/setup.hpp"

namespace beamfork {

/// One difference; of a part that only one of the setups has there is no field.
struct PartDifference {
    std::optional<std::size_t> here;   ///< part of the first setup
    std::optional<std::size_t> there;  ///< part of the second
    std::optional<FieldInfo> field;
    std::string
        value_here;  ///< with its unit: "35 mm"; "not stated"; a part's name where there is no field
    std::string value_there;
};

/// Of the parts in the light, the observer and the target of what is chosen in each, in the order of the light.
/// Parts count as the same when kind and name agree; those left over, when they play the same role and kind; a role that is
/// filled once, such as the telescope's, by another kind of part is one part in place of another.
std::vector<PartDifference> part_differences(const Setup& here, const Setup& there);

}  // namespace beamfork
