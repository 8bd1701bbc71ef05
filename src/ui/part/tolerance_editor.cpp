#include "ui/part/tolerance_editor.hpp"

#include <algorithm>
#include <array>

#include "base/text.hpp"
#include "document/edit.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/field_numbers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/tooltip.hpp"

#include <imgui_stdlib.h>

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::array kinds{KnownBy::datasheet, KnownBy::measured, KnownBy::guessed};
constexpr const char* entry_help =
    "Plus or minus how much. Datasheet and guessed: anywhere within ± with equal chance; measured: "
    "± is one standard deviation (GUM, JCGM 100:2008, 4.3). Empty: for a length the usual ± of "
    "what "
    "is known that way is assumed (common practice, no source); other values are taken as exact.";
constexpr const char* known_by_help =
    "Where the value is from. Without a number beside it, that alone says which ± is assumed.";

std::string id_of(const FieldInfo& field, const char* piece) {
    return "tolerance/" + field.key + "/" + piece;
}

// A length of which nothing is said counts as a datasheet's: saying only that says nothing.
void say_kind_only(const PartUi& ui, std::size_t part, const FieldInfo& field, KnownBy kind) {
    const bool says_something =
        kind != KnownBy::datasheet && assumed_tolerance(field, kind).has_value();
    ui.edit(
        SetTolerance{part, field.key,
                     says_something ? std::optional(Tolerance{std::nullopt, kind}) : std::nullopt});
}

void take(const PartUi& ui,
          std::size_t part,
          const FieldInfo& field,
          const std::string& text,
          KnownBy kind) {
    if (text.find_first_not_of(' ') == std::string::npos) {
        say_kind_only(ui, part, field, kind);
        return;
    }
    if (const auto number = parse_typed(text, field.unit)) {
        const SetTolerance edit{part, field.key, Tolerance{*number, kind}};
        ui.state.refusal.reset();
        if (const auto wrong = refusal(ui.document, edit)) {
            ui.state.refusal = Refusal{part, "±" + field.key, *wrong};
        } else {
            ui.edit(edit);
        }
    } else {
        ui.state.refusal = Refusal{part, "±" + field.key, number.error().what};
    }
}

void draw_kind(const PartUi& ui, std::size_t part, const FieldInfo& field, const Tolerance& now) {
    const std::string id = "##" + id_of(field, "known_by");
    const std::string shown = to_word(now.known_by) + (now.plus_minus ? "" : " (assumed)");
    const bool is_open = begin_chooser(id.c_str(), shown, ImGui::GetContentRegionAvail().x);
    ui.describe(id_of(field, "known_by"), shown, known_by_help);
    if (!is_open) return;
    for (const KnownBy kind : kinds) {
        const std::string word = to_word(kind);
        if (chooser_entry(word, kind == now.known_by) && kind != now.known_by) {
            if (now.plus_minus) {
                ui.edit(SetTolerance{part, field.key, Tolerance{now.plus_minus, kind}});
            } else {
                say_kind_only(ui, part, field, kind);
            }
        }
        ui.describe(id_of(field, "known_by") + "/" + word, word, known_by_help);
    }
    ImGui::EndCombo();
}

void draw_line(const PartUi& ui, std::size_t index, const Part& part, const FieldInfo& field) {
    const auto found = part.tolerances.find(field.key);
    const bool is_stated = found != part.tolerances.end();
    const bool has_usual = assumed_tolerance(field).has_value();
    const Tolerance now = is_stated   ? found->second
                          : has_usual ? Tolerance{}
                                      : Tolerance{std::nullopt, KnownBy::measured};
    const auto assumed = assumed_tolerance(field, now.known_by);
    const std::string hint = assumed ? format_exact(*assumed->plus_minus) : "exact";
    const float left = ImGui::GetCursorPosX();
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(shortened(field.label, width * 0.37F - grid(2)).c_str());
    tooltip(field.help);
    ImGui::SameLine(left + width * 0.37F);
    dim_text("±");
    ImGui::SameLine(left + width * 0.37F + grid(3));
    std::string text = now.plus_minus ? entry_text(*now.plus_minus) : "";
    const std::string before = text;
    ImGui::SetNextItemWidth(std::min(grid(15), width * 0.2F));
    const std::string id = "##" + id_of(field, "entry");
    ImGui::InputTextWithHint(id.c_str(), hint.c_str(), &text, ImGuiInputTextFlags_AutoSelectAll);
    const bool is_done = ImGui::IsItemDeactivatedAfterEdit();
    const std::string help = entry_help + ("\n" + typing_help(field.unit));
    ui.describe(id_of(field, "entry"), field.label, help);
    ImGui::SameLine(0, grid(1));
    dim_text(symbol(field.unit));
    if (is_stated || has_usual) {
        ImGui::SameLine(left + width * 0.37F + std::min(grid(15), width * 0.2F) + grid(10));
        draw_kind(ui, index, field, now);
    }
    if (is_done && text != before) take(ui, index, field, text, now.known_by);
    const auto& refusal = ui.state.refusal;
    if (refusal && refusal->part == index && refusal->key == "±" + field.key) {
        wrapped_text(refusal->sentence, colour(Tone::danger));
        ui.note(id_of(field, "refusal"), refusal->sentence);
    }
}

}  // namespace

void draw_tolerances(const PartUi& ui, std::size_t index, const Part& part) {
    const std::string title =
        part.tolerances.empty()
            ? "How well are these known? ±###tolerances"
            : fmt::format("How well are these known? ± of {}###tolerances", part.tolerances.size());
    ImGui::Dummy({1, grid(1)});
    const bool is_open = ImGui::TreeNodeEx(
        title.c_str(), ImGuiTreeNodeFlags_SpanAvailWidth | ImGuiTreeNodeFlags_NoTreePushOnOpen);
    constexpr const char* help =
        "State the ± of lengths, and the study “How sure focus is” says what follows.";
    ui.describe("tolerances", "How well are these known?", help);
    if (!is_open) return;
    for (const FieldInfo& field : kind_of(part.body).fields) {
        const auto value = field_value(part.body, field.key);
        if (!value || !std::holds_alternative<double>(*value)) continue;
        if (!is_relevant(part.body, field)) continue;
        draw_line(ui, index, part, field);
    }
}

}  // namespace beamfork
