// Ideas for what does not join, has no room or weighs too much.
#include <algorithm>
#include <cmath>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/kind.hpp"
#include "parts/newtonian.hpp"
#include "parts/spacer.hpp"
#include "study/cures/cure_ideas.hpp"
#include "study/fit/clearance.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double adapter_mm =
    5;  // of light path: threaded adapters take 3-10; common practice, no source

void add_adapters(CureIdeas& ideas) {
    for (const Joint& joint : ideas.report.fit.joints) {
        if (joint.fits()) continue;
        Spacer adapter;
        adapter.length = Millimetres{adapter_mm};
        adapter.mount.front = mate_of(joint.rear);
        adapter.mount.rear = mate_of(joint.front);
        ideas.add({fmt::format("Put {} of about {:.0f} mm before “{}”",
                               adapter_between(joint.rear, joint.front), adapter_mm,
                               ideas.name(joint.behind)),
                   "It takes its own length of light path.", Reversibility::exchange,
                   with_part(ideas.setup, joint.behind, {"Adapter", adapter, {}, {}})});
    }
}

void add_clearance_spacers(CureIdeas& ideas) {
    for (const EyePath& path : ideas.report.train.paths) {
        for (const Clearance& one : clearances(path)) {
            const std::size_t at = std::max(one.part, one.other);
            if (one.room >= Millimetres{} || role_of(ideas.setup.parts[at]) > Role::splitter)
                continue;
            Spacer spacer;
            spacer.length = Millimetres{std::ceil(1 - one.room.value)};
            ideas.add({fmt::format("Put a spacer of {:.0f} mm before “{}”", spacer.length.value,
                                   ideas.name(at)),
                       "It takes its own length of light path.", Reversibility::exchange,
                       with_part(ideas.setup, at, {"Spacer", spacer, {}, {}})});
        }
    }
}

// A lens that is said to stand in glass, as near to it as a tenth of a millimetre can say.
void add_lenses_out_of_glass(CureIdeas& ideas) {
    for (const LensRoom& room : ideas.report.train.lens_rooms) {
        if (room.inside() == 0) continue;
        const bool is_behind = room.stated > room.placed();
        const double at =
            (is_behind ? std::floor(10 * room.placed()) : std::ceil(10 * room.placed())) / 10;
        auto body = with_field(ideas.setup.parts[room.part].body, lens_position_key, at);
        if (!body) continue;
        ideas.add_changed(
            room.part, *std::move(body),
            fmt::format("Put the lens of “{}” at {:.1f} mm", ideas.name(room.part), at),
            "Its real factor follows from where it stands.", Reversibility::at_once);
    }
}

void add_slimmer_eyepieces(CureIdeas& ideas) {
    const std::size_t index = ideas.setup.chosen.eyepiece;
    const double widest = std::floor(ideas.report.fit.spacing.widest_housing.value);
    EyepiecePair pair = part_as<EyepiecePair>(ideas.setup, index);
    if (pair.outer_diameter.value <= widest || widest < pair.barrel_clear.value) return;
    pair.outer_diameter = Millimetres{widest};
    ideas.add_changed(index, pair,
                      fmt::format("Eyepieces like these in housings of {:.0f} mm", widest),
                      "Slim housings mostly mean less field or eye relief.");
}

void add_longer_relief(CureIdeas& ideas) {
    const std::size_t index = ideas.setup.chosen.eyepiece;
    const SeenField& seen = ideas.report.fit.seen;
    EyepiecePair pair = part_as<EyepiecePair>(ideas.setup, index);
    if (pair.eye_relief >= seen.eye_needs) return;
    pair.eye_relief = Millimetres{std::ceil(seen.eye_needs.value)};
    ideas.add_changed(
        index, pair,
        fmt::format("Eyepieces like these with {:.0f} mm of eye relief", pair.eye_relief.value),
        "They are larger and heavier.");
}

