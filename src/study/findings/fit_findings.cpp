#include <cmath>

#include "parts/observer.hpp"
#include "parts/splitter_head.hpp"
#include "study/findings/finding_scope.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr Millimetres nose_needs{10};  // our choice: below it most noses do not fit
constexpr double seen_whole = 0.999;
constexpr double seen_poor = 0.8;    // our choice: a fifth of the field's width missing is felt
constexpr double near_rating = 0.8;  // our choice
constexpr Millimetres shift_that_shows{5};  // our choice: clutches no longer hold by themselves

void spacing_findings(const FindingScope& scope) {
    const EyepieceSpacing& spacing = scope.report.fit.spacing;
    const std::size_t eyepiece = scope.report.train.choice.eyepiece;
    const Millimetres housing = spacing.axis_distance - spacing.gap;
    if (!spacing.is_in_range) {
        scope.add(Severity::fails, "pupil_distance_out_of_range",
                  fmt::format("{}: the pupil distance of {:.1f} mm is outside the head's {:.1f} to "
                              "{:.1f} mm.",
                              scope.name(scope.report.train.choice.observer),
                              spacing.pupil_distance.value, spacing.narrowest.value,
                              spacing.widest.value),
                  "This observer cannot bring both exit pupils before both eyes with this head.",
                  scope.index_of(Role::splitter));
    }
    if (spacing.gap <= Millimetres{}) {
        scope.add(Severity::fails, "eyepieces_touch",
                  fmt::format("Two eyepieces of {:.0f} mm cannot stand {:.0f} mm apart.",
                              housing.value, spacing.axis_distance.value),
                  fmt::format("Eyepieces of up to {:.0f} mm leave the nose its {:.0f} mm.",
                              std::floor(std::max(0.0, spacing.widest_housing.value)),
                              nose_wants.value),
                  eyepiece);
    } else if (spacing.gap < nose_wants) {
        scope.add(spacing.gap < nose_needs ? Severity::poor : Severity::note, "nose_gap_narrow",
                  fmt::format("Between the eyepieces {:.0f} mm are left for the nose.",
                              spacing.gap.value),
                  fmt::format("15 to 20 mm is usual; eyepieces of up to {:.0f} mm leave that.",
                              std::floor(std::max(0.0, spacing.widest_housing.value))),
                  eyepiece);
    }
}

// Observers other than the chosen one, of whom spacing_findings tells.
void other_observers_findings(const FindingScope& scope) {
    const EyepieceSpacing& spacing = scope.report.fit.spacing;
    const std::size_t head = scope.index_of(Role::splitter);
    std::string names;
    for (const std::size_t one : parts_with_role(scope.setup, Role::observer)) {
        const Millimetres distance = part_as<Observer>(scope.setup, one).pupil_distance;
        if (one == scope.report.train.choice.observer
            || part_as<SplitterHead>(scope.setup, head).reaches(distance))
            continue;
        names += fmt::format("{}{} ({:.1f} mm)", names.empty() ? "" : ", ", scope.name(one),
                             distance.value);
    }
    if (names.empty()) return;
    scope.add(Severity::poor, "observer_out_of_range",
              fmt::format("Not everybody can look with both eyes: the head can be set from {:.1f} "
                          "to {:.1f} mm between the pupils, which leaves out {}.",
                          spacing.narrowest.value, spacing.widest.value, names),
              "A head with a wider range would serve them; with this one they look with one eye.",
              head);
}

void seen_findings(const FindingScope& scope) {
    const SeenField& seen = scope.report.fit.seen;
    if (seen.full_light_share >= seen_whole) return;
    scope.add(
        seen.half_light_share < seen_poor ? Severity::poor : Severity::note, "eye_relief_short",
        fmt::format("With spectacles on the eye stays {:.0f} mm behind the exit pupil: {:.0f} "
                    "% of the field's width is seen in full light, {:.0f} % by half or more.",
                    seen.too_far.value, 100 * seen.full_light_share, 100 * seen.half_light_share),
        fmt::format("An eye relief of {:.0f} mm would show all of it; 15 to 20 mm is usual.",
                    std::ceil(seen.eye_needs.value)),
        scope.report.train.choice.eyepiece);
}

constexpr const char* weight_caution =
    "Tighten every clamp and thread, hold the tube while you balance both axes anew, and stay "
    "within what the makers of mount and focuser allow.";

void load_findings(const FindingScope& scope) {
    const Load& load = scope.report.fit.load;
    const std::size_t focuser = scope.index_of(Role::focuser);
    const char* at_least = load.unstated.empty() ? "" : "at least ";
    if (load.rated && load.mass > *load.rated) {
        scope.add(Severity::fails, "focuser_overloaded",
                  fmt::format("{}{:.0f} g hang on the focuser, which is rated for {:.0f} g; they "
                              "bend its drawtube with {:.1f} Nm.",
                              at_least, load.mass.value, load.rated->value, load.bending.value),
                  std::string("Lighter eyepieces or head, or a stronger focuser. ")
                      + weight_caution,
                  focuser);
    } else if (load.rated && load.mass > near_rating * *load.rated) {
        scope.add(
            Severity::note, "focuser_nearly_full",
            fmt::format("{}{:.0f} g of the {:.0f} g that the focuser is rated for hang on it.",
                        at_least, load.mass.value, load.rated->value),
            weight_caution, focuser);
    }
    if (load.rated && !load.unstated.empty()) {
        scope.add(Severity::note, "mass_unstated",
                  fmt::format("The mass of {}{} is not stated, so the load on the focuser is not "
                              "fully known.",
                              scope.name(load.unstated.front()),
                              load.unstated.size() == 1
                                  ? std::string()
                                  : fmt::format(" and {} more", load.unstated.size() - 1)),
                  "Weigh it on a kitchen scale and state its mass.", load.unstated.front());
    }
}

void balance_findings(const FindingScope& scope) {
    const auto& balance = scope.report.fit.balance;
    if (!balance || abs(balance->shift) < shift_that_shows) return;
    const std::string cure =
        balance->counterweight
            ? fmt::format("{:.0f} g at the stated distance on the other side restore it. ",
                          balance->counterweight->value)
            : "Move the tube in its rings by as much, or hang a counterweight on the other side. ";
    scope.add(Severity::note, "balance_shifted",
              fmt::format("What hangs on the focuser moves the balance of the tube by {:.0f} mm.",
                          abs(balance->shift).value),
              cure + weight_caution, scope.index_of(Role::telescope));
}

void zenith_findings(const FindingScope& scope) {
    const ZenithRoom& room = scope.report.fit.zenith;
    if (!room.hits()) return;
    scope.add(Severity::poor, "zenith_room_short",
              fmt::format("Pointing at the zenith, {} reaches {:.0f} mm behind the focuser, where "
                          "{:.0f} mm are free: {:.0f} mm are missing.",
                          scope.name(room.part), room.wanted.value, room.there->value,
                          (room.wanted - *room.there).value),
              "Hang less behind it, stop short of the zenith, or raise the telescope on its mount. "
              "Try it by hand with the drives off, before anything drives there by itself.",
              room.part);
}

}  // namespace

void fit_findings(const FindingScope& scope) {
    spacing_findings(scope);
    other_observers_findings(scope);
    seen_findings(scope);
    load_findings(scope);
    balance_findings(scope);
    zenith_findings(scope);
}

}  // namespace beamfork
