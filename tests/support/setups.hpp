// Whole setups to start tests from.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/observer.hpp"
#include "parts/prisms.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "train/train.hpp"

namespace test_setups {

using namespace beamfork;

/// The first part of that kind, to be changed.
template <class Kind>
Kind& the(Setup& setup) {
    for (Part& part : setup.parts) {
        if (auto* body = part.body.as<Kind>()) return *body;
    }
    throw std::logic_error("the setup has no such part");
}

template <class Kind>
std::size_t index_of(const Setup& setup) {
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        if (setup.parts[i].body.is<Kind>()) return i;
    }
    throw std::logic_error("the setup has no such part");
}

/// What stands in the prescription of an eye that lacks as much itself: D / (1 + a D), the lens 15.6 mm in front of it
/// (parts/observer.hpp).
constexpr Dioptres prescribed(double at_the_eye) {
    return {at_the_eye / (1 + 0.0156 * at_the_eye)};
}

/// Telescope, focuser, that chain, head, eyepieces, observer and sky, each of its kind's default values.
inline Setup plain_setup(const std::vector<Part>& chain = {}) {
    Setup setup;
    setup.title = "test";
    setup.parts = {{"Telescope", Refractor{}, {}}, {"Focuser", Focuser{}, {}}};
    setup.parts.insert(setup.parts.end(), chain.begin(), chain.end());
    for (const Part& part :
         {Part{"Head", SplitterHead{}, {}}, Part{"Eyepieces", EyepiecePair{}, {}},
          Part{"Observer", Observer{}, {}}, Part{"Sky", Target{}, {}}}) {
        setup.parts.push_back(part);
    }
    return with_valid_choice(std::move(setup));
}

/// As above, of parts so wide that nothing clips and nothing leaks: a 100 mm f/7 telescope with a long travel.
inline Setup wide_setup(const std::vector<Part>& chain = {}) {
    Setup setup = plain_setup(chain);
    auto& telescope = the<Refractor>(setup);
    telescope.aperture = {100};
    telescope.focal_length = {700};
    telescope.back_focus = {300};
    auto& focuser = the<Focuser>(setup);
    focuser.travel = {300};
    focuser.drawtube_diameter = {150};
    focuser.drawtube_length = {60};
    auto& head = the<SplitterHead>(setup);
    head.entry_clear = {80};
    head.nose_length = {5};
    head.entry_air = Millimetres{14};
    head.seat_height = Millimetres{30};
    head.prism_width = {50};
    head.arm_offset = {52};
    head.exit_clear = {80};
    head.reflecting_faces = FaceCoating::mirrored;
    head.hinge_low = {0};
    head.hinge_high = {80};
    auto& eyepiece = the<EyepiecePair>(setup);
    eyepiece.barrel_clear = {60};
    eyepiece.barrel_length = {10};
    return setup;
}

/// A lens known by its focal length, in a cell of no length, so wide that it never clips.
inline Part bare_lens(double focal_length, double lens_offset) {
    Shifter lens;
    lens.given = ShifterGiven::focal_length;
    lens.focal_length = {focal_length};
    lens.lens_offset = {lens_offset};
    lens.clear_diameter = {150};
    return {"Lens", lens, {}};
}

}  // namespace test_setups
