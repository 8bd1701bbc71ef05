// The row of a panel that has that label; there must be one.
#pragma once

#include <algorithm>

#include "scene/kit/value_row.hpp"

#include <doctest/doctest.h>

namespace beamfork {

inline const ValueRow& row_named(const std::vector<ValueRow>& rows, const std::string& label) {
    const auto found = std::find_if(rows.begin(), rows.end(),
                                    [&](const ValueRow& row) { return row.label == label; });
    REQUIRE(found != rows.end());
    return *found;
}

}  // namespace beamfork
