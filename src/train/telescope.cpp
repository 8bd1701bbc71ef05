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

// y' / y = f1 / (u - f1) (Newton), u from the mirror's or lens's vertex, which lies `rim` farther than the distance, and
// y / distance the tangent of the field angle; what stands behind it magnifies by whole / f1.
Millimetres working_focal_length(Millimetres whole,
                                 Millimetres first,
                                 Millimetres rim,
                                 std::optional<Millimetres> distance) {
    return distance ? whole * (*distance / (*distance + rim - first)) : whole;
}

TelescopeFacts facts_of(const Refractor& telescope, std::optional<Millimetres> distance) {
    return {telescope.aperture, telescope.focal_length,
            working_focal_length(telescope.focal_length, telescope.focal_length, {0}, distance),
            telescope.back_focus + image_shift(telescope.focal_length, distance), Millimetres{0}};
}

TelescopeFacts facts_of(const Newtonian& telescope, std::optional<Millimetres> distance) {
    const Millimetres working = working_focal_length(telescope.focal_length, telescope.focal_length,
                                                     telescope.rim_height(), distance);
    if (distance) *distance = *distance + telescope.rim_height();
    return {telescope.aperture,
            telescope.focal_length,
            working,
            telescope.back_focus + telescope.primary_moved_up
                + image_shift(telescope.focal_length, distance),
            telescope.obstruction(),
            telescope.vane_share()};
}

}  // namespace

TelescopeFacts
telescope_of(const Setup& setup, Millimetres primary, std::optional<Millimetres> distance) {
    if (const auto* refractor = find_part<Refractor>(setup)) return facts_of(*refractor, distance);
    if (const auto* newtonian = find_part<Newtonian>(setup)) return facts_of(*newtonian, distance);
    const auto* mirrors = find_part<CassegrainMovingMirror>(setup);
    BEAMFORK_EXPECTS(mirrors != nullptr);
    const MirrorFocus focus = mirrors->focus_at(primary, distance);
    const Millimetres working = working_focal_length(
        focus.focal_length, mirrors->primary_focal_length, mirrors->rim_height(), distance);
    return {mirrors->aperture, focus.focal_length, working, focus.back_focus,
            mirrors->obstruction()};
}

bool telescope_focuses_by_primary(const Setup& setup) {
    return find_part<CassegrainMovingMirror>(setup) != nullptr;
}

}  // namespace beamfork
