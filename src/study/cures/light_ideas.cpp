// Ideas for what takes light or sharpness: openings, leaks, coatings, glass.
#include <algorithm>
#include <cmath>
#include <set>

#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "study/cures/cure_ideas.hpp"
#include "study/ways_to_focus/way_search.hpp"
#include "train/changed_setup.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Parts whose openings take light, the telescope's own left out.
std::set<std::size_t> parts_that_clip(const CureIdeas& ideas) {
    constexpr double share_that_counts = 0.02;
    std::set<std::size_t> found;
    for (const EyeClipping& eye : ideas.report.clipping) {
        const EyePath& path = ideas.report.train.path(eye.eye);
        for (const LitRing& ring : eye.rings) {
            for (const EndShare& end : ring.ends) {
                const std::size_t part = path.surfaces[end.surface].part;
                if (!end.is_leak && end.share > share_that_counts
                    && role_of(ideas.setup.parts[part]) != Role::telescope)
                    found.insert(part);
            }
        }
    }
    return found;
}

// The same part with all its openings wider by that factor, where it has any.
std::optional<PartBody> widened(const PartBody& body, double factor) {
    PartBody wider = body;
    bool is_any = false;
    for (const FieldInfo& field : kind_of(body).fields) {
        if (!field.grows_with_openings) continue;
        const auto value = field_value(body, field.key);
        const double* now = value ? std::get_if<double>(&*value) : nullptr;
        if (now == nullptr) continue;
        auto changed = with_field_unchecked(wider, field.key, std::ceil(*now * factor));
        if (!changed) return std::nullopt;
        wider = *std::move(changed);
        is_any = true;
    }
    return is_any ? std::optional(std::move(wider)) : std::nullopt;
}

void add_wider_parts(CureIdeas& ideas) {
    for (const std::size_t part : parts_that_clip(ideas)) {
        for (const double factor : {1.15, 1.3, 1.5}) {
            const auto wider = widened(ideas.setup.parts[part].body, factor);
            if (!wider) continue;
            ideas.add_changed(part, *wider,
                              fmt::format("A part like “{}” with openings {:.0f} % wider",
                                          ideas.name(part), 100 * (factor - 1)),
                              "Wider prisms are longer and heavier.", Reversibility::exchange,
                              "wider/" + ideas.name(part));
        }
    }
}

// As `choice_field` counts.
template <class Enum>
std::string word_of(Enum chosen, const std::vector<std::string>& words) {
    return words.at(static_cast<std::size_t>(chosen));
}

// Of a part that has no such choice nothing changes.
void choose(Part& part, const FieldInfo& field, const std::string& word) {
    if (auto chosen = with_field_unchecked(part.body, field.key, word))
        part.body = *std::move(chosen);
}

// A bare face that leaks gets a mirror's coating.
void add_mirrored_faces(CureIdeas& ideas) {
    CureIdea idea{"Have the reflecting glass faces mirrored",
                  "A mirrored face keeps a little back; prisms are coated before they are set.",
                  Reversibility::workshop, ideas.setup};
    for (Part& part : idea.setup.parts)
        choose(part, coating_info(), word_of(FaceCoating::mirrored, coating_words()));
    ideas.add(std::move(idea));
}

void add_better_coatings(CureIdeas& ideas) {
    CureIdea idea{"Take parts with multi-layer coated faces and dielectric mirrors",
                  "All coated parts are exchanged; begin with the one that loses most.",
                  Reversibility::exchange, ideas.setup};
    for (Part& part : idea.setup.parts) {
        if (role_of(part) == Role::telescope) continue;
        choose(part, anti_reflection_info(),
               word_of(AntiReflection::multi_layer, anti_reflection_words()));
        choose(part, mirror_coating_info(),
               word_of(MirrorCoating::dielectric, mirror_coating_words()));
    }
    ideas.add(std::move(idea));
}

void add_even_split(CureIdeas& ideas) {
    const std::size_t index = ideas.index_of(Role::splitter);
    SplitterHead head = part_as<SplitterHead>(ideas.setup, index);
    head.reflected_percent = 50;
    ideas.add_changed(index, head, "A head that divides the light half and half",
                      "Another head, or another cube in it.");
}

