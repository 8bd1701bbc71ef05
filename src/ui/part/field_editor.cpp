#include "ui/part/field_editor.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "desk/desk_requests.hpp"
#include "document/edit.hpp"
#include "study/tune/tune_study.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/field_numbers.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace {

// The columns of a line, in pixels from its left end.
struct Columns {
    float tick;
    float slider;
    float entry;
    float unit;
    float reset;
    float line_height;
};

Columns columns() {
    const float width = ImGui::GetContentRegionAvail().x;
    const float side = ImGui::GetFrameHeight();
    Columns at{};
    at.reset = width - side;
    at.unit = at.reset - grid(5.5F);
    at.entry = at.unit - std::min(grid(15), width * 0.2F);
    at.tick = std::floor(width * 0.37F);
    at.slider = at.tick;
    at.line_height = side;
    return at;
}

std::string help_of(const FieldInfo& info) {
    const std::string range = accepted_range(info);
    return range.empty() ? info.help : info.help + "\n" + range;
}

std::string id_of(const EditedField& field, const char* piece) {
    return "field/" + field.info.key + "/" + piece;
}

void ask_for(const PartUi& ui, const EditedField& field, FieldValue value) {
    if (value == field.value) return;
    const SetField edit{field.part, field.info.key, std::move(value)};
    ui.state.refusal.reset();
    if (const auto sentence = refusal(ui.document, edit)) {
        ui.state.refusal = Refusal{field.part, field.info.key, *sentence};
    } else {
        ui.edit(edit);
    }
}

void draw_slider(const PartUi& ui, const EditedField& field, double value, float width) {
    double moved = value;  // ImGui gets a copy, never the model
    const double low = field.info.usual_low;
    const double high = field.info.usual_high;
    ImGuiSliderFlags flags = ImGuiSliderFlags_NoInput | ImGuiSliderFlags_NoRoundToFormat;
    if (low > 0 && high / low >= 50) flags |= ImGuiSliderFlags_Logarithmic;
    ImGui::SetNextItemWidth(width);
    const std::string id = "##" + id_of(field, "slider");
    const bool changed =
        ImGui::SliderScalar(id.c_str(), ImGuiDataType_Double, &moved, &low, &high, "", flags);
    ui.one_gesture();
    ui.describe(id_of(field, "slider"), field.info.label, help_of(field.info));
    // A step never leads past the slider's end, which may be a face of glass.
    if (changed) ask_for(ui, field, std::clamp(snapped(field.info, moved), low, high));
}

// What the arrow keys do to the text while it is edited.
struct ArrowKeys {
    const FieldInfo& info;
    double value;                   ///< if the text cannot be read
    std::optional<double> stepped;  ///< an arrow key was pressed in this frame
};

int step_by_arrow(ImGuiInputTextCallbackData* data) {
    auto& keys = *static_cast<ArrowKeys*>(data->UserData);
    const ImGuiIO& io = ImGui::GetIO();
    const double step = key_step(keys.info, io.KeyShift, io.KeyCtrl);
    const double from =
        parse_typed({data->Buf, static_cast<std::size_t>(data->BufTextLen)}, keys.info.unit)
            .value_or(keys.value);
    keys.stepped = stepped(keys.info, from, data->EventKey == ImGuiKey_UpArrow ? step : -step);
    data->DeleteChars(0, data->BufTextLen);
    data->InsertChars(0, entry_text(*keys.stepped).c_str());
    return 0;
}

// All steps of one held key are one undo step.
void step_value(const PartUi& ui, const EditedField& field, const ArrowKeys& keys) {
    bool& is_open = ui.kept.gesture_open;
    if (keys.stepped) {
        if (!is_open) ui.desk_requests.gesture_began = true;
        is_open = true;
        ask_for(ui, field, *keys.stepped);
    } else if (is_open && ImGui::IsItemActive() && !ImGui::IsKeyDown(ImGuiKey_UpArrow)
               && !ImGui::IsKeyDown(ImGuiKey_DownArrow)) {
        ui.desk_requests.gesture_ended = true;
        is_open = false;
    }
}

void draw_entry(const PartUi& ui, const EditedField& field, double value, float width) {
    const std::string before = entry_text(value);
    std::string text = before;
    ImGui::SetNextItemWidth(width);
    const std::string id = "##" + id_of(field, "entry");
    const float room = width - 2 * ImGui::GetStyle().FramePadding.x;
    const bool is_typing = is_typed_into(id.c_str());
    const float indent = is_typing ? 0 : std::max(0.0F, room - text_width(before));
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {ImGui::GetStyle().FramePadding.x + indent,
                                                     ImGui::GetStyle().FramePadding.y});
    ArrowKeys keys{field.info, value, {}};
    ImGui::InputText(id.c_str(), &text,
                     ImGuiInputTextFlags_AutoSelectAll | ImGuiInputTextFlags_CallbackHistory,
                     step_by_arrow, &keys);
    ImGui::PopStyleVar();
    const bool is_done = ImGui::IsItemDeactivatedAfterEdit();
    step_value(ui, field, keys);
    const std::string help = help_of(field.info) + "\n" + entry_hint(field.info);
    ui.describe(id_of(field, "entry"), field.info.label, help);
    if (!is_done || text == before) return;
    if (const auto number = parse_typed(text, field.info.unit)) {
        ask_for(ui, field, *number);
    } else {
        ui.state.refusal = Refusal{field.part, field.info.key, number.error().what};
    }
}

