#include "document/described_setup.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "base/text.hpp"
#include "document/screen_words.hpp"
#include "parts/cassegrain_moving_mirror.hpp"
#include "parts/eyepiece_pair.hpp"
#include "parts/focuser.hpp"
#include "parts/mirror_diagonal.hpp"
#include "parts/newtonian.hpp"
#include "parts/observer.hpp"
#include "parts/prism_diagonal.hpp"
#include "parts/refractor.hpp"
#include "parts/splitter_head.hpp"
#include "parts/target.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

constexpr std::array question_table{
    SetupQuestion{"aperture", "Telescope's aperture",
                  "Clear diameter of the front lens or main mirror. The first number on the tube."},
    SetupQuestion{"focal_length", "Telescope's focal length",
                  "From the lens or mirror to the image of a star. Often on the tube; else "
                  "aperture times the number behind “f/”."},
    SetupQuestion{"back_focus", "Back focus",
                  "How far behind the racked-in drawtube the image of a star lies: the light path "
                  "that all parts together may spend. To measure it: take everything off the "
                  "drawtube, rack it in, point at the Moon and hold paper behind it until the Moon "
                  "is sharp. Never at the Sun: it burns paper and blinds."},
    SetupQuestion{"head_path", "Splitter head's light path",
                  "What the head takes of the back focus, from its entry face to where the "
                  "eyepieces rest. The leaflet says it; about 100 mm to 125 mm."},
    SetupQuestion{"head_width", "Splitter head's prism width",
                  "Side of its prisms: about the clear opening that one sees in its nose."},
    SetupQuestion{"eyepiece_focal_length", "Eyepieces' focal length",
                  "The number on each eyepiece. Shorter magnifies more."},
    SetupQuestion{"apparent_field", "Eyepieces' apparent field",
                  "How wide the view looks to the eye; 50° for simple eyepieces, 65° and more for "
                  "wide ones.",
                  NumberUnit::degree},
    SetupQuestion{"pupil_distance", "Your pupil distance",
                  "Between the middles of your two pupils when you look far away. Your optician "
                  "knows it."},
};

// The widest field stop that a barrel of 31.7 mm has room for. Common practice, no source.
constexpr double widest_stop_mm = 27;

const SetupQuestion* find_question(const std::string& key) {
    const auto* const found =
        std::find_if(question_table.begin(), question_table.end(),
                     [&](const SetupQuestion& question) { return key == question.key; });
    return found == question_table.end() ? nullptr : found;
}

// Collects the first trouble, so that parts can be described one value after the other.
class Describer {
public:
    explicit Describer(const SetupAnswers& answers) : answers_(answers) {}

    [[nodiscard]] double value(const std::string& key) const {
        const auto known = answers_.numbers.find(key);
        return known != answers_.numbers.end() ? known->second : usual_value(answers_, key).value;
    }

    void set(Part& part, const char* field, double value) {
        auto changed = with_field_unchecked(part.body, field, value);
        if (changed) {
            part.body = *std::move(changed);
        } else if (!trouble_) {
            complain(part, changed.error().what);
        }
    }
    /// From the answer; where there is none, with the +- of a guess.
    void ask(Part& part, const char* field, const std::string& key) {
        set(part, field, value(key));
        if (answers_.numbers.contains(key)) return;
        const UsualValue usual = usual_value(answers_, key);
        part.tolerances[field] = {usual.plus_minus, KnownBy::guessed};
        const SetupQuestion& question = *find_question(key);
        assumed_.push_back(fmt::format("{} {} ± {} {}", question.ask, format_exact(usual.value),
                                       format_exact(usual.plus_minus),
                                       question.unit == NumberUnit::degree ? "°" : "mm"));
    }
    void assume(std::string what) { assumed_.push_back(std::move(what)); }
    void finish(const Part& part) {
        if (const auto wrong = contradiction(part.body); wrong && !trouble_) complain(part, *wrong);
    }

    [[nodiscard]] const SetupAnswers& answers() const { return answers_; }
    [[nodiscard]] const std::optional<Error>& trouble() const { return trouble_; }
    [[nodiscard]] const std::vector<std::string>& assumed() const { return assumed_; }

private:
    void complain(const Part& part, std::string_view wrong) {
        trouble_ =
            Error{ErrorCode::bad_input, part.name + ": " + in_screen_words(part.body, wrong), {}};
    }

