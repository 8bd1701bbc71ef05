#include "parts/prism_diagonal.hpp"
#include "parts/splitter_head.hpp"

namespace beamfork {

namespace {

constexpr const char* mechanism_key = "mechanism";
constexpr const char* hinged_word = "hinged";
constexpr const char* sliding_word = "sliding";
FieldCondition if_hinged() { return {mechanism_key, hinged_word}; }
FieldCondition if_sliding() { return {mechanism_key, sliding_word}; }

FieldInfo mechanism_info() {
    FieldInfo info;
    info.key = mechanism_key;
    info.label = "Mechanism";
    info.help =
        "How the head is set to a pupil distance: arms that turn on a hinge leave the light path "
        "alone; arms that slide apart make it longer, by half a millimetre for each millimetre.";
    return info;
}

FieldInfo hinge_info(std::string key, std::string label, std::string help) {
    FieldInfo info;
    info.key = std::move(key);
    info.label = std::move(label);
    info.help = std::move(help);
    info.unit = FieldUnit::degree;
    info.low = 0;
    info.high = 80;
    info.usual_low = 0;
    info.usual_high = 60;
    info.only_if = {if_hinged()};
    return info;
}

FieldInfo slide_info() {
    FieldInfo info = length_info("slide_mm", "Slide of each arm",
                                 "How far each arm slides inward from its widest place; unstated: "
                                 "until its prism meets the cube.",
                                 0, 60, 6, 14);
    info.only_if = {if_sliding()};
    return info;
}

FieldInfo to_first_glass(FieldInfo info) {
    return measured_at_home(
        std::move(info),
        "Let a strip of paper down to the first glass and measure how deep it goes.");
}

// An unstated length of the inside: from the stated light path, where there is one.
TakenValue inside_taken(const SplitterHead& head, Millimetres length) {
    return {length.value, head.stated_light_path ? "the stated light path" : ""};
}

std::vector<Field<SplitterHead>> prism_fields() {
    FieldInfo glass;
    glass.key = "glass";
    glass.label = "Glass";
    glass.help = "Glass type of all prisms in the head.";
    using S = SplitterHead;
    return {
        choice_field(mechanism_info(), &S::mechanism, {hinged_word, sliding_word}),
        number_field(front_opening(length_info("entry_clear_diameter_mm", "Entry opening",
                                               "Clear diameter of the nose where light enters.", 5,
                                               80, 15, 45)),
                     &S::entry_clear),
        number_field(
            length_info(
                "nose_length_mm", "Nose length",
                "How far the nose reaches forward from the entry face into the part before it.", 0,
                80, 0, 40),
            &S::nose_length),
        taken_as(optional_field(to_first_glass(ruled_by_light_path(length_info(
                                    "entry_air_mm", "Air before the cube",
                                    "From the entry face to the glass of the cube; unstated: "
                                    "what the stated light path leaves, or else 14 mm.",
                                    0, 150, 2, 40))),
                                &S::entry_air),
                 [](const S& head) { return inside_taken(head, head.inside().entry_air); }),
        number_field(grows_with_openings(ruled_by_light_path(
                         length_info("prism_width_mm", "Prism width",
                                     "Side of the cube and of the other prisms.", 5, 60, 15, 45))),
                     &S::prism_width),
        number_field(
            grows_with_openings(ruled_by_light_path(length_info(
                "arm_offset_mm", "Arm offset",
                "From the entry axis to the axis of each eyepiece; twice this is the widest pupil "
                "distance.",
                20, 80, 30, 45))),
            &S::arm_offset),
        taken_as(optional_field(slide_info(), &S::slide),
                 [](const S& head) {
                     return TakenValue{(head.widest() - head.narrowest()).value / 2,
                                       "arm offset and prism width"};
                 }),
        taken_as(optional_field(length_info("compensator_mm", "Compensating glass",
                                            "Length of the block in the left arm that makes up "
                                            "for the longer glass of the right one; unstated: "
                                            "exactly right.",
                                            0, 120, 0, 60),
                                &S::compensator),
                 [](const S& head) {
                     return TakenValue{head.compensator_length().value,
                                       head.is_sliding() ? "the prism width" : "the arm offset"};
                 }),
        word_field(ruled_by_light_path(glass), &S::glass, glass_names()),
        choice_field(coating_info(), &S::reflecting_faces, coating_words()),
    };
}

FieldInfo percent_info(std::string key, std::string label, std::string help) {
    FieldInfo info;
    info.key = std::move(key);
    info.label = std::move(label);
    info.help = std::move(help);
    info.unit = FieldUnit::percent;
    return info;
}

std::vector<Field<SplitterHead>> light_fields() {
    using S = SplitterHead;
    FieldInfo reflected =
        percent_info("reflected_percent", "Reflected at the cube",
                     "Share of the divided light that the cube reflects, to the left eye; the rest "
                     "goes to the right eye.");
    reflected.low = 1;
    reflected.high = 99;
    reflected.usual_low = 30;
    reflected.usual_high = 70;
    FieldInfo loss = percent_info("splitter_loss_percent", "Lost at the cube",
                                  "Light that the dividing layer swallows; none for a dielectric "
                                  "layer, 10 % and more for a metal one (common practice).");
    loss.high = 90;
    loss.usual_high = 30;
    return {
        choice_field(anti_reflection_info(), &S::coating, anti_reflection_words()),
        number_field(reflected, &S::reflected_percent),
        number_field(loss, &S::splitter_loss_percent),
    };
}

std::vector<Field<SplitterHead>> error_fields() {
    using S = SplitterHead;
    FieldInfo stand;
    stand.key = "prisms_stand";
    stand.label = "Prisms stand";
    stand.help =
        "True to their place, or slightly off it as stated prism by prism, to see what that "
        "does to the two images.";
    std::vector<Field<S>> fields{
        choice_field(stand, &S::prisms_stand, {"true to place", "slightly off"})};
    struct Named {
        PrismErrors S::*prism;
        const char* key;
        const char* label;
        std::vector<FieldCondition> only_if;
    };
    for (const Named& one :
         {Named{&S::cube_errors, "cube", "Cube", {}},
          Named{&S::arm_prism_errors, "arm_prism", "Arm prism", {}},
          Named{&S::rhomboid_errors, "rhomboid", "Rhomboid", {if_hinged()}},
          Named{&S::inner_prism_errors, "inner_prism", "Inner prism", {if_sliding()}},
          Named{&S::outer_prism_errors, "outer_prism", "Outer prism", {if_sliding()}}}) {
        for (const PrismErrorKind& kind : prism_error_kinds()) {
            FieldInfo info = prism_error_info(one.key, one.label, kind);
            info.only_if = one.only_if;
            info.only_if.push_back({stand.key, "slightly off"});
            fields.push_back(prism_error_field(std::move(info), one.prism, kind.value));
        }
    }
    return fields;
}

std::vector<Field<SplitterHead>> arm_end_fields() {
    using S = SplitterHead;
    FieldInfo stated = stated_light_path_info();
    stated.help +=
        " Of a sliding head it holds at the middle of the range of pupil distances; wider apart "
        "the path is longer, closer together shorter.";
    return {
        number_field(grows_with_openings(length_info(
                         "exit_clear_diameter_mm", "Exit opening",
                         "Clear diameter behind the last prism of each arm.", 5, 80, 15, 45)),
                     &S::exit_clear),
        taken_as(optional_field(
                     to_first_glass(ruled_by_light_path(length_info(
                         "seat_height_mm", "Seat height",
                         "From the last glass face to the seat on which the eyepiece's shoulder "
                         "rests; unstated: what the stated light path leaves, or else 30 mm.",
                         1, 150, 5, 50))),
                     &S::seat_height),
                 [](const S& head) { return inside_taken(head, head.inside().seat_height); }),
        number_field(
            length_info(
                "seat_travel_mm", "Seat travel",
                "How far each eyepiece can be focused by itself, in and out, to suit each eye.", 0,
                15, 0, 6),
            &S::seat_travel),
        number_field(hinge_info("hinge_low_deg", "Hinge, widest",
                                "How far each arm drops when the head is opened widest."),
                     &S::hinge_low),
        number_field(hinge_info("hinge_high_deg", "Hinge, narrowest",
                                "How far each arm drops when the head is closed to its narrowest."),
                     &S::hinge_high),
        optional_field(stated, &S::stated_light_path),
    };
}

}  // namespace

std::vector<Field<SplitterHead>> SplitterHead::fields() {
    auto fields = prism_fields();
    for (auto* more : {light_fields, arm_end_fields, error_fields}) {
        for (auto& field : more())
            fields.push_back(std::move(field));
    }
    return fields;
}

}  // namespace beamfork
