#include "parts/erecting_diagonal.hpp"

#include <algorithm>

#include "parts/mirror_diagonal.hpp"
#include "parts/roof_prisms.hpp"

namespace beamfork {

template <int turn>
std::vector<Field<ErectingDiagonal<turn>>> ErectingDiagonal<turn>::fields() {
    using E = ErectingDiagonal<turn>;
    FieldInfo glass_info;
    glass_info.key = "glass";
    glass_info.label = "Glass";
    glass_info.help =
        "Glass type of the prism; a low index lets the steep rays of a fast telescope leak.";
    FieldInfo roof_info = coating_info();
    roof_info.help = "Coating of the two roof faces: bare glass lets steep rays leak out, a "
                     "mirrored roof reflects at any angle.";
    return {
        number_field(
            ruled_by_light_path(length_info("entry_air_mm", "Air before the prism",
                                            "From the front face to the glass.", 0, 150, 2, 40)),
            &E::entry_air),
        number_field(
            ruled_by_light_path(length_info("exit_air_mm", "Air behind the prism",
                                            "From the glass to the rear face.", 0, 150, 2, 40)),
            &E::exit_air),
        number_field(
            grows_with_openings(ruled_by_light_path(length_info(
                "prism_width_mm", "Prism width",
                "Diameter of the round beam that the prism takes up whole.", 5, 80, 15, 45))),
            &E::prism_width),
        number_field(
            front_opening(length_info("clear_diameter_mm", "Opening",
                                      "Clear diameter of the rings at both ends.", 5, 100, 14, 45)),
            &E::clear_diameter),
        word_field(ruled_by_light_path(glass_info), &E::glass, glass_names()),
        choice_field(roof_info, &E::roof, coating_words()),
        number_field(turned_info(), &E::turned),
        optional_field(stated_light_path_info(), &E::stated_light_path),
    };
}

template <int turn>
PartLayout ErectingDiagonal<turn>::layout(const LayoutContext& context) const {
    const double width = prism_width.value;
    const double clear = clear_diameter.value;
    const Pose rolled = rotation_about_z(to_radians(turned));
    const Pose entry = rolled * translation(0, 0, entry_air.value);
    const PrismGlass kind{glass, roof};
    const Prism prism =
        turn == 90 ? roof_prism_90(width, kind, "prism") : roof_prism_45(width, kind, "prism");
    const Pose leaving = entry * prism.prism_from_exit;
    PartLayout layout;
    layout.part_from_exit = leaving * translation(0, 0, exit_air.value);
    layout.surfaces.push_back(round_stop("front opening", Pose{}, clear));
    append(layout.surfaces, prism.surfaces, entry);
    layout.surfaces.push_back(round_stop("rear opening", layout.part_from_exit, clear));
    layout.end_air = exit_air.value;
    if (context.shows_shared_bodies()) {
        const double wall = 2.5;
        const double frame = std::max(width, clear) + 6;
        layout.bodies = {{prism.body(), entry},
                         plate_body(entry * translation(0, 0, -2.5), frame, clear),
                         plate_body(leaving * translation(0, 0, 0.5), frame, clear)};
        if (entry_air.value > 1)
            layout.bodies.push_back(tube_body(rolled, entry_air.value, clear, wall));
        if (exit_air.value > 1)
            layout.bodies.push_back(tube_body(leaving, exit_air.value, clear, wall));
    }
    return layout;
}

template struct ErectingDiagonal<90>;
template struct ErectingDiagonal<45>;

}  // namespace beamfork