    const SetupAnswers& answers_;
    std::optional<Error> trouble_;
    std::vector<std::string> assumed_;
};

// What is usual for a Newtonian of that size: 15 mm of room round the mirror, a focuser 45 mm high, a secondary
// that lights 10 mm at the focus whole. Common practice, no source; the secondary by similar triangles.
void shape_newtonian(Describer& make, Part& part) {
    const double aperture = make.value("aperture");
    const double focal_length = make.value("focal_length");
    const double tube = aperture + 30;
    const double axis = std::clamp(tube / 2 + 45, 40.0, 800.0);
    const double to_focus = axis + make.value("back_focus");
    const double secondary =
        (to_focus * aperture + 10 * (focal_length - to_focus)) / std::max(focal_length, 1.0);
    make.set(part, "tube_diameter_mm", tube);
    make.set(part, "axis_to_drawtube_mm", axis);
    make.set(part, "secondary_minor_axis_mm",
             std::clamp(secondary, 10.0, std::max(10.0, 0.48 * aperture)));
}

// Proportions of the kind's own values, with the main mirror near f/2 and a small mirror a seventh wider than the
// cone that comes down to it.
void shape_cassegrain(Describer& make, Part& part) {
    const double aperture = make.value("aperture");
    const double focal_length = make.value("focal_length");
    const double primary = std::clamp(2 * aperture, 100.0, 2500.0);
    const double rear = 0.55 * aperture;
    const double before_focus =
        (primary + rear + make.value("back_focus")) / (1 + focal_length / primary);
    const double secondary =
        std::clamp(1.15 * aperture * before_focus / primary, 0.25 * aperture, 0.49 * aperture);
    make.set(part, "primary_focal_length_mm", primary);
    make.set(part, "rear_face_mm", rear);
    make.set(part, "secondary_diameter_mm", secondary);
    make.set(part, "baffle_diameter_mm", std::max(8.0, std::min(0.19 * aperture, secondary - 5)));
    make.set(part, "baffle_length_mm", 0.5 * aperture);
    make.set(part, "rear_port_diameter_mm", std::max(8.0, 0.19 * aperture));
    make.set(part, "rear_port_position_mm", 0.35 * aperture);
    make.set(part, "primary_travel_up_mm", 0.04 * aperture);
    make.set(part, "primary_travel_down_mm", 0.02 * aperture);
}

Part telescope_of(Describer& make) {
    Part part{"Telescope", Refractor{}, {}};
    const TelescopeAnswer kind = make.answers().telescope;
    if (kind == TelescopeAnswer::newtonian) part.body = Newtonian{};
    if (kind == TelescopeAnswer::moving_mirror) part.body = CassegrainMovingMirror{};
    make.ask(part, "aperture_mm", "aperture");
    make.ask(part, "focal_length_mm", "focal_length");
    make.ask(part, "back_focus_mm", "back_focus");
    if (kind == TelescopeAnswer::newtonian) shape_newtonian(make, part);
    if (kind == TelescopeAnswer::moving_mirror) shape_cassegrain(make, part);
    make.finish(part);
    return part;
}

struct MirrorSize {
    double entry_leg, exit_leg, clear;
};

// Legs of diagonals by barrel size: common practice, no source.
std::optional<Part> diagonal_of(Describer& make) {
    DiagonalAnswer kind = make.answers().diagonal;
    const bool is_known = kind != DiagonalAnswer::unknown;
    if (!is_known) {
        const bool looks_sideways = make.answers().telescope == TelescopeAnswer::newtonian;
        kind = looks_sideways ? DiagonalAnswer::none : DiagonalAnswer::prism;
        make.assume(looks_sideways ? "no diagonal" : "a prism diagonal, legs 22 ± 10 mm");
    }
    if (kind == DiagonalAnswer::none) return std::nullopt;
    Part part{"Diagonal", PrismDiagonal{}, {}};
    if (kind != DiagonalAnswer::prism) {
        const MirrorSize size =
            kind == DiagonalAnswer::small_mirror ? MirrorSize{35, 35, 27} : MirrorSize{55, 50, 46};
        part.body = MirrorDiagonal{};
        make.set(part, "entry_leg_mm", size.entry_leg);
        make.set(part, "exit_leg_mm", size.exit_leg);
        make.set(part, "clear_diameter_mm", size.clear);
    }
    for (const char* leg : {"entry_leg_mm", "exit_leg_mm"})
        part.tolerances[leg] = {is_known ? 5.0 : 10.0, KnownBy::guessed};
    make.finish(part);
    return part;
}

