// What every part kind says of itself. A kind is a plain struct of values with
//   static constexpr std::string_view key, label, help;   as in a file, as on screen, one sentence
//   static constexpr Role role;
//   static std::vector<Field<Kind>> fields();
//   PartLayout layout(const LayoutContext&) const;
//   std::optional<std::string> contradiction() const;     values that cannot hold together
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "parts/field.hpp"
#include "parts/layout.hpp"

namespace beamfork {

/// Where a part belongs; a setup lists its parts in this order.
enum class Role { telescope, focuser, chain, splitter, eyepiece, observer, target };
inline constexpr std::size_t role_count = 7;

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

/// The common field of parts whose maker states a light path.
FieldInfo stated_light_path_info();
/// A length or glass of such a part: focus follows from it only while no light path is stated.
FieldInfo ruled_by_light_path(FieldInfo info);

}  // namespace beamfork
