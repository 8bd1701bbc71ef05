// Setups of the Harrier Hill club for the scene's tests: one that is short of focus, one cured by a shifter, and
// one fast telescope with a wide eyepiece that clips.
#pragma once

#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"
#include "study/findings/report.hpp"

namespace beamfork {

inline Setup short_setup() {
    Setup setup;
    Refractor telescope;
    telescope.aperture = {100};
    telescope.focal_length = {740};
    telescope.back_focus = {116};
    Spacer adapter;
    adapter.length = {1};
    PrismDiagonal diagonal;
    setup.title = "Short of focus";
    setup.parts = {{"Refractor 100/740", telescope, {}, {}},
                   {"Focuser", Focuser{}, {}, {}},
                   {"Adapter", adapter, {}, {}},
                   {"Prism diagonal", diagonal, {}, {}},
                   {"Splitter head", SplitterHead{}, {}, {}},
                   {"25 mm pair", EyepiecePair{}, {}, {}},
                   {"Observer", Observer{}, {}, {}},
                   {"Sky", Target{}, {}, {}}};
    return with_valid_choice(setup);
}

/// The worked budget of the trade (common practice, no source): back focus 116, adapter 1, diagonal 35, head 110.
inline Setup worked_budget() {
    Setup setup = short_setup();
    setup.parts[3].body.get<PrismDiagonal>().stated_light_path = Millimetres{35};
    setup.parts[4].body.get<SplitterHead>().stated_light_path = Millimetres{110};
    return setup;
}

inline Setup cured_setup() {
    Setup setup = short_setup();
    setup.title = "Cured by a shifter";
    setup.parts.insert(setup.parts.begin() + 4, Part{"Shifter 2.6×", Shifter{}, {}, {}});
    return with_valid_choice(setup);
}

inline Setup clipping_setup() {
    Setup setup = short_setup();
    setup.title = "Fast and wide";
    auto& telescope = setup.parts[0].body.get<Refractor>();
    telescope.aperture = {130};
    telescope.focal_length = {650};
    telescope.back_focus = {190};
    auto& eyepiece = setup.parts[5].body.get<EyepiecePair>();
    eyepiece.focal_length = {24};
    eyepiece.field_stop = {27};
    eyepiece.barrel_clear = {29};
    setup.parts[3] = Part{"Mirror diagonal", MirrorDiagonal{}, {}, {}};
    return with_valid_choice(setup);
}

inline Report report_of(const Setup& setup, int rays = 256) {
    auto report = make_report(setup, setup.chosen, ClippingEffort{rays});
    BEAMFORK_EXPECTS(report.has_value());
    return *std::move(report);
}

}  // namespace beamfork