Part head_of(Describer& make) {
    Part part{"Splitter head", SplitterHead{}, {}};
    const double width = make.value("head_width");
    make.ask(part, "prism_width_mm", "head_width");
    make.ask(part, "stated_light_path_mm", "head_path");
    make.set(part, "entry_clear_diameter_mm", width);
    make.set(part, "exit_clear_diameter_mm", std::max(width - 1, 5.0));
    make.set(part, "arm_offset_mm", std::max(37.0, width));
    make.finish(part);
    return part;
}

// The field stop of an eyepiece without distortion that grows with the angle: f times the field in radians.
Part eyepieces_of(Describer& make) {
    Part part{"Eyepiece pair", EyepiecePair{}, {}};
    make.ask(part, "focal_length_mm", "eyepiece_focal_length");
    make.ask(part, "apparent_field_deg", "apparent_field");
    const double stop =
        make.value("eyepiece_focal_length") * make.value("apparent_field") * std::numbers::pi / 180;
    make.set(part, "field_stop_mm", std::clamp(stop, 1.0, widest_stop_mm));
    make.finish(part);
    return part;
}

}  // namespace

std::span<const SetupQuestion> setup_questions() { return question_table; }

UsualValue usual_value(const SetupAnswers& answers, const std::string& key) {
    const bool refracts = answers.telescope == TelescopeAnswer::refractor;
    const bool newtonian = answers.telescope == TelescopeAnswer::newtonian;
    if (key == "aperture") return refracts ? UsualValue{100, 20} : UsualValue{200, 50};
    if (key == "focal_length") {
        const auto known = answers.numbers.find("aperture");
        const double aperture =
            known != answers.numbers.end() ? known->second : usual_value(answers, "aperture").value;
        const double length = aperture * (refracts ? 7 : newtonian ? 5 : 10);
        return {length, std::round(length / 10)};
    }
    if (key == "back_focus") {
        if (refracts) return {120, 40};
        return newtonian ? UsualValue{30, 15} : UsualValue{130, 40};
    }
    if (key == "head_path") return {110, 15};
    if (key == "head_width") return {25, 4};
    if (key == "eyepiece_focal_length") return {25, 5};
    if (key == "apparent_field") return {50, 10};
    BEAMFORK_EXPECTS(key == "pupil_distance");
    return {63, 6};
}

Result<Setup> described_setup(const SetupAnswers& answers) {
    for (const auto& [key, value] : answers.numbers)
        BEAMFORK_EXPECTS(find_question(key) != nullptr);
    Describer make(answers);
    Setup setup;
    setup.title = "My setup";
    setup.parts.push_back(telescope_of(make));
    setup.parts.push_back({"Focuser", Focuser{}, {}});
    if (auto diagonal = diagonal_of(make)) setup.parts.push_back(*std::move(diagonal));
    setup.parts.push_back(head_of(make));
    setup.parts.push_back(eyepieces_of(make));
    Part observer{"Observer", Observer{}, {}};
    make.ask(observer, "pupil_distance_mm", "pupil_distance");
    setup.parts.push_back(std::move(observer));
    setup.parts.push_back({"Sky", Target{}, {}});
    if (make.trouble()) return tl::unexpected(*make.trouble());
    setup.story = make.assumed().empty()
                      ? "Described by its owner. What was not asked for has usual values."
                      : fmt::format("Assumed, because it was not known: {}. Measure what the "
                                    "panel “Uncertainty” names first.",
                                    fmt::join(make.assumed(), "; "));
    return with_valid_choice(std::move(setup));
}

}  // namespace beamfork
