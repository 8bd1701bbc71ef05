// How one prism stands off its ideal place: small turns about its own axes and small shifts. The prism's
// frame has z along the light that enters and y towards the side to which the light is turned, so a tilt
// about x is one in the plane of its bend, a roll one about the entering light.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "parts/field.hpp"
#include "parts/layout.hpp"

namespace beamfork {

struct PrismErrors {
    double tilt_x = 0;  ///< arcminutes, right-handed about the prism's x
    double tilt_y = 0;
    double roll = 0;     ///< about z
    double shift_x = 0;  ///< mm
    double shift_y = 0;
    double shift_z = 0;
    bool operator==(const PrismErrors&) const = default;
};

/// One of the six, in the order above.
struct PrismErrorKind {
    double PrismErrors::*value;
    FieldUnit unit;
    std::string_view key;    ///< "tilt_x_arcmin"
    std::string_view words;  ///< "tilt in its bend"
    std::string_view help;
};
const std::array<PrismErrorKind, 6>& prism_error_kinds();

/// The prism's ideal frame from the one it stands in, turned about `middle` (mm, in its own frame).
Pose ideal_from_real(const PrismErrors& errors, const Point& middle);

/// The field of one error of the prism that the kind holds as `prism`.
template <class Kind>
Field<Kind>
prism_error_field(FieldInfo info, PrismErrors Kind::*prism, double PrismErrors::*error) {
    info.type = FieldType::number;
    return {std::move(info), [=](const Kind& kind) { return FieldValue{kind.*prism.*error}; },
            [=](Kind& kind, const FieldValue& value) {
                BEAMFORK_EXPECTS(std::holds_alternative<double>(value));
                kind.*prism.*error = std::get<double>(value);
            }};
}
/// "cube_tilt_x_arcmin" for prism key "cube" and label "Cube".
FieldInfo prism_error_info(const std::string& prism_key,
                           const std::string& prism_label,
                           const PrismErrorKind& kind);

}  // namespace beamfork
