#include "ui/kit/widgets.hpp"

#include <algorithm>
#include <cmath>

#include "base/letters.hpp"

#include <imgui_internal.h>  // GetItemFlags

namespace beamfork {

namespace {

const char* begin_of(std::string_view text) { return text.data(); }
const char* end_of(std::string_view text) { return text.data() + text.size(); }

ImVec2 size_of(std::string_view text, TextFace face) {
    const ImFont* face_font = font(face);
    return face_font->CalcTextSizeA(face_font->FontSize, FLT_MAX, 0, begin_of(text), end_of(text));
}

// Position, hover and press of a button that draws itself.
struct Pressed {
    bool pressed;
    bool hot;
    ImVec2 low;
    ImVec2 high;
};

bool is_nav_focused() { return ImGui::IsItemFocused() && ImGui::GetIO().NavVisible; }

Pressed plain_button(std::string_view name, ImVec2 size, bool enabled) {
    const std::string id(name);
    ImGui::BeginDisabled(!enabled);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const bool is_hit = ImGui::InvisibleButton(id.c_str(), size);
    // A button may keep the keyboard while it becomes disabled, such as Undo behind the last step: Space would
    // still press it.
    const bool is_disabled = (ImGui::GetItemFlags() & ImGuiItemFlags_Disabled) != 0;
    const bool pressed = is_hit && !is_disabled;
    const bool hot =
        !is_disabled && (ImGui::IsItemHovered() || ImGui::IsItemActive() || is_nav_focused());
    ImGui::EndDisabled();
    return {pressed, hot, low, {low.x + size.x, low.y + size.y}};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Where the first word ends; a number keeps a unit that follows it: "30.0 mm".
std::size_t end_of_chunk(std::string_view text) {
    const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
    if (end == 0 || end == text.size() || text[end] == '\n' || !is_digit(text[end - 1])) return end;
    const std::size_t next = std::min(text.find_first_of(" \n", end + 1), text.size());
    constexpr std::size_t longest_unit = 3;  // bytes: mm, %, g, D, nm
    return next - end - 1 <= longest_unit && !(end + 1 < text.size() && is_digit(text[end + 1]))
               ? next
               : end;
}

// The longest beginning of whole letters that is no wider; at least one letter.
template <class Wide>
std::string_view letters_no_wider(std::string_view word, float width, Wide wide) {
    std::size_t fits = 0;
    for (std::size_t next = 0; next < word.size();) {
        next += first_letter(word.substr(next)).size();
        if (fits > 0 && wide(word.substr(0, next)) > width) break;
        fits = next;
    }
    return word.substr(0, fits);
}

}  // namespace

void begin_area(const char* name, const Area& area, Tone ground, ImGuiWindowFlags more) {
    ImGui::SetNextWindowPos(area.corner());
    ImGui::SetNextWindowSize({std::max(1.0F, area.width), std::max(1.0F, area.height)});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, colour(ground));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowMinSize, {1, 1});
    ImGui::Begin(name, nullptr,
                 ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove
                     | ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings
                     | ImGuiWindowFlags_NoBringToFrontOnFocus | more);
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
}

namespace {

bool wants_tooltip(std::string_view text) {
    return !text.empty()
           && ImGui::IsItemHovered(ImGuiHoveredFlags_DelayNormal | ImGuiHoveredFlags_NoSharedDelay
                                   | ImGuiHoveredFlags_AllowWhenDisabled);
}

void show_tooltip(std::string_view text) {
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(3), grid(2)});
    if (ImGui::BeginTooltip()) {
        ImGui::PushTextWrapPos(ImGui::GetFontSize() * 24);
        ImGui::TextUnformatted(begin_of(text), end_of(text));
        ImGui::PopTextWrapPos();
        ImGui::EndTooltip();
    }
    ImGui::PopStyleVar();
}

}  // namespace

void tooltip(std::string_view text) {
    if (wants_tooltip(text)) show_tooltip(text);
}

void tooltip_beside(std::string_view text) {
    if (!wants_tooltip(text)) return;
    const ImVec2 low = ImGui::GetItemRectMin();
    const ImVec2 high = ImGui::GetItemRectMax();
    const float middle = ImGui::GetIO().DisplaySize.x / 2;
    const bool is_at_left = (low.x + high.x) / 2 < middle;
    ImGui::SetNextWindowPos({is_at_left ? high.x + grid(3) : low.x - grid(3), low.y},
                            ImGuiCond_Always, {is_at_left ? 0.0F : 1.0F, 0.0F});
    show_tooltip(text);
}

