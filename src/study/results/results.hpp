// The results that an observer cares for, each described once: its names, what it is, its unit and decimals, whether more
// of it is better, and how it is read off a report. What is watched while a number is varied, what two setups are
// compared by, what a cure brings, rows, captions and JSON all take it from here. A new result is one entry of the
// table in results.cpp; the comparison tells it by itself, other lists name those that they want.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "parts/field.hpp"

namespace beamfork {

struct Report;

enum class ResultId : std::uint8_t {
    failures,
    poor,
    focus_margin,
    focus_chance,
    combinations,
    edge_light,
    fully_lit,
    working_aperture,
    throughput,
    sharpness,
    edge_sharpness,
    magnification,
    true_field,
    exit_pupil,
    shifter_factor,
    effective_focal_length,
    focal_ratio,
    load,
    height_apart,
};

enum class Better : std::uint8_t {
    more,
    less,
    enough,          ///< more, up to what is enough
    matter_of_taste  ///< neither
};

struct ResultInfo {
    ResultId id = ResultId::failures;
    std::string_view key;    ///< for machines, without its unit: "true_field"
    std::string_view label;  ///< where it stands alone: "Light at the field's edge"
    std::string_view
        short_label{};          ///< under a heading that tells the rest: "Edge"; empty: the label
    std::string_view in_words;  ///< within a sentence: "edge light"
    std::string_view help;      ///< what it is, its formula in words and its source
    FieldUnit unit = FieldUnit::none;
    std::string_view before{};  ///< what leads the number: "f/"
    int decimals = 1;           ///< as printed
    int fine_decimals = 1;      ///< as printed where small changes of it are watched
    Better better = Better::matter_of_taste;
    double notable = 0;  ///< a smaller difference is not told; 0: it is not compared
    /// In its unit; exactly one of the two is given, `of_eye` (0 left, 1 right) where each eye has its own.
    double (*of_both)(const Report&) = nullptr;
    double (*of_eye)(const Report&, std::size_t side) = nullptr;

    [[nodiscard]] std::string_view short_name() const;
    /// Of both eyes the worse one, which has less.
    [[nodiscard]] double value(const Report& report) const;
    /// "true_field_deg", as a key of a file or of JSON is written.
    [[nodiscard]] std::string key_with_unit() const;
    /// "30.0"; a chance is never quite sure: "> 99".
    [[nodiscard]] std::string number(double value) const;
    /// "30.0 mm", "1.20°", "f/12.0".
    [[nodiscard]] std::string text(double value) const;
};

/// In the order of ResultId, in which they are told.
std::span<const ResultInfo> all_results();
const ResultInfo& info_of(ResultId id);

/// Which is better, in a sentence: "More is better."; "" for a matter of taste.
std::string_view better_in_words(const ResultInfo& result);

}  // namespace beamfork
