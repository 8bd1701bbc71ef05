#include <algorithm>
#include <cmath>

#include "parts/newtonian.hpp"
#include "parts/refractor.hpp"
#include "study/ways_to_focus/way_search.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double largest_cut =
    0.2;  // of the focal length: the cone is wider than rings and focuser beyond; common practice, no source
constexpr double largest_move =
    0.15;  // of the focal length, for a main mirror: common practice, no source

void offer_shorter_tube(WaySearch& search, std::size_t telescope) {
    const auto* whole = search.setup().parts[telescope].body.as<Refractor>();
    const double cut = std::ceil(search.wanted().value);
    if (whole == nullptr || cut > largest_cut * whole->focal_length.value) return;
    WayToFocus way = way_named("shorter_tube");
    way.what = fmt::format("Have the telescope's tube shortened by {:.0f} mm", cut);
    way.cost = "Irreversible: have it checked by a qualified workshop, with the tube's inner "
               "rings; focus with one eyepiece then needs an extension.";
    way.reversibility = Reversibility::permanent;
    way.setup = search.setup();
    auto& refractor = way.setup.parts[telescope].body.get<Refractor>();
    refractor.back_focus = refractor.back_focus + Millimetres{cut};
    search.offer(std::move(way));
}

// A low body of the focuser: ordinary ones are 70-110 high, low ones 30-60 (common practice, no source).
void offer_low_focuser(WaySearch& search, std::size_t telescope) {
    constexpr double saved = 40;
    const auto* newtonian = search.setup().parts[telescope].body.as<Newtonian>();
    if (newtonian == nullptr) return;
    WayToFocus way = way_named("low_profile_focuser");
    way.what = fmt::format("Fit a low-profile focuser, {:.0f} mm lower", saved);
    way.cost = "Ordinary bodies are 70 to 110 mm high, low ones 30 to 60 mm; focus with one "
               "eyepiece may need an extension.";
    way.reversibility = Reversibility::workshop;
    way.setup = search.setup();
    auto& changed = way.setup.parts[telescope].body.get<Newtonian>();
    changed.back_focus = changed.back_focus + Millimetres{saved};
    changed.axis_to_drawtube = changed.axis_to_drawtube - Millimetres{saved};
    if (changed.contradiction()) return;
    search.offer(std::move(way));
}

// The primary moved up by x moves the image out by x; the cone at the secondary is wider by x D / F (similar
// triangles), so the fully lit field (m F - l D) / (F - l) shrinks.
void offer_primary_up(WaySearch& search, std::size_t telescope) {
    const auto* newtonian = search.setup().parts[telescope].body.as<Newtonian>();
    if (newtonian == nullptr) return;
    const double up = std::ceil(search.wanted().value);
    if (up > largest_move * newtonian->focal_length.value) return;
    WayToFocus way = way_named("primary_moved_up");
    way.setup = search.setup();
    auto& changed = way.setup.parts[telescope].body.get<Newtonian>();
    changed.primary_moved_up = changed.primary_moved_up + Millimetres{up};
    if (changed.contradiction()) return;
    const double before = newtonian->fully_lit_field().value;
    const double after = changed.fully_lit_field().value;
    way.what = fmt::format("Move the main mirror {:.0f} mm up the tube", up);
    way.cost = after >= 0
                   ? fmt::format("The secondary then fully lights {:.1f} mm of the field instead "
                                 "of {:.1f} mm; have it checked by a qualified workshop.",
                                 after, before)
                   : "The secondary is then too small for the whole aperture's light, even in the "
                     "middle of the field; have it checked by a qualified workshop.";
    way.reversibility = Reversibility::workshop;
    search.offer(std::move(way));
}

}  // namespace

void offer_ways_at_telescope(WaySearch& search) {
    const std::size_t telescope = parts_with_role(search.setup(), Role::telescope).front();
    offer_low_focuser(search, telescope);
    offer_primary_up(search, telescope);
    offer_shorter_tube(search, telescope);
}

}  // namespace beamfork
