#include <algorithm>

#include "glass/glass.hpp"
#include "parts/splitter_head.hpp"

namespace beamfork {

namespace {

// What heads have inside when nobody says otherwise, and the least that leaves room for a housing's floor before the
// cube and for a holder above the last glass. Common practice, no source.
constexpr Millimetres usual_entry_air{14};
constexpr Millimetres usual_seat_height{30};
constexpr Millimetres least_entry_air{2};
constexpr Millimetres least_seat_height{5};
constexpr Millimetres most_air{150};  // as much as may be stated of either

// Of a glass that is in no catalogue nothing can be derived: the train says so.
double index_of(const std::string& glass) {
    const Glass* known = standard_catalogue().known(glass);
    return known == nullptr ? 1 : refractive_index(*known, spectral_line::e).value_or(1);
}

// What the stated light path leaves for the air before the cube and below the seat: less the air between the prisms and
// the left arm's glass, cube, arm prism and block, each length over the index.
std::optional<Millimetres> air_to_share(const SplitterHead& head) {
    if (!head.stated_light_path) return std::nullopt;
    const Millimetres between = head.arm_length_for(head.middle()) - head.prism_width;
    const Millimetres glass = 2 * head.prism_width + head.compensator_length();
    return *head.stated_light_path - between - glass / index_of(head.glass);
}

Millimetres within(Millimetres wanted, Millimetres least, Millimetres most = most_air) {
    return std::clamp(wanted, least, std::max(least, std::min(most, most_air)));
}

}  // namespace

HeadInside SplitterHead::inside() const {
    const auto shared = air_to_share(*this);
    const Millimetres air = shared.value_or(usual_entry_air + usual_seat_height);
    HeadInside found{usual_entry_air, usual_seat_height, {}, {}};
    if (shared) {
        // The seat takes its share, or what stated air before the cube leaves of it; the cube takes the rest.
        found.seat_height =
            entry_air ? within(air - *entry_air, least_seat_height)
                      : within(usual_seat_height / (usual_entry_air + usual_seat_height) * air,
                               least_seat_height, air - least_entry_air);
        found.entry_air = within(air - seat_height.value_or(found.seat_height), least_entry_air);
    }
    found.entry_air = entry_air.value_or(found.entry_air);
    found.seat_height = seat_height.value_or(found.seat_height);
    found.lowest_seat = seat_height ? Millimetres{0} : least_seat_height;
    const Millimetres below = shared && seat_height ? *seat_height : least_seat_height;
    found.deepest_cube =
        entry_air.value_or(std::max(found.entry_air, std::min(air - below, most_air)));
    return found;
}

}  // namespace beamfork
