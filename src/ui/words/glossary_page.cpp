#include "ui/words/glossary_page.hpp"

#include <algorithm>
#include <string>

#include "scene/words/glossary.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace {

void draw_term(const Ui& ui, const Term& term) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float right = low.x + ImGui::GetContentRegionAvail().x - grid(2);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    text_at(list, low, term.word, colour(Tone::text), TextFace::bold);
    text_ending_at(list, {right, low.y}, term.unit, colour(Tone::text_dim));
    ImGui::Dummy({1, ImGui::GetTextLineHeight()});
    ImGui::Indent(grid(4));
    wrapped_text(term.meaning, colour(Tone::text_dim));
    ui.note("glossary/" + std::string(term.word), term.word, term.meaning);
    ImGui::Unindent(grid(4));
    ImGui::Dummy({1, grid(2)});
}

// Up, Down and the page keys move the list while one types.
void scroll_by_keys() {
    const float line = ImGui::GetTextLineHeight() * 2;
    const float page = ImGui::GetWindowHeight() - line;
    float by = 0;
    if (ImGui::IsKeyPressed(ImGuiKey_DownArrow)) by = line;
    if (ImGui::IsKeyPressed(ImGuiKey_UpArrow)) by = -line;
    if (ImGui::IsKeyPressed(ImGuiKey_PageDown)) by = page;
    if (ImGui::IsKeyPressed(ImGuiKey_PageUp)) by = -page;
    if (by != 0) ImGui::SetScrollY(std::max(0.0F, ImGui::GetScrollY() + by));
}

void draw_terms(const Ui& ui, const std::string& typed, bool is_typed_anew) {
    const float least = ImGui::GetTextLineHeight() * 6;
    const float room = ImGui::GetIO().DisplaySize.y - ImGui::GetTextLineHeight() * 12;
    ImGui::BeginChild("glossary/list", {0, std::max(least, std::min(room, grid(150)))},
                      ImGuiChildFlags_None, ImGuiWindowFlags_NoNavInputs);
    if (is_typed_anew) ImGui::SetScrollY(0);
    scroll_by_keys();
    const auto terms = matching_terms(typed);
    for (const Term* term : terms)
        draw_term(ui, *term);
    if (terms.empty()) dim_text("No word fits. Try fewer letters.");
    ImGui::EndChild();
}

}  // namespace

void draw_glossary_page(const Ui& ui, std::string& typed) {
    if (!begin_question(glossary_popup, grid(150))) return;
    constexpr const char* help = "Letters of a word, or of what it is about.";
    if (ImGui::IsWindowAppearing()) ImGui::SetKeyboardFocusHere();
    ImGui::SetNextItemWidth(-1);
    ImGui::InputTextWithHint("##glossary", help, &typed, ImGuiInputTextFlags_AutoSelectAll);
    const bool is_typed_anew = ImGui::IsItemEdited();
    keep_up_and_down();  // they move the list
    ui.describe("glossary/typed", "Seek a word", help);
    ImGui::Dummy({1, grid(1)});
    draw_terms(ui, typed, is_typed_anew);
    ImGui::Dummy({1, grid(1)});
    if (text_button(ui, "glossary/close", "Close", "Esc")
        || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        typed.clear();
        ImGui::CloseCurrentPopup();
    }
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    dim_text("Up, Down, Page Up, Page Down: through the list");
    ImGui::EndPopup();
}

}  // namespace beamfork
