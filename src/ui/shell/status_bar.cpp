#include "scene/words/glossary.hpp"
#include "train/setup.hpp"
#include "ui/actions/keys_page.hpp"
#include "ui/kit/icons.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/shell/notice_bar.hpp"
#include "ui/words/glossary_page.hpp"

namespace beamfork {

namespace {

struct PageButton {
    const char* name;
    const char* page;  ///< the popup that it opens
    std::string_view words;
    Icon icon;
    float from_right;  ///< pixels left of the bar's right end
    const char* help;
};

float width_of(std::string_view words) { return text_width(words) + grid(12); }

void draw_page_button(const ShellUi& ui, const Area& area, const PageButton& button) {
    const float line = ImGui::GetTextLineHeight();
    const float top = area.top + (area.height - line) / 2;
    const float width = width_of(button.words);
    const float left = area.right() - button.from_right - width;
    ImGui::SetCursorScreenPos({left, top});
    const bool pressed = ImGui::InvisibleButton(button.name, {width - grid(2), line});
    const bool hot =
        ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
    ui.describe(button.name, button.words, button.help);
    const ImU32 ink = colour(hot ? Tone::text : Tone::text_dim);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    draw_icon(list, button.icon, {left + line / 2, top + line / 2}, line * 0.85F, ink);
    text_at(list, {left + line + grid(1.5F), top}, button.words, ink);
    const bool is_wanted = ui.state.page_wanted == button.page;  // by key or by name
    if (is_wanted) ui.state.page_wanted.clear();
    if (pressed || is_wanted) ImGui::OpenPopup(button.page);
}

// Of the part under the pointer, else the last message, else what the word under the pointer is, else the mouse.
std::string words_of_foot(const ShellUi& ui) {
    const auto part = ui.kept.hovered_part_before;
    if (part >= 0 && static_cast<std::size_t>(part) < ui.setup().parts.size()) {
        const Part& hovered = ui.setup().parts[static_cast<std::size_t>(part)];
        return hovered.name + " – " + kind_of(hovered.body).help;
    }
    if (!ui.desk.message.text.empty()) return ui.desk.message.text;
    if (const Term* term = term_in(ui.kept.pointed_label))
        return ui.keys_text("window/glossary") + " explains “" + std::string(term->word) + "”";
    return "Drag: turn   Right drag: shift   Wheel: nearer   Click: select   Double click: "
           "frame   1–6: views";
}

}  // namespace

void draw_status_bar(const ShellUi& ui, const Area& area) {
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(2), grid(0.5F)});
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {grid(2), 0});
    begin_area("status_bar", area, Tone::ground,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string_view caution =
        area.width < grid(240) ? "Cautions" : "Sun, weight, night work: cautions";
    const float button = width_of(caution);
    const float top = area.top + (area.height - ImGui::GetTextLineHeight()) / 2;

    const std::string words = words_of_foot(ui);
    text_at(list, {area.left + grid(3), top},
            shortened(words, area.width - button - width_of("What is assumed") - width_of("Keys")
                                 - width_of("Glossary") - grid(8)),
            colour(Tone::text_dim));
    ui.note("status/words", words);

    draw_page_button(ui, area,
                     {"status/cautions", "Cautions", caution, Icon::caution, 0,
                      "Never look at the Sun through a telescope without a proper solar "
                      "filter over its front. Click for all."});
    draw_page_button(ui, area,
                     {"status/assumptions", "What is assumed", "What is assumed", Icon::more,
                      button, "What the tracing takes for granted, and what it leaves out."});
    draw_page_button(ui, area,
                     {"status/keys", keys_popup, "Keys", Icon::widen,
                      button + width_of("What is assumed"),
                      "All keys. With Ctrl+K everything is found by a few letters of its name."});
    draw_page_button(ui, area,
                     {"status/glossary", glossary_popup, "Glossary", Icon::book,
                      button + width_of("What is assumed") + width_of("Keys"),
                      "Back focus, field stop, exit pupil: every word of the trade explained. "
                      "Shift+F1 explains the one under the pointer."});
    ImGui::PopStyleVar(2);
    draw_cautions(ui);
    draw_assumptions(ui);
    draw_keys_page(ui);
    draw_glossary_page(ui, ui.glossary_typed);
    ImGui::End();
}

}  // namespace beamfork