// What the field is; for a number that can be varied, the way to its curve.
void draw_label_help(const PartUi& ui, const EditedField& field) {
    const bool has_curve = !order_fault(ui.setup())
                           && is_tunable(ui.setup(), ui.setup().chosen, field.part, field.info);
    const std::string help =
        help_of(field.info) + (has_curve ? "\nRight click: its curve in the study “Tune”." : "");
    if (has_curve && ImGui::IsItemClicked(ImGuiMouseButton_Right)) {
        ui.state.curve_wanted = name_of(ui.setup(), {field.part, field.info.key});
    }
    ui.describe(id_of(field, "label"), field.info.label, help);
}

void draw_number(const PartUi& ui, const EditedField& field, const Columns& at, float left) {
    const double value = std::get<double>(field.value);
    const float gap = grid(2);
    ImGui::SameLine(left + at.slider);
    const float tick_room =
        field.info.type == FieldType::optional_number ? at.line_height + grid(1) : 0;
    if (tick_room > 0) ImGui::SameLine(left + at.slider + tick_room);
    draw_slider(ui, field, value, at.entry - at.slider - tick_room - gap);
    ImGui::SameLine(left + at.entry);
    draw_entry(ui, field, value, at.unit - at.entry - grid(1));
    ImGui::SameLine(left + at.unit);
    dim_text(symbol(field.info.unit));
}

void draw_optional(const PartUi& ui, const EditedField& field, const Columns& at, float left) {
    bool stated = std::holds_alternative<double>(field.value);
    ImGui::SameLine(left + at.tick);
    const std::string id = "##" + id_of(field, "stated");
    const std::string help = field.info.help + "\nTicked: stated. Not ticked: left open.";
    if (ImGui::Checkbox(id.c_str(), &stated)) {
        ask_for(ui, field,
                stated ? FieldValue{snapped(field.info, field.first_value)} : FieldValue{});
    }
    ui.describe(id_of(field, "stated"), field.info.label, help);
    if (std::holds_alternative<double>(field.value)) {
        draw_number(ui, field, at, left);
    } else {
        ImGui::SameLine(left + at.tick + at.line_height + grid(1));
        const std::string words =
            field.unstated.empty() ? "not stated" : "unstated: " + field.unstated;
        wrapped_text(words, colour(Tone::text_dim));
        ui.note(id_of(field, "unstated"), words, field.info.help);
    }
}

void draw_choice(const PartUi& ui, const EditedField& field, const Columns& at, float left) {
    const auto& chosen = std::get<std::string>(field.value);
    ImGui::SameLine(left + at.slider);
    const std::string id = "##" + id_of(field, "choice");
    const bool is_open = begin_chooser(id.c_str(), chosen, at.reset - at.slider - grid(1));
    ui.describe(id_of(field, "choice"), field.info.label, field.info.help);
    if (!is_open) return;
    for (const std::string& word : field.info.choices) {
        if (chooser_entry(word, word == chosen)) ask_for(ui, field, word);
        ui.describe(id_of(field, "choice") + "/" + word, word, field.info.help);
    }
    ImGui::EndCombo();
}

void draw_reset(const PartUi& ui, const EditedField& field, const Columns& at, float left) {
    if (field.value == field.fresh) return;
    ImGui::SameLine(left + at.reset);
    const auto* number = std::get_if<double>(&field.fresh);
    const auto* word = std::get_if<std::string>(&field.fresh);
    const std::string fresh = number != nullptr ? with_symbol(entry_text(*number), field.info.unit)
                              : word != nullptr ? *word
                                                : "not stated";
    if (icon_button(ui, id_of(field, "reset"), Icon::reset, "Back to the usual value: " + fresh)) {
        ask_for(ui, field, field.fresh);
    }
}

}  // namespace

void draw_field(const PartUi& ui, const EditedField& field) {
    const Columns at = columns();
    const float left = ImGui::GetCursorPosX();
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(shortened(field.info.label, at.slider - grid(2)).c_str());
    draw_label_help(ui, field);
    switch (field.info.type) {
    case FieldType::number: draw_number(ui, field, at, left); break;
    case FieldType::optional_number: draw_optional(ui, field, at, left); break;
    case FieldType::choice: draw_choice(ui, field, at, left); break;
    }
    draw_reset(ui, field, at, left);
    if (!field.note.empty()) {
        wrapped_text(field.note, colour(Tone::text_dim));
        ui.note(id_of(field, "note"), field.note);
    }
    const auto& refusal = ui.state.refusal;
    if (refusal && refusal->part == field.part && refusal->key == field.info.key) {
        wrapped_text(refusal->sentence, colour(Tone::danger));
        ui.note(id_of(field, "refusal"), refusal->sentence);
    }
}

}  // namespace beamfork
