#include "scene/tour/tour_quotes.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "parts/shifter.hpp"
#include "parts/splitter_head.hpp"
#include "study/results/results.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// A number and its unit stay in one line of a caption.
constexpr const char* unbroken_space = "\u00A0";

std::string quoted_mm(Millimetres length, int decimals = 1) {
    return format_number(length.value, decimals) + unbroken_space + "mm";
}

std::string quoted_percent(double share) {
    return format_number(100 * share, 0) + unbroken_space + "%";
}

// As the table of results tells it.
std::string quoted(ResultId id, const Report& report) {
    const ResultInfo& result = info_of(id);
    std::string text = result.text(result.value(report));
    if (const auto space = text.find(' '); space != std::string::npos)
        text.replace(space, 1, unbroken_space);
    return text;
}

// By the shares as they are told: nobody sees a difference that rounds away.
std::string brighter_eye(const Brightness& brightness) {
    const double left = std::round(100 * brightness.eyes[0].total());
    const double right = std::round(100 * brightness.eyes[1].total());
    return left > right ? "The left eye" : right > left ? "The right eye" : "Both alike";
}

std::string depth_in_words(double magnitudes_deeper) {
    return format_number(std::abs(magnitudes_deeper), 1) + unbroken_space + "mag "
           + (magnitudes_deeper < 0 ? "less" : "more");
}

std::string focus_in_words(const FocusBudget& budget) {
    if (budget.reaches) return "in focus";
    if (budget.shortfall == Millimetres{}) return "out of both eyes' reach at once";
    return quoted_mm(budget.shortfall)
           + (budget.shortfall_is_inward ? " short" : " beyond its travel");
}

std::string verdict_in_words(const FocusBudget& budget) {
    if (budget.reaches) return "Yes";
    return budget.shortfall_is_inward ? "No, it falls short" : "No, it falls too far";
}

void quote_focus(std::vector<TourQuote>& quotes, const Report& report) {
    const FocusBudget& budget = report.budget;
    quotes.insert(
        quotes.end(),
        {{"focus.shortfall", focus_in_words(budget),
          "by how much the drawtube cannot follow the image"},
         {"focus.verdict", verdict_in_words(budget),
          "whether it reaches focus: Yes, or No and why; for the answer to a question"},
         {"focus.margin_in", quoted_mm(budget.margin_in), "travel left inward of focus"},
         {"focus.margin_out", quoted_mm(budget.margin_out), "travel left outward of focus"},
         {"focus.back_focus", quoted_mm({report.train.back_focus}),
          "the image behind the drawtube racked in: all the light path there is to spend"},
         {"focus.wanted", quoted_mm(budget.wanted_drawtube), "where focus wants the drawtube"},
         {"focus.drawtube", quoted_mm(budget.drawtube), "how far the drawtube stands out"}});
}

void quote_head(std::vector<TourQuote>& quotes, const Setup& setup, const Report& report) {
    const std::size_t at = parts_with_role(setup, Role::splitter).front();
    const auto& head = part_as<SplitterHead>(setup, at);
    double glass = 0;
    double spent = 0;
    double head_spends = 0;
    for (const LightPath& path : report.train.light_paths) {
        glass += path.glass;
        spent += path.counted();
        if (path.part == at) head_spends = path.counted();
    }
    quotes.insert(
        quotes.end(),
        {{"head.name", setup.parts[at].name, "the splitter head's name"},
         {"head.path", quoted_mm({head_spends}), "light path that the head spends"},
         {"head.left", quoted_percent(head.split_share(Eye::left)),
          "share of the cube's light to the left"},
         {"head.right", quoted_percent(head.split_share(Eye::right)), "and to the right"},
         {"chain.path", quoted_mm({spent}), "light path of all parts behind the focuser"},
         {"glass.length", quoted_mm({glass}, 0), "glass on the way to the left eye"},
         {"eye.left", quoted_percent(report.brightness.eyes[0].total()),
          "share of the aperture's light that enters the left eye"},
         {"eye.right", quoted_percent(report.brightness.eyes[1].total()), "and the right eye"},
         {"eye.change", depth_in_words(report.brightness.one_eye_change()),
          "how much less deep each eye sees stars than one eye would without the head"},
         {"eyes.change", depth_in_words(report.brightness.two_eye_change()[0]),
          "the same of both eyes together, by the smaller published gain of two eyes"},
         {"eye.brighter", brighter_eye(report.brightness),
          "which eye gets more light: The left eye, The right eye or Both alike"}});
}

