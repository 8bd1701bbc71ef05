#include "parts/kind.hpp"

#include "glass/glass.hpp"

namespace beamfork {

Surface round_stop(std::string name, const Pose& pose, double diameter) {
    return {std::move(name), SurfaceKind::stop, pose, Circle{diameter / 2}};
}

Body tube_body(const Pose& pose, double length, double inner_diameter, double wall) {
    return {TubeBody{length, inner_diameter / 2, inner_diameter / 2 + wall}, pose};
}

Body ring_body(const Pose& pose, double inner_diameter, double outer_diameter) {
    return {RingBody{inner_diameter / 2, outer_diameter / 2}, pose};
}

Body plate_body(const Pose& pose, double width, double opening_diameter) {
    constexpr double thickness = 2;
    return {PlateBody{rectangle(width, width).corners, thickness, opening_diameter / 2}, pose};
}

std::vector<std::string> glass_names() { return standard_catalogue().names(); }

FieldInfo anti_reflection_info() {
    FieldInfo info;
    info.key = "coating";
    info.label = "Coating";
    info.help =
        "Against reflection at every face where light passes from air to glass: each loses 4 "
        "to 5 % uncoated, about 1 % with one layer, half a percent with several.";
    return info;
}

FieldInfo mirror_coating_info() {
    FieldInfo info;
    info.key = "mirror_coating";
    info.label = "Mirror coating";
    info.help =
        "What the mirror is made of decides how much light it throws back: 88 % for protected "
        "aluminium, 99 % for dielectric layers (common practice).";
    return info;
}

FieldInfo lens_faces_info() {
    FieldInfo info;
    info.key = "lens_faces";
    info.label = "Lens faces";
    info.help = "How many faces of its lenses touch air; cemented ones do not count.";
    info.high = 24;
    info.usual_low = 2;
    info.usual_high = 14;
    return info;
}

void coat(std::vector<Surface>& surfaces, AntiReflection coating) {
    for (Surface& surface : surfaces)
        surface.coating.face = coating;
}

FieldInfo stated_light_path_info() {
    return measured_at_home(
        length_info(
            "stated_light_path_mm", "Stated light path",
            "The light path its maker states, if any: it then wins over the one derived from glass "
            "and air, and the difference becomes an air space.",
            0, 400, 20, 160),
        light_path_by_refocusing);
}

FieldInfo ruled_by_light_path(FieldInfo info) {
    info.ruled_by = stated_light_path_info().key;
    return info;
}

}  // namespace beamfork
