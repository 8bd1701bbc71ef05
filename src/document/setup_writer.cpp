#include "base/text.hpp"
#include "document/setup_file.hpp"
#include "document/toml_text.hpp"
#include "document/words.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// Lines of a file with the user's remarks at them.
class Lines {
public:
    void line(const std::string& text, const Remarks& remarks, const std::string& key) {
        const auto found = remarks.find(key);
        if (found == remarks.end()) {
            text_ += text + '\n';
            return;
        }
        const auto& [above, beside] = found->second;
        if (!above.empty()) text_ += above + '\n';
        text_ += text + (beside.empty() ? "" : "  " + beside) + '\n';
    }
    void value(const std::string& key, const std::string& value, const Remarks& remarks) {
        // "" is the heading's place among the remarks, though TOML allows it as a key.
        line(toml_key(key) + " = " + value, key.empty() ? Remarks{} : remarks, key);
    }
    void heading(const std::string& text, const Remarks& remarks) {
        text_ += '\n';
        line(text, remarks, "");
    }
    void unrecognised(const std::map<std::string, std::string>& values, const Remarks& remarks) {
        for (const auto& [key, text] : values)
            value(key, text, remarks);
    }
    void words(const std::string& text) { text_ += text; }
    [[nodiscard]] std::string text() && { return std::move(text_); }

private:
    std::string text_;
};

std::string field_text(const FieldValue& value) {
    if (const auto* number = std::get_if<double>(&value))
        return format_exact(*number == 0 ? 0 : *number);  // never "-0"
    return toml_string(std::get<std::string>(value));
}

// A field that does not count now and holds what it holds by itself would only confuse, unless the user wrote a comment
// at it.
bool is_worth_writing(const PartKind& kind,
                      const FieldInfo& field,
                      const Part& part,
                      const FieldValue& value) {
    if (std::holds_alternative<std::monostate>(value)) return false;
    return is_relevant(part.body, field) || value != field_value(kind.fresh, field.key)
           || part.remarks.contains(field.key);
}

// plus_minus = { length_mm = [0.5, "measured"], travel_mm = "guessed" }
void write_tolerances(Lines& lines, const Part& part) {
    std::string text;
    const auto add = [&](const std::string& key, const std::string& value) {
        text += (text.empty() ? "" : ", ") + toml_key(key) + " = " + value;
    };
    for (const FieldInfo& field : kind_of(part.body).fields) {
        const auto found = part.tolerances.find(field.key);
        if (found == part.tolerances.end()) continue;
        const std::string known_by = toml_string(to_word(found->second.known_by));
        const auto& plus_minus = found->second.plus_minus;
        add(field.key,
            plus_minus ? fmt::format("[{}, {}]", format_exact(*plus_minus), known_by) : known_by);
    }
    for (const auto& [key, value] : part.unrecognised) {
        if (key.starts_with(tolerance_prefix)) add(key.substr(tolerance_prefix.size()), value);
    }
    if (!text.empty()) lines.value(std::string(tolerances_key), "{ " + text + " }", part.remarks);
}

void write_part(Lines& lines, const Part& part) {
    const PartKind& kind = kind_of(part.body);
    const bool has_own_heading = kind.role >= Role::observer;
    lines.heading(has_own_heading ? "[[" + kind.key + "]]" : "[[part]]", part.remarks);
    if (!has_own_heading) lines.value("kind", toml_string(kind.key), part.remarks);
    lines.value("name", toml_string(part.name), part.remarks);
    for (const FieldInfo& field : kind.fields) {
        const auto value = field_value(part.body, field.key);
        BEAMFORK_EXPECTS(value.has_value());
        if (is_worth_writing(kind, field, part, *value)) {
            lines.value(field.key, field_text(*value), part.remarks);
        }
    }
    write_tolerances(lines, part);
    std::map<std::string, std::string> foreign = part.unrecognised;
    std::erase_if(foreign, [](const auto& one) { return one.first.starts_with(tolerance_prefix); });
    lines.unrecognised(foreign, part.remarks);
}

std::string words_text(const std::string& text) {
    return text.find('\n') != std::string::npos ? toml_lines(text) : toml_string(text);
}

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
    lines.value("question", words_text(asks.question), at);
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
        lines.value("caption", words_text(step.caption), at);
        if (!step.notes.empty() || at.contains("notes"))
            lines.value("notes", words_text(step.notes), at);
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
    const bool has_lines = setup.story.find('\n') != std::string::npos;
    if (!setup.story.empty() || remarks.contains("story")) {
        lines.value("story", has_lines ? toml_lines(setup.story) : toml_string(setup.story),
                    remarks);
    }
    lines.unrecognised(document.top.unrecognised, remarks);
    for (const Part& part : setup.parts)
        write_part(lines, part);
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
