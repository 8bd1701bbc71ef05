// Ideas for what is looked through, and how the two images stand.
#include <cmath>

#include "parts/erecting_diagonal.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/kind.hpp"
#include "parts/splitter_head.hpp"
#include "study/cures/cure_ideas.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

void add_eyepieces_at_hand(CureIdeas& ideas) {
    for (const std::size_t index : parts_with_role(ideas.setup, Role::eyepiece)) {
        CureIdea idea{fmt::format("Use “{}” instead", ideas.name(index)),
                      "The pair you wanted stays as it is.", Reversibility::at_once, ideas.setup};
        idea.setup.chosen.eyepiece = index;
        ideas.add(std::move(idea));
    }
}

// Pairs that have another focal length and are otherwise as the one in use: an exit pupil that suits the eye.
void add_other_power(CureIdeas& ideas) {
    if (!ideas.has("exit_pupil_wasted") && !ideas.has("exit_pupil_tiny")
        && !ideas.has("dim_objects"))
        return;
    const std::size_t index = ideas.setup.chosen.eyepiece;
    for (const double factor : {0.7, 1.5, 2.0, 3.0}) {
        EyepiecePair pair = part_as<EyepiecePair>(ideas.setup, index);
        pair.focal_length = Millimetres{std::round(pair.focal_length.value * factor)};
        pair.field_stop = Millimetres{pair.field_stop.value * factor};
        if (pair.field_stop.value > pair.barrel_clear.value - 1) continue;
        ideas.add_changed(index, pair,
                          fmt::format("A pair of {:.0f} mm with the same apparent field",
                                      pair.focal_length.value),
                          "Another magnification.");
    }
}

void add_prisms_set_true(CureIdeas& ideas) {
    const std::size_t index = ideas.index_of(Role::splitter);
    SplitterHead head = part_as<SplitterHead>(ideas.setup, index);
    head.prisms_stand = PrismsStand::true_to_place;
    ideas.add_changed(index, head, "Have the head's prisms set true",
                      "A workshop with a collimator does it; do not loosen prisms yourself.",
                      Reversibility::workshop);
}

void add_centred_eyepieces(CureIdeas& ideas) {
    const std::size_t index = ideas.setup.chosen.eyepiece;
    EyepiecePair pair = part_as<EyepiecePair>(ideas.setup, index);
    pair.left_play_x = pair.left_play_y = pair.right_play_x = pair.right_play_y = Millimetres{0};
    ideas.add_changed(index, pair, "Centre both eyepieces in their seats",
                      "Clamps that grip all round, or a turn of tape on the barrel.",
                      Reversibility::at_once);
}

// By day: a roof prism where there is a diagonal.
void add_erecting_diagonals(CureIdeas& ideas) {
    if (!ideas.has("image_not_erect")) return;
    for (std::size_t i = 0; i < ideas.setup.parts.size(); ++i) {
        if (!kind_of(ideas.setup.parts[i].body).turns_light) continue;
        ideas.add({fmt::format("Put an erecting 90° diagonal in place of “{}”", ideas.name(i)),
                   "Its roof edge draws a spike through bright points; openings are narrower.",
                   Reversibility::exchange,
                   with_body(ideas.setup, i, ErectingDiagonal90{}, "Erecting diagonal")});
    }
}

// A stated light path that glass and air cannot have: what is derived from the stated faces holds instead.
void add_derived_paths(CureIdeas& ideas) {
    for (const LightPath& path : ideas.report.train.light_paths) {
        // Where the inside is derived from the stated path, there are no other lengths to trust.
        if (!path.stated || path.unstated.any()) continue;
        CureIdea idea{fmt::format("Trust the lengths of “{}”: {:.1f} mm of light path",
                                  ideas.name(path.part), path.derived_left),
                      "Only if the stated light path is in error: measure it first.",
                      Reversibility::at_once, ideas.setup};
        PartBody& body = idea.setup.parts[path.part].body;
        body = with_field_unchecked(body, stated_light_path_info().key, {}).value();
        ideas.add(std::move(idea));
    }
}

}  // namespace

void add_sight_ideas(CureIdeas& ideas) {
    add_eyepieces_at_hand(ideas);
    add_other_power(ideas);
    add_prisms_set_true(ideas);
    add_centred_eyepieces(ideas);
    add_erecting_diagonals(ideas);
    add_derived_paths(ideas);
}

}  // namespace beamfork
