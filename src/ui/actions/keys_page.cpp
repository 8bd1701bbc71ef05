#include "ui/actions/keys_page.hpp"

#include <array>
#include <string>

#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

struct GivenKey {
    const char* keys;
    const char* label;
};

// What Dear ImGui and single panels hear themselves.
constexpr std::array given_keys{
    GivenKey{"Tab, Shift+Tab", "Next widget, the one before"},
    GivenKey{"Space or Enter", "Use the widget"},
    GivenKey{"Esc", "Leave an entry, a list, a page"},
    GivenKey{"Left, Right", "In the unfolded path: the selected part's length by 0.5 mm"},
};

void draw_key_row(const Ui& ui, const std::string& label, const std::string& keys) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    wrapped_text(label, colour(Tone::text));
    ui.note("keys/" + label, label, keys);
    ImGui::TableNextColumn();
    dim_text(keys);
}

void draw_key_heading(const char* words) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted(words);
    ImGui::PopFont();
}

void draw_key_table(const Ui& ui) {
    if (!ImGui::BeginTable("keys/table", 2)) return;
    ImGui::TableSetupColumn("what", ImGuiTableColumnFlags_WidthStretch, 2);
    ImGui::TableSetupColumn("keys", ImGuiTableColumnFlags_WidthStretch, 1);
    std::string group;
    for (const KeyRow& row : ui.actions.key_rows()) {
        if (group != row.group) draw_key_heading(row.group.c_str());
        group = row.group;
        draw_key_row(ui, row.label, row.keys);
    }
    draw_key_heading("In panels");
    for (const GivenKey& given : given_keys)
        draw_key_row(ui, given.label, given.keys);
    ImGui::EndTable();
}

}  // namespace

void draw_keys_page(const Ui& ui) {
    if (!begin_question(keys_popup, grid(130))) return;
    const std::string find = "Everything else is found by its name: " + ui.keys_text("window/find")
                             + ", then a few letters.";
    wrapped_text(find, colour(Tone::text_dim));
    const float least = ImGui::GetTextLineHeight() * 6;
    const float room = ImGui::GetIO().DisplaySize.y - ImGui::GetTextLineHeight() * 12;
    ImGui::BeginChild("keys/list", {0, std::max(least, std::min(room, grid(150)))});
    draw_key_table(ui);
    ImGui::EndChild();
    if (text_button(ui, "keys/close", "Close", "Esc")
        || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        ImGui::CloseCurrentPopup();
    }
    ImGui::EndPopup();
}

}  // namespace beamfork
