#include "scene/two_eyes/alignment_rows.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "parts/eyepiece_pair.hpp"
#include "study/findings/report.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr const char* limit_source =
    " Limits: ISO 14133-2 (comfortable) and ISO 14133-1 (the end), 2003, as tabled by A. Koehler, "
    "“Binokulare Justierung”; good is a third of the first (a choice).";
constexpr const char* practice_source =
    " Limits: common practice, no source; twice that as the end is a choice.";

std::string verdict_word(Merging merging) {
    switch (merging) {
    case Merging::good: return "good";
    case Merging::comfortable: return "comfortable";
    case Merging::hard: return "hard";
    case Merging::impossible: return "too much";
    }
    return "";
}

ColourRole verdict_role(Merging merging) {
    switch (merging) {
    case Merging::good: return ColourRole::good;
    case Merging::comfortable: return ColourRole::dimension;
    case Merging::hard: return ColourRole::shortfall;
    case Merging::impossible: return ColourRole::clipped;
    }
    return ColourRole::dimension;
}

struct Measure {
    std::string label;
    double value;
    int decimals;
    const char* unit;
    Merging merging;
    AlignmentLimit<double> limit;  // in `unit`
    std::string help;
};

template <class Unit>
AlignmentLimit<double> in_numbers(const AlignmentLimit<Quantity<Unit>>& limit) {
    return {limit.fair.value, limit.usual.value};
}

AlignmentRow row_of(const Measure& measure) {
    return {measure.label,
            format_number(std::abs(measure.value), measure.decimals),
            measure.unit,
            fmt::format("{:.0f} / {:.0f}", measure.limit.fair, measure.limit.usual),
            verdict_word(measure.merging),
            verdict_role(measure.merging),
            measure.help};
}

std::vector<AlignmentRow> value_rows(const Report& report) {
    const Alignment& alignment = report.alignment;
    const Misalignment& seen = alignment.seen;
    const bool inward = seen.inward > Arcminutes{};
    std::vector<AlignmentRow> rows{
        row_of(
            {inward ? "Eyes must turn inward" : "Eyes must turn outward", seen.inward.value, 1, "′",
             alignment.sideways(), in_numbers(inward ? inward_limit : outward_limit),
             std::string("How far apart sideways the two images look: shift of each traced middle "
                         "ray on its field stop over the eyepiece's focal length, left less right. "
                         "Eyes turn inward easily, as for something near, and outward hardly.")
                 + limit_source}),
        row_of({seen.left_up < Arcminutes{} ? "Right image higher" : "Left image higher",
                seen.left_up.value, 1, "′", alignment.height(), in_numbers(height_limit),
                std::string("How far apart in height the two images look; eyes can follow very "
                            "little of it.")
                    + limit_source}),
        row_of({"Turned against each other", seen.rotation.value, 2, "°", alignment.rotation(),
                in_numbers(rotation_limit),
                std::string("Turn of the left image against the right one, from traced rays beside "
                            "the middle one.")
                    + practice_source}),
        row_of({seen.size < 0 ? "Right image larger" : "Left image larger", seen.size, 2, "%",
                alignment.size(), size_limit,
                std::string("Ratio of the two images' sizes, from the same rays; arms of unequal "
                            "length behind a shifter make it.")
                    + practice_source}),
    };
    rows.push_back({"Focus apart", format_number(abs(alignment.focus_difference).value, 2), "D",
                    "–", "by seats", ColourRole::dimension,
                    "How much the eyes' focus differs from what each is set to: difference of the "
                    "images' places over the square of the eyepiece's focal length in metres. Each "
                    "seat's own focusing takes it up."});
    rows.push_back({"Light apart", format_number(100 * report.brightness.difference(), 0), "%",
                    "20", report.brightness.difference() < 0.2 ? "good" : "hard",
                    report.brightness.difference() < 0.2 ? ColourRole::good : ColourRole::shortfall,
                    "How much less light the dimmer eye gets. Limit: common practice, no source."});
    return rows;
}

