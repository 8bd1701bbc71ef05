// Two-eye alignment ready to show: the numbers with their limits, where the left image stands against the
// right one inside the limits' boxes, and the table of what each error alone may be.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scene/kit/colours.hpp"

namespace beamfork {

struct Report;
struct Setup;

struct AlignmentRow {
    std::string label;  ///< "Sideways: eyes turn inward"
    std::string value;
    std::string unit;
    std::string limit;    ///< "60 / 100": comfortable up to, the end
    std::string verdict;  ///< "good", "comfortable", "hard", "too much"
    ColourRole role = ColourRole::good;
    std::string help;
};

/// Arcminutes; x to the right, y up, of the left image against the right one.
struct AlignmentBox {
    double low_x = 0;
    double high_x = 0;
    double half_height = 0;
};

struct ToleranceRow {
    std::string label;    ///< "arm prism: tilt in its bend"
    std::string allowed;  ///< "3.2", or "any"
    std::string unit;
    std::string stated;  ///< "–" when it has none
    std::string help;
    std::size_t part = 0;
    double used = 0;  ///< share of what is allowed that is stated, 0 and up
};

struct AlignmentRows {
    std::string sentence;
    std::vector<AlignmentRow> values;
    double left_x = 0;  ///< of the left image against the right, arcminutes
    double left_y = 0;
    double turned = 0;  ///< of the left image, degrees
    AlignmentBox comfortable;
    AlignmentBox end;
    double reach = 135;  ///< half the width that a picture of all this must show, arcminutes
    std::vector<ToleranceRow> tolerances;
    std::vector<std::string> collimation_check;  ///< telescope or head? Steps, in order
};

AlignmentRows alignment_rows(const Setup& setup, const Report& report);

}  // namespace beamfork
