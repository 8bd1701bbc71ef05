#include "base/text.hpp"
#include "document/setup_file.hpp"
#include "document/toml_text.hpp"
#include "document/write_entry.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// { target_mm = [0, 20, 700], distance_mm = 400, yaw_deg = 40, pitch_deg = 10 }
void write_camera(Lines& lines, const TourStep& step) {
    if (!step.camera) return;
    const auto& [target, distance, yaw, pitch] = *step.camera;
    std::string text =
        fmt::format("{{ target_mm = [{}, {}, {}], distance_mm = {}, yaw_deg = {}, pitch_deg = {}",
                    format_exact(target[0]), format_exact(target[1]), format_exact(target[2]),
                    format_exact(distance), format_exact(yaw), format_exact(pitch));
    for (const auto& [key, value] : step.extras.unrecognised) {
        if (key.starts_with(camera_prefix))
            text += fmt::format(", {} = {}", toml_key(key.substr(camera_prefix.size())), value);
    }
    lines.value("camera", text + " }", step.extras.remarks);
}

std::string list_text(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words)
        text += (text.empty() ? "" : ", ") + toml_string(word);
    return "[" + text + "]";
}

void write_question(Lines& lines, const TourQuestion& asks, const Remarks& at) {
    lines.value("question", toml_words(asks.question), at);
    lines.value("answers", list_text(asks.answers), at);
    lines.value("right",
                asks.right_value.empty() ? std::to_string(asks.right + 1)
                                         : toml_string(asks.right_value),
                at);
}

// ["motion", "pupil"]
void write_show(Lines& lines, const TourStep& step) {
    if (step.show.empty() && !step.extras.remarks.contains("show")) return;
    std::vector<std::string> names;
    for (const TourShow show : step.show)
        names.emplace_back(name_of(show));
    lines.value("show", list_text(names), step.extras.remarks);
}

void write_tour(Lines& lines, const Tour& tour) {
    const Remarks& remarks = tour.extras.remarks;
    lines.heading("[[tour]]", remarks);
    lines.value("name", toml_string(tour.name), remarks);
    lines.value("title", toml_string(tour.title), remarks);
    lines.unrecognised(tour.extras.unrecognised, remarks);
    for (const TourStep& step : tour.steps) {
        const Remarks& at = step.extras.remarks;
        lines.heading("[[tour.step]]", at);
        lines.value("view", toml_string(name_of(step.view)), at);
        write_camera(lines, step);
        write_show(lines, step);
        if (!step.lit.empty() || at.contains("lit")) lines.value("lit", list_text(step.lit), at);
        if (step.asks) write_question(lines, *step.asks, at);
        lines.value("caption", toml_words(step.caption), at);
        if (!step.notes.empty() || at.contains("notes"))
            lines.value("notes", toml_words(step.notes), at);
        std::map<std::string, std::string> foreign = step.extras.unrecognised;
        std::erase_if(foreign,
                      [](const auto& one) { return one.first.starts_with(camera_prefix); });
        lines.unrecognised(foreign, at);
    }
}

}  // namespace

std::string write_setup(const Document& document) {
    const Setup& setup = document.setup;
    const Remarks& remarks = document.top.remarks;
    Lines lines;
    lines.value("beamfork", std::to_string(file_version), remarks);
    lines.value("title", toml_string(setup.title), remarks);
    if (!setup.story.empty() || remarks.contains("story")) {
        lines.value("story", toml_words(setup.story), remarks);
    }
    lines.unrecognised(document.top.unrecognised, remarks);
    for (const Part& part : setup.parts)
        write_entry(lines, part);
    for (const Tour& tour : document.tours)
        write_tour(lines, tour);
    lines.heading("[chosen]", document.chosen.remarks);
    const auto choice = [&](const std::string& key, std::size_t index) {
        lines.value(key, toml_string(setup.parts.at(index).name), document.chosen.remarks);
    };
    choice("eyepiece", setup.chosen.eyepiece);
    choice("observer", setup.chosen.observer);
    choice("target", setup.chosen.target);
    lines.unrecognised(document.chosen.unrecognised, document.chosen.remarks);
    if (!document.last_lines.empty()) lines.words("\n" + document.last_lines + '\n');
    return std::move(lines).text();
}

}  // namespace beamfork
