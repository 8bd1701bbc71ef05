// The few widgets that panels share. Each logs itself under its name for tests.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "ui/kit/area.hpp"
#include "ui/kit/icons.hpp"
#include "ui/kit/theme.hpp"
#include "ui/kit/ui.hpp"

namespace beamfork {

/// Windows without a frame that fill an area; always pair with ImGui::End.
void begin_area(const char* name, const Area& area, Tone ground, ImGuiWindowFlags more = 0);

/// Wrapped at a readable width; shows while the last widget is under the pointer.
void tooltip(std::string_view text);
/// The same beside the last widget instead of over it: of one that holds much to read itself.
void tooltip_beside(std::string_view text);

bool text_button(const Ui& ui,
                 std::string_view name,
                 std::string_view label,
                 std::string_view help,
                 bool enabled = true,
                 bool is_on = false);
bool icon_button(
    const Ui& ui, std::string_view name, Icon icon, std::string_view help, bool enabled = true);

/// One of a few words, side by side, or in further lines where they `may_wrap`. Returns the index now chosen.
std::size_t segments(const Ui& ui,
                     std::string_view name,
                     std::span<const std::string_view> words,
                     std::span<const std::string_view> helps,
                     std::size_t chosen,
                     bool may_wrap = false);

/// Text that ends in "…" where it would be wider than `width`.
std::string shortened(std::string_view text, float width);
void dim_text(std::string_view text);
/// In lines no wider than the panel, as `folded`.
void wrapped_text(std::string_view text, ImU32 ink);
/// Broken into lines of at most `width` pixels in the present font, between words alone and not before a number's unit.
/// The library's own wrapping also breaks behind the point in a number.
std::string folded(std::string_view text, float width);
/// The same in that face and size. A word that is wider than a line is broken between its letters.
std::string folded(std::string_view text, float width, ImFont& face, float size);

/// Words in lines with the size at which they fill no more than a box.
struct FittedWords {
    std::string lines;
    float size = 0;  ///< of the letters, pixels
    float height = 0;
};
/// As large as `largest`, or as much smaller as it takes.
FittedWords fitted(std::string_view text, ImVec2 box, ImFont& face, float largest);
/// Text that ends at x = `right` (screen), in the line at `y`.
void text_ending_at(ImDrawList& list,
                    ImVec2 right_top,
                    std::string_view text,
                    ImU32 ink,
                    TextFace face = TextFace::regular);
void text_at(ImDrawList& list,
             ImVec2 at,
             std::string_view text,
             ImU32 ink,
             TextFace face = TextFace::regular);
float text_width(std::string_view text, TextFace face = TextFace::regular);

/// The next popup opens right below (or above) the last widget instead of at the pointer.
void place_popup_below();
void place_popup_above();

/// A list of words that drops down; call ImGui::EndCombo when it returns true.
bool begin_chooser(const char* id, const std::string& chosen, float width);
/// One word of such a list; true when it is picked. The list opens with the chosen word in sight and under the keyboard.
bool chooser_entry(const std::string& word, bool is_chosen);

/// A line of the panel, or `lines` of them, that can be pointed at and reached by keyboard; returns where its text starts.
ImVec2 line_area(const Ui& ui,
                 const std::string& id,
                 const std::string& label,
                 const std::string& help,
                 int lines = 1);

/// Pieces of a panel: side by side where each finds `least` pixels of width, else one below the other. Call
/// next() before each piece.
class SideBySide {
public:
    SideBySide(const char* id, int pieces, float least);
    ~SideBySide();
    SideBySide(const SideBySide&) = delete;
    SideBySide& operator=(const SideBySide&) = delete;
    SideBySide(SideBySide&&) = delete;
    SideBySide& operator=(SideBySide&&) = delete;
    void next();

private:
    bool is_wide_ = false;
    bool is_first_ = true;
};

/// A line with dashes, in pixels.
void dashed_line(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float width);

/// A centred popup that holds the user until it is answered. Call ImGui::EndPopup when it returns true.
bool begin_question(const char* title, float width);

}  // namespace beamfork