// A mirror that takes as much light path as the prism it replaces has in length of legs.
void add_mirror_diagonals(CureIdeas& ideas) {
    for (std::size_t i = 0; i < ideas.setup.parts.size(); ++i) {
        const auto* prism = ideas.setup.parts[i].body.as<PrismDiagonal>();
        if (prism == nullptr) continue;
        MirrorDiagonal mirror;
        mirror.entry_leg = prism->entry_leg;
        mirror.exit_leg = prism->exit_leg;
        mirror.clear_diameter = prism->clear_diameter;
        mirror.turned = prism->turned;
        mirror.mount.mass = prism->mount.mass;
        ideas.add(
            {fmt::format("Put a mirror diagonal of the same legs in place of “{}”", ideas.name(i)),
             "Air counts in full: its light path is longer than the glass's.",
             Reversibility::exchange, with_body(ideas.setup, i, mirror, "Mirror diagonal")});
    }
}

// A lens that cancels the glass behind it, as made for that glass at that beam.
void add_corrected_shifter(CureIdeas& ideas) {
    double glass = 0;
    for (const LightPath& path : ideas.report.train.light_paths)
        glass += path.glass;
    for (std::size_t i = 0; i < ideas.setup.parts.size(); ++i) {
        const auto* lens = ideas.setup.parts[i].body.as<Shifter>();
        if (lens == nullptr || lens->corrected_glass) continue;
        Shifter corrected = *lens;
        corrected.corrected_glass = Millimetres{std::round(glass)};
        corrected.corrected_focal_ratio =
            std::round(10 * ideas.report.magnification.focal_ratio) / 10;
        ideas.add_changed(i, corrected,
                          fmt::format("A shifter like “{}”, corrected for {:.0f} mm of glass at "
                                      "f/{:.1f}",
                                      ideas.name(i), corrected.corrected_glass->value,
                                      *corrected.corrected_focal_ratio),
                          "It cancels that glass only: with other parts behind it, less so.");
    }
}

// Slower light through the glass: a weak shifter ahead of everything that is glass.
void add_shifters_ahead(CureIdeas& ideas) {
    const auto& parts = ideas.setup.parts;
    for (const Part& part : parts) {
        if (part.body.is<Shifter>()) return;
    }
    const std::size_t behind = ideas.index_of(Role::focuser) + 1;
    double to_stop = 0;
    for (const LightPath& path : ideas.report.train.light_paths)
        to_stop += path.counted();
    for (const double factor : {1.25, 1.5, 2.0}) {
        Shifter lens;
        lens.given = ShifterGiven::focal_length;
        lens.focal_length = Millimetres{-to_stop / (factor - 1)};
        lens.clear_diameter = lens_that_fits_into(parts[behind]);
        const std::string name = fmt::format("{:.2f}× shifter", factor);
        ideas.add({fmt::format("Put a {} ahead of all glass", name),
                   "It magnifies: field and exit pupil shrink by as much.", Reversibility::exchange,
                   with_part(ideas.setup, behind, {name, lens, {}, {}}), "shifter_ahead"});
    }
}

// A secondary as wide as the light cone where it stands, and a field of some mm.
void add_wider_secondary(CureIdeas& ideas) {
    const std::size_t index = ideas.index_of(Role::telescope);
    const auto* found = ideas.setup.parts[index].body.as<Newtonian>();
    if (found == nullptr) return;
    Newtonian wider = *found;
    constexpr double spare_mm = 2;
    wider.secondary_minor_axis = Millimetres{std::ceil(
        wider.secondary_to_focus() / wider.focal_length * wider.aperture.value + spare_mm)};
    if (wider.secondary_minor_axis.value > found->secondary_minor_axis.value) {
        ideas.add_changed(
            index, wider,
            fmt::format("Fit a secondary of {:.0f} mm", wider.secondary_minor_axis.value),
            "Its shadow is larger; the telescope must be collimated anew.",
            Reversibility::workshop);
    }
    if (found->primary_moved_up.value > 0) {
        Newtonian lower = *found;
        lower.primary_moved_up = Millimetres{0};
        ideas.add_changed(index, lower, "Put the main mirror back where it was made to sit",
                          "The back focus it gave is lost.", Reversibility::workshop);
    }
}

}  // namespace

void add_light_ideas(CureIdeas& ideas) {
    add_wider_parts(ideas);
    add_mirrored_faces(ideas);
    add_better_coatings(ideas);
    add_even_split(ideas);
    add_mirror_diagonals(ideas);
    add_corrected_shifter(ideas);
    add_shifters_ahead(ideas);
    add_wider_secondary(ideas);
}

}  // namespace beamfork
