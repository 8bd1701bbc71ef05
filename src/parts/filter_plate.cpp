#include "parts/filter_plate.hpp"

#include "parts/prisms.hpp"

namespace beamfork {

std::vector<Field<FilterPlate>> FilterPlate::fields() {
    FieldInfo glass;
    glass.key = "glass";
    glass.label = "Glass";
    glass.help = "Glass type of the plate.";
    FieldInfo transmission;
    transmission.key = "transmission_percent";
    transmission.label = "Transmission";
    transmission.help =
        "Share of the light it lets through where you look with it, as its maker states it, faces "
        "included; left out: only its faces take light. No filter here makes the Sun safe.";
    transmission.unit = FieldUnit::percent;
    transmission.low = 0.1;
    transmission.high = 100;
    transmission.usual_low = 10;
    transmission.usual_high = 98;
    return {
        number_field(length_info("thickness_mm", "Thickness", "Thickness of the glass plate.", 0.1,
                                 20, 0.5, 5),
                     &FilterPlate::thickness),
        number_field(
            length_info(
                "ring_length_mm", "Ring length",
                "How far the filter ring holds its two neighbours apart; 0 inside a barrel.", 0, 50,
                0, 12),
            &FilterPlate::ring_length),
        number_field(
            front_opening(length_info("clear_diameter_mm", "Opening",
                                      "Clear diameter of the plate in its ring.", 5, 200, 20, 50)),
            &FilterPlate::clear_diameter),
        number_field(length_info("seat_depth_mm", "Depth in a barrel",
                                 "Screwed into the front of the barrel behind it, the plate sits "
                                 "this far before the joint: about the barrel's length. 0 between "
                                 "two parts.",
                                 0, 80, 0, 40),
                     &FilterPlate::seat_depth),
        word_field(glass, &FilterPlate::glass, glass_names()),
        choice_field(anti_reflection_info(), &FilterPlate::coating, anti_reflection_words()),
        optional_field(transmission, &FilterPlate::transmission),
    };
}

PartLayout FilterPlate::layout(const LayoutContext& context) const {
    PartLayout layout;
    // The plate sits in the middle of its ring; in a ring of no length it reaches into its neighbours.
    const Pose front =
        translation(0, 0, (ring_length.value - thickness.value) / 2 - seat_depth.value);
    Prism plate = glass_block(clear_diameter.value, thickness.value, glass, "filter");
    for (Surface& surface : plate.surfaces)
        surface.aperture = Circle{clear_diameter.value / 2};
    append(layout.surfaces, std::move(plate.surfaces), front);
    coat(layout.surfaces, coating);
    if (transmission) {  // of the whole plate, told once: at its entry face
        layout.surfaces.front().coating.transmission = *transmission / 100;
        layout.surfaces.back().coating.transmission = 1;
    }
    layout.part_from_exit = translation(0, 0, ring_length.value);
    if (context.shows_shared_bodies()) {
        const double seen =
            ring_length.value > thickness.value ? ring_length.value : thickness.value;
        const Pose start = translation(0, 0, (ring_length.value - seen) / 2 - seat_depth.value);
        layout.bodies = {{LensBody{clear_diameter.value / 2, thickness.value, 0},
                          translation(0, 0, ring_length.value / 2 - seat_depth.value)},
                         tube_body(start, seen, clear_diameter.value, 3)};
    }
    return layout;
}

std::optional<std::string> FilterPlate::contradiction() const {
    if (ring_length.value > 0 && ring_length < thickness) {
        return "ring_length_mm must be 0 or at least thickness_mm";
    }
    return std::nullopt;
}

}  // namespace beamfork