ToleranceRow tolerance_row(const Setup& setup, const ErrorAllowance& tolerance) {
    const bool is_turn = tolerance.unit == FieldUnit::arcminute;
    const int decimals = is_turn ? 1 : 3;
    ToleranceRow row;
    row.label = tolerance.place + ": " + tolerance.error;
    row.unit = std::string(symbol(tolerance.unit));
    row.part = tolerance.part;
    row.stated = tolerance.stated == 0 ? "–" : format_number(tolerance.stated, decimals);
    if (std::isinf(tolerance.allowed)) {
        row.allowed = "any";
        row.help = "It moves neither image.";
        return row;
    }
    row.allowed = format_number(tolerance.allowed, decimals);
    row.used = std::abs(tolerance.stated) / tolerance.allowed;
    row.help = fmt::format(
        "{} of the {}: {} {} of it alone reach the limit for {}, by tracing it {}. Moves the image "
        "{:.2f}′ sideways and {:.2f}′ in height for each {}.",
        tolerance.error, setup.parts.at(tolerance.part).name, row.allowed, row.unit,
        tolerance.limited_by, is_turn ? "turned by 1′" : "shifted by 0.02 mm",
        abs(tolerance.per_unit.inward).value * (is_turn ? 1 : 0.1),
        abs(tolerance.per_unit.left_up).value * (is_turn ? 1 : 0.1), is_turn ? "1′" : "0.1 mm");
    return row;
}

std::string sentence_of(const Alignment& alignment) {
    switch (alignment.worst()) {
    case Merging::good: return "The two images merge with ease.";
    case Merging::comfortable: return "The two images merge, with a little work for the eyes.";
    case Merging::hard: return "The two images are hard to merge for long.";
    case Merging::impossible: return "The two images do not merge.";
    }
    return "";
}

// Common practice, no source; the lengths are this setup's.
std::vector<std::string> collimation_check(const Setup& setup, const Report& report) {
    const Millimetres focal_length =
        part_as<EyepiecePair>(setup, report.train.choice.eyepiece).focal_length;
    const Millimetres limit = focal_length * std::tan(to_radians(height_limit.fair).value);
    return {
        ("Never near the Sun. Let the telescope cool, and choose a bright star high up; follow "
         "it, or take a pole star."),
        ("Without the head: one strong eyepiece straight in the focuser, or behind the diagonal. "
         "Put the star in the middle of the field and turn it slightly out of focus. If its "
         "rings are not round about one middle, the telescope is out of collimation: adjust it "
         "first, by its maker's instructions."),
        ("Put the head in, the star in the middle of the left field, slightly out of focus. Look "
         "with the left eye, then with the right one. Rings that are off in both fields alike "
         "still come from the telescope; rings that differ between the eyes come from the head."),
        fmt::format("Focus, the star in the middle of the left field. In the right one it may "
                    "stand {:.2f} mm from the middle of its field stop, up or down: {:.0f}′ behind "
                    "these {:.0f} mm eyepieces. More is tiring.",
                    limit.value, height_limit.fair.value, focal_length.value),
        ("Turn each eyepiece half round in its seat, then swap the two. An error that goes with "
         "an eyepiece is its own, or its barrel's play in the seat; one that stays is the "
         "head's."),
        ("Compare what stays with the list of tolerances: the first ones move the image most. "
         "Prisms are set by the head's maker, unless it has screws for it; never open a head "
         "that is not meant to be opened."),
    };
}

}  // namespace

AlignmentRows alignment_rows(const Setup& setup, const Report& report) {
    const Alignment& alignment = report.alignment;
    AlignmentRows rows;
    rows.sentence = sentence_of(alignment);
    rows.values = value_rows(report);
    rows.left_x = alignment.seen.inward.value;
    rows.left_y = alignment.seen.left_up.value;
    rows.turned = alignment.seen.rotation.value;
    rows.comfortable = {-outward_limit.fair.value, inward_limit.fair.value,
                        height_limit.fair.value};
    rows.end = {-outward_limit.usual.value, inward_limit.usual.value, height_limit.usual.value};
    rows.reach = std::max({1.35 * inward_limit.usual.value, 1.1 * std::abs(rows.left_x),
                           1.1 * std::abs(rows.left_y)});
    for (const ErrorAllowance& tolerance : alignment.tolerances)
        rows.tolerances.push_back(tolerance_row(setup, tolerance));
    rows.collimation_check = collimation_check(setup, report);
    return rows;
}

}  // namespace beamfork
