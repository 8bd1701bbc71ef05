#include <cmath>

#include "parts/focuser.hpp"
#include "parts/newtonian.hpp"
#include "study/findings/finding_scope.hpp"
#include "train/telescope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr double growth_that_counts = 0.01;  // of the focal length

// The share of the aperture's area that lies in the shadow: (obstruction / aperture)^2 and the vanes'.
void obstruction_findings(const FindingScope& scope) {
    const TelescopeFacts telescope = telescope_of(scope.setup);
    if (telescope.obstruction.value <= 0) return;
    const double share = std::pow(telescope.obstruction / telescope.aperture, 2);
    std::string sentence =
        fmt::format("The secondary's shadow of {:.0f} mm takes {:.1f} % of the aperture's "
                    "light before it meets the main mirror",
                    telescope.obstruction.value, 100 * share);
    if (telescope.vane_share > 0)
        sentence += fmt::format(", its vanes {:.1f} % more", 100 * telescope.vane_share);
    std::string advice;
    if (const auto* newtonian = find_part<Newtonian>(scope.setup);
        newtonian != nullptr && !newtonian->secondary_offset) {
        sentence += fmt::format(". The flat is taken as offset by {:.1f} mm towards the main "
                                "mirror, which centres it on the light",
                                newtonian->offset().value);
        advice = "If yours stands on the tube's axis, state “Secondary offset” as 0: one side of "
                 "the field is cut earlier then.";
    }
    scope.add(Severity::note, "obstruction", sentence + ".", advice,
              scope.index_of(Role::telescope));
}

// mF against lD: the width of the middle's light cone where the secondary stands.
void secondary_findings(const FindingScope& scope, const Newtonian& telescope) {
    const std::size_t part = scope.index_of(Role::telescope);
    const double lit = telescope.fully_lit_field().value;
    Newtonian as_made = telescope;
    as_made.primary_moved_up = {0};
    const double cone =
        telescope.secondary_to_focus() / telescope.focal_length * telescope.aperture.value;
    const double minor = telescope.secondary_minor_axis.value;
    if (lit < 0) {
        scope.add(Severity::poor, "secondary_small",
                  fmt::format("The secondary of {:.0f} mm is narrower than the light cone, which "
                              "is {:.1f} mm wide there: the aperture's rim is lost even in the "
                              "middle of the field.",
                              minor, cone),
                  fmt::format("A secondary of {:.0f} mm or more, or a shorter way from it to the "
                              "focus.",
                              std::ceil(cone)),
                  part);
    } else if (telescope.primary_moved_up.value > 0) {
        scope.add(
            Severity::note, "primary_moved_up",
            fmt::format("The main mirror moved up by {:.0f} mm gives as much back focus; the "
                        "secondary now lights {:.1f} mm of the field fully, {:.1f} mm before.",
                        telescope.primary_moved_up.value, lit, as_made.fully_lit_field().value),
            "Moving the mirror's cell means new holes in the tube: it cannot be undone.", part);
    }
}

// A drawtube so long that it reaches into the light on its way down to the main mirror.
void intrusion_findings(const FindingScope& scope, const Newtonian& telescope) {
    const std::size_t index = scope.index_of(Role::focuser);
    const auto& focuser = part_as<Focuser>(scope.setup, index);
    const double front = telescope.axis_to_drawtube.value + scope.report.budget.drawtube.value
                         - focuser.drawtube_length.value;
    const double depth = telescope.aperture.value / 2 - front;
    if (depth <= 0) return;
    scope.add(Severity::note, "drawtube_in_light",
              fmt::format("The drawtube reaches {:.0f} mm into the light that comes down the tube; "
                          "it adds a notch to bright stars and costs a little light.",
                          depth),
              fmt::format("A drawtube {0:.0f} mm shorter, or {0:.0f} mm less light path behind it, "
                          "so that it stands farther out.",
                          std::ceil(depth)),
              index);
}

void mirror_findings(const FindingScope& scope, const PrimaryFocus& primary) {
    const double growth = primary.focal_length / primary.stated_focal_length - 1;
    if (std::abs(growth) < growth_that_counts) return;
    const Millimetres aperture = telescope_of(scope.setup).aperture;
    const Millimetres extra = primary.back_focus - primary.stated_back_focus;
    scope.add(Severity::note, "focal_length_changed",
              fmt::format("The focal length {} from {:.0f} to {:.0f} mm, f/{:.1f} to f/{:.1f}, "
                          "because the main mirror moves {:.1f} mm {} for {:.0f} mm {} back focus.",
                          growth > 0 ? "grows" : "shrinks", primary.stated_focal_length.value,
                          primary.focal_length.value, primary.stated_focal_length / aperture,
                          primary.focal_length / aperture, abs(primary.moved).value,
                          primary.moved > Millimetres{} ? "up" : "down", abs(extra).value,
                          extra > Millimetres{} ? "more" : "less"),
              fmt::format("Every mm of light path behind this telescope is worth {:.1f} mm of "
                          "focal length.",
                          primary.focal_length_per_mm),
              scope.index_of(Role::telescope));
}

void figure_findings(const FindingScope& scope) {
    const auto& doubt = scope.report.figure_doubt;
    if (!doubt || !doubt->matters()) return;
    scope.add(Severity::note, "mirror_figure_unknown", doubt->sentence(),
              "State the figure of its mirrors: one with a clear plate or a bowl of glass at its "
              "front end has spheres. A star's rings inside and outside of focus, alike or not, "
              "tell how much it is.",
              scope.index_of(Role::telescope));
}

}  // namespace

void telescope_findings(const FindingScope& scope) {
    obstruction_findings(scope);
    if (const auto* newtonian = find_part<Newtonian>(scope.setup)) {
        secondary_findings(scope, *newtonian);
        intrusion_findings(scope, *newtonian);
    }
    if (scope.report.budget.primary) mirror_findings(scope, *scope.report.budget.primary);
    figure_findings(scope);
}

}  // namespace beamfork
