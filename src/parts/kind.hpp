// What every part kind says of itself. A kind is a plain struct of values with
//   static constexpr std::string_view key, label, help;   as in a file, as on screen, one sentence
//   static constexpr Role role;
//   static std::vector<Field<Kind>> fields();
//   PartLayout layout(const LayoutContext&) const;
//   std::optional<std::string> contradiction() const;     values that cannot hold together
// and where it is so
//   static constexpr bool turns_light = true;      one looks down or sideways; it can be left out for looking straight through
//   static constexpr bool holds_lens = true;       a lens that moves the image and magnifies
//   static constexpr std::string_view measured_by;   how its values are measured at home, but for fields that say it themselves
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "parts/field.hpp"
#include "parts/layout.hpp"
#include "parts/role.hpp"

namespace beamfork {

/// Surfaces in the order of the arguments, moved there: a list in braces copies each.
template <class... Surfaces>
std::vector<Surface> in_order(Surfaces... surfaces) {
    std::vector<Surface> all;
    all.reserve(sizeof...(surfaces));
    (all.push_back(std::move(surfaces)), ...);
    return all;
}

/// An opening of clear diameter `diameter` in the plane of `pose`.
Surface round_stop(std::string name, const Pose& pose, double diameter);

/// A tube with a wall, to be looked at, from z = 0 of `pose`.
Body tube_body(const Pose& pose, double length, double inner_diameter, double wall);
Body ring_body(const Pose& pose, double inner_diameter, double outer_diameter);

/// A square plate of a housing with a round opening, from z = 0 of `pose`.
Body plate_body(const Pose& pose, double width, double opening_diameter);

/// The names of the standard glass catalogue, for a choice of glass.
std::vector<std::string> glass_names();

/// The common fields of parts with polished faces, lenses and mirrors (glass/coating.hpp).
FieldInfo anti_reflection_info();
FieldInfo mirror_coating_info();
FieldInfo lens_faces_info();

/// The key of the field that says where the lens of a shifter or corrector stands, mm behind its entry face.
inline constexpr std::string_view lens_position_key = "lens_offset_mm";

/// Gives every polished face and lens among them that coating.
void coat(std::vector<Surface>& surfaces, AntiReflection coating);

/// How the light path of a part is measured at home, and a telescope's back focus.
inline constexpr std::string_view light_path_by_refocusing =
    "Focus one eyepiece with this part and without it: the drawtube's travel between is its light "
    "path.";
inline constexpr std::string_view back_focus_at_the_moon =
    "Rack the drawtube in, point at the Moon, and measure from the drawtube's rear face to a paper "
    "screen on which it is sharp.";

/// The common field of parts whose maker states a light path.
FieldInfo stated_light_path_info();
/// A length or glass of such a part: focus follows from it only while no light path is stated.
FieldInfo ruled_by_light_path(FieldInfo info);

}  // namespace beamfork