bool text_button(const Ui& ui,
                 std::string_view name,
                 std::string_view label,
                 std::string_view help,
                 bool enabled,
                 bool is_on) {
    const ImVec2 text = size_of(label, TextFace::regular);
    const ImVec2 size{text.x + grid(4), ImGui::GetFrameHeight()};
    const Pressed button = plain_button(name, size, enabled);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Tone ground = button.hot || is_on ? Tone::raised_hot : Tone::raised;
    list.AddRectFilled(button.low, button.high, colour(ground, enabled ? 1 : 0.5F), grid(1));
    if (is_on)
        list.AddRect(button.low, button.high, colour(Tone::accent), grid(1), 0,
                     std::max(1.0F, grid(0.25F)));
    text_at(list, {button.low.x + (size.x - text.x) / 2, button.low.y + (size.y - text.y) / 2},
            label, colour(Tone::text, enabled ? 1 : 0.45F));
    ui.describe(name, label, help);
    return button.pressed;
}

bool icon_button(
    const Ui& ui, std::string_view name, Icon icon, std::string_view help, bool enabled) {
    const float side = ImGui::GetFrameHeight();
    const Pressed button = plain_button(name, {side, side}, enabled);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (button.hot) list.AddRectFilled(button.low, button.high, colour(Tone::raised_hot), grid(1));
    draw_icon(list, icon, {button.low.x + side / 2, button.low.y + side / 2}, side * 0.52F,
              colour(button.hot ? Tone::text : Tone::text_dim, enabled ? 1 : 0.4F));
    ui.describe(name, help, help);
    return button.pressed;
}

std::size_t segments(const Ui& ui,
                     std::string_view name,
                     std::span<const std::string_view> words,
                     std::span<const std::string_view> helps,
                     std::size_t chosen,
                     bool may_wrap) {
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {std::max(1.0F, grid(0.25F)), grid(1)});
    std::size_t now = chosen;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) ImGui::SameLine();
        const float wanted = size_of(words[i], TextFace::regular).x + grid(4);
        if (may_wrap && i > 0 && ImGui::GetContentRegionAvail().x < wanted) ImGui::NewLine();
        const std::string id = std::string(name) + "/" + std::string(words[i]);
        if (text_button(ui, id, words[i], helps[i], true, i == chosen)) now = i;
    }
    ImGui::PopStyleVar();
    return now;
}

std::string shortened(std::string_view text, float width) {
    if (text_width(text) <= width) return std::string(text);
    while (!text.empty() && text_width(std::string(text) + "…") > width)
        text = without_last_letter(text);
    return std::string(text) + "…";
}

void dim_text(std::string_view text) {
    ImGui::PushStyleColor(ImGuiCol_Text, colour(Tone::text_dim));
    ImGui::TextUnformatted(begin_of(text), end_of(text));
    ImGui::PopStyleColor();
}

void wrapped_text(std::string_view text, ImU32 ink) {
    const std::string lines = folded(text, ImGui::GetContentRegionAvail().x);
    ImGui::PushStyleColor(ImGuiCol_Text, ink);
    ImGui::TextUnformatted(lines.c_str());
    ImGui::PopStyleColor();
}

std::string folded(std::string_view text, float width) {
    return folded(text, width, *ImGui::GetFont(), ImGui::GetFontSize());
}

