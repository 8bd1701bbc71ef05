#include "ui/part/field_in_train.hpp"

#include <algorithm>

#include "parts/kind.hpp"
#include "study/findings/report.hpp"
#include "study/focus/stated_pair.hpp"

#include <fmt/format.h>

namespace beamfork {

double first_value(const Ui& ui, std::size_t index, const FieldInfo& field) {
    if (const auto taken = taken_value(ui.setup().parts[index].body, field.key))
        return taken->value;
    if (ui.report != nullptr && field.key == stated_light_path_info().key) {
        for (const LightPath& path : ui.report->train.light_paths) {
            if (path.part == index) return path.derived_as_stated();
        }
    }
    return (field.usual_low + field.usual_high) / 2;
}

FieldInfo within_room(const Ui& ui, std::size_t index, FieldInfo field) {
    if (ui.report == nullptr || field.key != lens_position_key) return field;
    for (const LensRoom& room : ui.report->train.lens_rooms) {
        if (room.part != index) continue;
        field.usual_low = std::max(field.usual_low, room.lowest());
        field.usual_high = std::max(field.usual_low, std::min(field.usual_high, room.highest()));
    }
    return field;
}

namespace {

// Why nothing follows from a value: another one of the part rules.
std::string what_rules(const Part& part, const FieldInfo& field) {
    if (!is_ruled(part.body, field)) return "";
    for (const FieldInfo& other : kind_of(part.body).fields) {
        if (other.key == field.ruled_by)
            return fmt::format("“{}” rules: focus will not move.", other.label);
    }
    return "";
}

}  // namespace

std::string note_below(const Ui& ui, std::size_t index, const FieldInfo& field) {
    const Part& part = ui.setup().parts[index];
    if (field.key != stated_gain_key || ui.report == nullptr) return what_rules(part, field);
    const auto pair = stated_pair_at_work(ui.setup(), ui.report->budget, index);
    return pair ? fmt::format("{}. {}", to_words(*pair), stated_pair_is_physics) : "";
}

}  // namespace beamfork
