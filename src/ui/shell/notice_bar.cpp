#include "ui/shell/notice_bar.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "ui/kit/buttons.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/widgets.hpp"

namespace beamfork {

namespace {

constexpr std::size_t most_lines = 3;
constexpr std::string_view describe_words = "Describe my setup …";

enum class NoticeKind { welcome, error, file };

struct NoticeLine {
    NoticeKind kind;
    std::string text;
};

std::vector<NoticeLine> lines_to_tell(const ShellUi& ui) {
    std::vector<NoticeLine> lines;
    if (!ui.welcome_dismissed) {
        lines.push_back({NoticeKind::welcome,
                         "Welcome! Drag to turn the picture, roll the wheel to come nearer, click "
                         "a part and move its "
                         "sliders. At the left: what is wrong, and cures to click. In “Setup …”: "
                         "more examples."});
    }
    const Message& message = ui.desk.message;
    if (message.is_error && !message.text.empty() && message.text != ui.state.dismissed_error) {
        lines.push_back({NoticeKind::error, message.text});
    }
    if (ui.notices.is_dismissed) return lines;
    for (const Notice& notice : ui.desk.notices) {
        lines.push_back({NoticeKind::file,
                         "Line " + std::to_string(notice.line) + " of the file: " + notice.text});
    }
    return lines;
}

const char* name_of(NoticeKind kind) {
    switch (kind) {
    case NoticeKind::welcome: return "notice/welcome";
    case NoticeKind::error: return "notice/error";
    case NoticeKind::file: return "notice/file";
    }
    return "";
}

void draw_line(const ShellUi& ui, const NoticeLine& line, float width) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float text = ImGui::GetTextLineHeight();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 sign{at.x + text / 2, at.y + text / 2};
    if (line.kind == NoticeKind::welcome) {
        list.AddCircleFilled(sign, grid(1), colour(Tone::accent));
    } else {
        draw_icon(list, Icon::caution, sign, text * 0.85F,
                  colour(line.kind == NoticeKind::error ? Tone::danger : Tone::text_dim));
    }
    ImGui::Indent(text + grid(2));
    ImGui::TextUnformatted(shortened(line.text, width - text - grid(4)).c_str());
    ui.describe(name_of(line.kind), line.text, line.text);
    ImGui::Unindent(text + grid(2));
}

void put_away(const ShellUi& ui) {
    ui.welcome_dismissed = true;
    ui.notices.is_dismissed = true;
    ui.state.dismissed_error = ui.desk.message.text;
}

}  // namespace

float notice_bar_height(const ShellUi& ui) {
    const std::size_t lines = std::min(lines_to_tell(ui).size(), most_lines);
    if (lines == 0) return 0;
    return static_cast<float>(lines) * (font(TextFace::regular)->FontSize + grid(1)) + grid(3);
}

void draw_notice_bar(const ShellUi& ui, const Area& area) {
    const auto lines = lines_to_tell(ui);
    if (lines.empty()) return;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(3), grid(1.75F)});
    begin_area("notice_bar", area, Tone::raised);
    ImGui::PopStyleVar();
    const float side = ImGui::GetTextLineHeight() + grid(1);
    const bool is_welcome = lines.front().kind == NoticeKind::welcome;
    const float offer = is_welcome ? text_width(describe_words) + grid(4) : 0;
    const float width = area.width - side - offer - grid(8);
    ImGui::BeginChild("notice_bar/lines", {width, 0});
    for (const NoticeLine& line : lines)
        draw_line(ui, line, width);
    ImGui::EndChild();
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {grid(0.5F), grid(0.5F)});
    ImGui::SetCursorScreenPos({area.right() - side - offer - grid(3), area.top + grid(1.25F)});
    if (is_welcome
        && text_button(ui, "notice_bar/describe", describe_words,
                       ui.with_keys("A few questions, and your own setup stands in the picture.",
                                    "setup/questions")))
        ui.actions.run("setup/questions");
    ImGui::SetCursorScreenPos({area.right() - side - grid(3), area.top + grid(1.25F)});
    if (icon_button(ui, "notice_bar/close", Icon::close, "Put away.")) put_away(ui);
    ImGui::PopStyleVar();
    ImGui::End();
}

}  // namespace beamfork