std::string folded(std::string_view text, float width, ImFont& face, float size) {
    const auto wide = [&](std::string_view words) {
        return face.CalcTextSizeA(size, FLT_MAX, 0, begin_of(words), end_of(words)).x;
    };
    const float space = wide(" ");
    std::string lines;
    float used = 0;
    while (!text.empty()) {
        const std::size_t end = end_of_chunk(text);
        std::string_view chunk = text.substr(0, end);
        const bool is_first = lines.empty() || lines.back() == '\n';
        if (!is_first) {
            const bool fits = used + space + wide(chunk) <= width;
            lines += fits ? ' ' : '\n';
            used = fits ? used + space : 0;
        }
        while (used == 0 && wide(chunk) > width) {
            const std::string_view fits = letters_no_wider(chunk, width, wide);
            if (fits.size() == chunk.size()) break;
            lines.append(fits) += '\n';
            chunk.remove_prefix(fits.size());
        }
        lines += chunk;
        used += wide(chunk);
        if (end < text.size() && text[end] == '\n') {
            lines += '\n';
            used = 0;
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

FittedWords fitted(std::string_view text, ImVec2 box, ImFont& face, float largest) {
    constexpr float step = 0.95F;
    constexpr float smallest = 4;  // pixels; nobody reads that, but nothing is left out
    FittedWords words;
    for (words.size = largest;; words.size *= step) {
        words.lines = folded(text, box.x, face, words.size);
        words.height = face.CalcTextSizeA(words.size, FLT_MAX, 0, words.lines.c_str()).y;
        if (words.height <= box.y || words.size * step < smallest) return words;
    }
}

void text_at(ImDrawList& list, ImVec2 at, std::string_view text, ImU32 ink, TextFace face) {
    const ImFont* face_font = font(face);
    list.AddText(face_font, face_font->FontSize, {std::round(at.x), std::round(at.y)}, ink,
                 begin_of(text), end_of(text));
}

void text_ending_at(
    ImDrawList& list, ImVec2 right_top, std::string_view text, ImU32 ink, TextFace face) {
    text_at(list, {right_top.x - text_width(text, face), right_top.y}, text, ink, face);
}

float text_width(std::string_view text, TextFace face) { return size_of(text, face).x; }

void place_popup_below() {
    ImGui::SetNextWindowPos({ImGui::GetItemRectMin().x, ImGui::GetItemRectMax().y + grid(0.5F)});
}

void place_popup_above() {
    const ImVec2 low = ImGui::GetItemRectMin();
    ImGui::SetNextWindowPos({low.x, low.y - grid(1)}, ImGuiCond_Always, {0, 1});
}

bool begin_chooser(const char* id, const std::string& chosen, float width) {
    ImGui::SetNextItemWidth(width);
    const float sign_room = grid(5);
    const float room = width - sign_room - ImGui::GetStyle().FramePadding.x;
    const bool is_open =
        ImGui::BeginCombo(id, shortened(chosen, room).c_str(),
                          ImGuiComboFlags_NoArrowButton | ImGuiComboFlags_HeightLarge);
    if (!is_open) {
        const ImVec2 low = ImGui::GetItemRectMin();
        const ImVec2 high = ImGui::GetItemRectMax();
        draw_icon(*ImGui::GetWindowDrawList(), Icon::down,
                  {high.x - sign_room / 2, (low.y + high.y) / 2}, grid(2.25F),
                  colour(Tone::text_dim));
    }
    return is_open;
}

bool chooser_entry(const std::string& word, bool is_chosen) {
    const bool is_picked = ImGui::Selectable(word.c_str(), is_chosen);
    if (is_chosen && ImGui::IsWindowAppearing()) {
        ImGui::SetItemDefaultFocus();
        ImGui::SetScrollHereY();
    }
    return is_picked;
}

void dashed_line(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float width) {
    const float dx = to.x - from.x;
    const float dy = to.y - from.y;
    const float length = std::sqrt(dx * dx + dy * dy);
    const float dash = grid(1.25F);
    for (float at = 0; at < length; at += 2 * dash) {
        const float a = at / length;
        const float b = std::min(1.0F, (at + dash) / length);
        list.AddLine({from.x + dx * a, from.y + dy * a}, {from.x + dx * b, from.y + dy * b}, ink,
                     width);
    }
}

bool begin_question(const char* title, float width) {
    const ImVec2 window = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({window.x / 2, window.y / 2}, ImGuiCond_Always, {0.5F, 0.5F});
    ImGui::SetNextWindowSize({std::min(width, window.x - grid(4)), 0});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(5), grid(4)});
    const bool is_open =
        ImGui::BeginPopupModal(title, nullptr,
                               ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize
                                   | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings);
    ImGui::PopStyleVar();
    return is_open;
}

SideBySide::SideBySide(const char* id, int pieces, float least) {
    if (ImGui::GetContentRegionAvail().x < static_cast<float>(pieces) * least) return;
    ImGui::PushStyleVar(ImGuiStyleVar_CellPadding, {grid(3), 0});
    is_wide_ = ImGui::BeginTable(id, pieces, ImGuiTableFlags_SizingStretchSame);
    ImGui::PopStyleVar();
}

SideBySide::~SideBySide() {
    if (is_wide_) ImGui::EndTable();
}

void SideBySide::next() {
    if (is_wide_) {
        ImGui::TableNextColumn();
    } else if (!is_first_) {
        ImGui::Dummy({1, grid(2)});
    }
    is_first_ = false;
}

ImVec2 line_area(const Ui& ui,
                 const std::string& id,
                 const std::string& label,
                 const std::string& help,
                 int lines) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    ImGui::InvisibleButton(id.c_str(),
                           {ImGui::GetContentRegionAvail().x,
                            static_cast<float>(lines) * ImGui::GetTextLineHeight() + grid(1)});
    ui.describe(id, label, help);
    return {low.x, low.y + grid(0.5F)};
}

}  // namespace beamfork
