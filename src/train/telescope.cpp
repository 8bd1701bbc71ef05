#include "train/telescope.hpp"

#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/newtonian.hpp"
#include "parts/refractor.hpp"
#include "train/train.hpp"

namespace beamfork {

namespace {

Millimetres image_shift(Millimetres focal_length, std::optional<Millimetres> distance) {
    return distance ? near_target_shift(focal_length, *distance) : Millimetres{0};
}

TelescopeFacts facts_of(const Refractor& telescope, std::optional<Millimetres> distance) {
    return {telescope.aperture, telescope.focal_length,
            telescope.back_focus + image_shift(telescope.focal_length, distance), Millimetres{0}};
}

TelescopeFacts facts_of(const Newtonian& telescope, std::optional<Millimetres> distance) {
    if (distance) *distance = *distance + telescope.rim_height();
    return {telescope.aperture, telescope.focal_length,
            telescope.back_focus + telescope.primary_moved_up
                + image_shift(telescope.focal_length, distance),
            telescope.obstruction(), telescope.vane_share()};
}

}  // namespace

TelescopeFacts
telescope_of(const Setup& setup, Millimetres primary, std::optional<Millimetres> distance) {
    if (const auto* refractor = find_part<Refractor>(setup)) return facts_of(*refractor, distance);
    if (const auto* newtonian = find_part<Newtonian>(setup)) return facts_of(*newtonian, distance);
    const auto* mirrors = find_part<CassegrainMovingMirror>(setup);
    BEAMFORK_EXPECTS(mirrors != nullptr);
    const MirrorFocus focus = mirrors->focus_at(primary, distance);
    return {mirrors->aperture, focus.focal_length, focus.back_focus, mirrors->obstruction()};
}

bool telescope_focuses_by_primary(const Setup& setup) {
    return find_part<CassegrainMovingMirror>(setup) != nullptr;
}

}  // namespace beamfork
