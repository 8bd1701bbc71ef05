#include "study/light/brightness.hpp"

#include <algorithm>
#include <cmath>

#include "glass/coating.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/observer.hpp"
#include "train/telescope.hpp"

#include <fmt/format.h>

namespace beamfork {

double magnitudes(double share) { return -2.5 * std::log10(share); }

namespace {

std::string coating_word(AntiReflection coating) {
    const std::string word = anti_reflection_words().at(static_cast<std::size_t>(coating));
    return coating == AntiReflection::uncoated ? word : word + " coating";
}

double lens_share(AntiReflection coating, int faces) {
    return std::pow(1 - face_reflectance(coating, 1, lens_glass_index, Radians{0}), faces);
}

std::string lens_words(AntiReflection coating, int faces) {
    return fmt::format("{} faces to air, {}", faces, coating_word(coating));
}

// What one surface does to light that arrives along the axis in that direction.
LightStep light_step(const PlacedSurface& surface, const Direction& along) {
    const Coating& coating = surface.coating;
    LightStep step{.part = surface.part, .face = surface.name, .why = {}};
    if (coating.stated_share) {
        step.passes = *coating.stated_share;
        step.why = "share for this eye";
        step.is_split = true;
        return step;
    }
    const double cosine = std::min(1.0, std::abs(glm::dot(along, surface.world_from_surface.z())));
    switch (surface.kind) {
    case SurfaceKind::stop:
    case SurfaceKind::obstruction: break;
    case SurfaceKind::refraction:
        if (coating.transmission) {
            step.passes = *coating.transmission;
            step.why = step.passes < 1 ? "stated transmission" : "";
            step.is_filter = true;
            break;
        }
        step.passes =
            1
            - face_reflectance(coating.face, surface.index_before[primary_wavelength],
                               surface.index_after[primary_wavelength], Radians{std::acos(cosine)});
        step.why = coating_word(coating.face);
        break;
    case SurfaceKind::mirror:
        step.passes = mirror_reflectance(coating.mirror);
        step.why = mirror_coating_words().at(static_cast<std::size_t>(coating.mirror));
        break;
    case SurfaceKind::total_reflection: step.why = "total reflection"; break;
    case SurfaceKind::objective:
    case SurfaceKind::thin_lens:
    case SurfaceKind::phase_plate:
        step.passes = lens_share(coating.face, coating.lens_faces);
        step.why = lens_words(coating.face, coating.lens_faces);
        break;
    }
    return step;
}

std::vector<LightStep> light_steps(const Setup& setup, const Train& train, Eye eye) {
    std::vector<LightStep> steps;
    Direction along{0, 0, 1};
    for (const PlacedSurface& surface : train.path(eye).surfaces) {
        LightStep step = light_step(surface, along);
        const bool turns =
            surface.kind == SurfaceKind::mirror || surface.kind == SurfaceKind::total_reflection;
        if (turns) along = mirrored(along, surface.world_from_surface.z());
        if (!step.why.empty()) steps.push_back(std::move(step));
    }
    const auto& eyepiece = part_as<EyepiecePair>(setup, train.choice.eyepiece);
    if (const auto percent = eyepiece.filter(eye)) {
        steps.push_back({.part = train.choice.eyepiece,
                         .face = "filter in the barrel",
                         .passes = *percent / 100,
                         .why = "stated transmission",
                         .is_filter = true});
    }
    const int faces = static_cast<int>(std::lround(eyepiece.lens_faces));
    steps.push_back({.part = train.choice.eyepiece,
                     .face = "lenses",
                     .passes = lens_share(eyepiece.coating, faces),
                     .why = lens_words(eyepiece.coating, faces)});
    return steps;
}

// Area that a ring from `inner` to `outer` and a disc about the same middle share, over the disc's own, all
// by their diameters.
double share_of_disc(Millimetres inner, Millimetres outer, Millimetres disc) {
    const double out = std::min(outer, disc).value;
    const double in = std::min(inner, disc).value;
    return std::max(0.0, out * out - in * in) / (disc.value * disc.value);
}

// What the exit pupil brings to the eye's pupil. Openings narrow it as a smaller aperture would.
void meet_pupil(EyeBrightness& eye,
                Millimetres exit_pupil,
                double obstruction,
                Millimetres eye_pupil) {
    const Millimetres working = exit_pupil * std::sqrt(eye.on_axis);
    const Millimetres hidden = exit_pupil * obstruction;
    const double met = share_of_disc(hidden, working, eye_pupil);
    const double whole = share_of_disc(hidden, working, std::max(working, eye_pupil))
                         * std::pow(std::max(working, eye_pupil) / eye_pupil, 2);
    eye.into_pupil = whole > 0 ? met / whole : 0;
    eye.surface_brightness = eye.throughput * met;
}

}  // namespace

Brightness brightness(const Setup& setup,
                      const Train& train,
                      const std::array<double, 2>& on_axis,
                      const Magnification& magnification) {
    const TelescopeFacts telescope = telescope_of(setup);
    const double obstruction = telescope.obstruction / telescope.aperture;
    Brightness result;
    result.without_head = 0;
    result.exit_pupil = magnification.exit_pupil;
    result.eye_pupil = part_as<Observer>(setup, train.choice.observer).eye_pupil;
    for (std::size_t side = 0; side < 2; ++side) {
        EyeBrightness& eye = result.eyes[side];
        eye.steps = light_steps(setup, train, both_eyes[side]);
        double alone = 1;
        for (const LightStep& step : eye.steps) {
            eye.throughput *= step.passes;
            if (!step.is_split && !step.is_filter) eye.coatings *= step.passes;
            if (role_of(setup.parts[step.part]) != Role::splitter) alone *= step.passes;
        }
        // Of two eyepieces with different filters one eye takes the clearer.
        result.without_head = std::max(result.without_head, alone);
        eye.on_axis = on_axis[side];
        eye.unobstructed = 1 - obstruction * obstruction - telescope.vane_share;
        meet_pupil(eye, result.exit_pupil, obstruction, result.eye_pupil);
        // The vanes take the same share of whatever part of the ring the eye's pupil meets, as nearly as matters.
        eye.surface_brightness *= 1 - telescope.vane_share / (1 - obstruction * obstruction);
    }
    return result;
}

double Brightness::one_eye_change() const {
    const double mean = (eyes[0].throughput + eyes[1].throughput) / 2;
    return -magnitudes(mean / without_head);
}

std::array<double, 2> Brightness::two_eye_change() const {
    const double change = one_eye_change();
    return {change - magnitudes(two_eye_gain[0]), change - magnitudes(two_eye_gain[1])};
}

double Brightness::difference() const {
    const double left = eyes[0].total();
    const double right = eyes[1].total();
    const double brighter = std::max(left, right);
    return brighter > 0 ? 1 - std::min(left, right) / brighter : 0;
}

}  // namespace beamfork
