#include "ui/notice_bar.hpp"

#include <algorithm>

#include "ui/widgets.hpp"

namespace beamfork {

namespace {

constexpr std::size_t most_lines = 3;

bool has_error(const Ui& ui) {
    return ui.view.message.is_error && !ui.view.message.text.empty()
           && ui.view.message.text != ui.state.dismissed_error;
}

std::vector<std::string> lines_to_tell(const Ui& ui) {
    std::vector<std::string> lines;
    if (has_error(ui)) lines.push_back(ui.view.message.text);
    if (ui.state.notices_dismissed) return lines;
    for (const Notice& notice : ui.view.notices) {
        lines.push_back("Line " + std::to_string(notice.line) + " of the file: " + notice.text);
    }
    return lines;
}

}  // namespace

float notice_bar_height(const Ui& ui) {
    const std::size_t lines = std::min(lines_to_tell(ui).size(), most_lines);
    if (lines == 0) return 0;
    return static_cast<float>(lines) * (font(TextFace::regular)->FontSize + grid(1)) + grid(3);
}

void draw_notice_bar(const Ui& ui, const Area& area) {
    const auto lines = lines_to_tell(ui);
    if (lines.empty()) return;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(3), grid(1.5F)});
    begin_area("notice_bar", area, Tone::raised);
    ImGui::PopStyleVar();
    const float side = ImGui::GetFrameHeight();
    const float width = area.width - side - grid(10);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImGui::BeginChild("notice_bar/lines", {width, 0});
    for (const std::string& line : lines) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const float text = ImGui::GetTextLineHeight();
        const bool is_error = &line == &lines.front() && has_error(ui);
        draw_icon(*ImGui::GetWindowDrawList(), Icon::caution, {at.x + text / 2, at.y + text / 2}, text * 0.85F,
                  colour(is_error ? Tone::danger : Tone::text_dim));
        ImGui::Indent(text + grid(2));
        ImGui::TextUnformatted(shortened(line, width - text - grid(4)).c_str());
        tooltip(line);
        ImGui::Unindent(text + grid(2));
    }
    ImGui::EndChild();
    ui.note("notice_bar/lines", lines.front());
    ImGui::SetCursorScreenPos({area.right() - side - grid(3), low.y});
    if (icon_button(ui, "notice_bar/close", Icon::close, "Put away.")) {
        ui.state.notices_dismissed = true;
        ui.state.dismissed_error = ui.view.message.text;
    }
    ImGui::End();
}

}  // namespace beamfork