void quote_shifter(std::vector<TourQuote>& quotes, const Setup& setup, const Report& report) {
    const auto& shifters = report.budget.shifters;
    const auto found =
        std::find_if(shifters.begin(), shifters.end(), [&](const ShifterAtWork& one) {
            return setup.parts.at(one.part).body.is<Shifter>();
        });
    const bool has = found != shifters.end();
    const std::string none = "no shifter";
    quotes.insert(
        quotes.end(),
        {{"shifter.name", has ? setup.parts[found->part].name : none, "the shifter's name"},
         {"shifter.factor", has ? format_number(found->factor, 2) + "×" : none,
          "how much it really magnifies, by its real distance from the image"},
         {"shifter.gain", has ? quoted_mm(found->gain) : none, "light path it gives back"},
         {"shifter.distance", has ? quoted_mm(found->image_distance) : none,
          "from its lens to the image, in air"}});
}

void quote_light(std::vector<TourQuote>& quotes, const Setup& setup, const Report& report) {
    const EyeClipping& dark = darker_at_edge(report);
    const auto& ends = dark.rings.back().ends;
    const std::string rim =
        ends.empty() ? "no rim" : end_name(setup, report.train.path(dark.eye), ends.front());
    quotes.insert(quotes.end(),
                  {{"edge.light", quoted(ResultId::edge_light, report),
                    "light at the edge of the field against the objective's, darker eye"},
                   {"edge.rim", rim, "the opening, or leaking face, that takes most of it"},
                   {"middle.aperture", quoted_mm(dark.working_aperture, 0),
                    "aperture that works in the middle of the field"},
                   {"telescope.aperture", quoted_mm({2 * report.train.objective_radius}, 0),
                    "the telescope's aperture"}});
}

void quote_sight(std::vector<TourQuote>& quotes, const Report& report) {
    const EyeImage& image = report.image_quality[0];
    quotes.insert(
        quotes.end(),
        {{"sight.magnification", quoted(ResultId::magnification, report), "magnification"},
         {"sight.true_field", quoted(ResultId::true_field, report), "width of sky seen"},
         {"sight.exit_pupil", quoted(ResultId::exit_pupil, report),
          "width of the beam into each eye"},
         {"sight.focal_ratio", quoted(ResultId::focal_ratio, report),
          "how slim the cone is at the field stop"},
         {"glass.colour", quoted_mm(abs(image.axial_colour()), 3),
          "between the focus of blue and of red"},
         {"glass.depth", quoted_mm(image.depth_of_focus, 3),
          "depth of focus, one way: 2 wavelengths N squared"}});
}

}  // namespace

const EyeClipping& darker_at_edge(const Report& report) {
    const auto& [left, right] = report.clipping;
    return right.edge_relative < left.edge_relative ? right : left;
}

std::vector<TourQuote> tour_quotes(const Setup& setup, const Report& report) {
    std::vector<TourQuote> quotes;
    quote_focus(quotes, report);
    quote_head(quotes, setup, report);
    quote_shifter(quotes, setup, report);
    quote_light(quotes, setup, report);
    quote_sight(quotes, report);
    return quotes;
}

Result<std::string> filled_caption(std::string_view caption, std::span<const TourQuote> quotes) {
    return with_quotes(caption, [quotes](std::string_view name) -> Result<std::string> {
        std::vector<std::string_view> known;
        for (const TourQuote& quote : quotes) {
            if (quote.name == name) return quote.text;
            known.push_back(quote.name);
        }
        return tl::make_unexpected(unknown_quote(name, known));
    });
}

}  // namespace beamfork