void add_stronger_focuser(CureIdeas& ideas) {
    const Load& load = ideas.report.fit.load;
    if (!load.rated) return;
    const std::size_t index = ideas.index_of(Role::focuser);
    Focuser focuser = part_as<Focuser>(ideas.setup, index);
    constexpr double spare = 0.8;  // of the rating may hang on it
    const Grams rated{100 * std::ceil(load.mass.value / spare / 100)};
    if (rated <= *load.rated) return;
    focuser.rated_load = rated;
    ideas.add_changed(index, focuser,
                      fmt::format("Fit a focuser rated for {:.0f} g or more", rated.value),
                      "The telescope is taken apart for it; hold the tube and balance it anew.",
                      Reversibility::workshop);
}

// A drawtube that ends where the light of a Newtonian begins.
void add_shorter_drawtube(CureIdeas& ideas) {
    const auto* newtonian = find_part<Newtonian>(ideas.setup);
    if (newtonian == nullptr) return;
    const std::size_t index = ideas.index_of(Role::focuser);
    Focuser focuser = part_as<Focuser>(ideas.setup, index);
    const double longest =
        (newtonian->axis_to_drawtube + ideas.report.budget.drawtube - newtonian->aperture / 2)
            .value;
    if (longest < 20 || longest >= focuser.drawtube_length.value) return;
    focuser.drawtube_length = Millimetres{std::floor(longest)};
    ideas.add_changed(
        index, focuser,
        fmt::format("A drawtube of {:.0f} mm, cut at its front end", focuser.drawtube_length.value),
        "It is held by less of its length.", Reversibility::permanent);
}

// Less light path behind a drawtube that stands in the light: it then comes out by as much.
void add_less_path_behind(CureIdeas& ideas) {
    const auto* newtonian = find_part<Newtonian>(ideas.setup);
    if (newtonian == nullptr || !ideas.has("drawtube_in_light")) return;
    const Focuser& focuser = part_as<Focuser>(ideas.setup, ideas.index_of(Role::focuser));
    const double depth = std::ceil((newtonian->aperture / 2 - newtonian->axis_to_drawtube
                                    - ideas.report.budget.drawtube + focuser.drawtube_length)
                                       .value);
    for (std::size_t i = 0; i < ideas.setup.parts.size(); ++i) {
        const auto* spacer = ideas.setup.parts[i].body.as<Spacer>();
        if (spacer == nullptr) continue;
        Spacer shorter = *spacer;
        shorter.length = Millimetres{spacer->length.value - depth};
        if (shorter.length.value < 1) {
            ideas.add({fmt::format("Leave out “{}”", ideas.name(i)), "", Reversibility::exchange,
                       without_part(ideas.setup, i)});
        } else {
            ideas.add_changed(i, shorter,
                              fmt::format("One of {:.1f} mm in place of “{}”", shorter.length.value,
                                          ideas.name(i)),
                              "");
        }
    }
}

void add_room_at_zenith(CureIdeas& ideas) {
    const ZenithRoom& room = ideas.report.fit.zenith;
    if (!room.hits()) return;
    constexpr Millimetres spare{10};
    const Millimetres missing{std::ceil((room.wanted - *room.there + spare).value)};
    CureIdea idea{
        fmt::format("Raise the telescope on its mount by {:.0f} mm", missing.value),
        "A pier extension or longer plate shakes more; hold the tube while you change it.",
        Reversibility::exchange, ideas.setup};
    PartBody& telescope = idea.setup.parts[ideas.index_of(Role::telescope)].body;
    if (auto balance = balance_of(telescope)) {
        balance->free_behind = *room.there + missing;
        set_balance(telescope, *balance);
    }
    ideas.add(std::move(idea));
}

}  // namespace

void add_fit_ideas(CureIdeas& ideas) {
    add_adapters(ideas);
    add_clearance_spacers(ideas);
    add_lenses_out_of_glass(ideas);
    add_slimmer_eyepieces(ideas);
    add_longer_relief(ideas);
    add_stronger_focuser(ideas);
    add_shorter_drawtube(ideas);
    add_less_path_behind(ideas);
    add_room_at_zenith(ideas);
}

}  // namespace beamfork
