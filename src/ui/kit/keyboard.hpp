// Where the keyboard is and which keys belong to a widget: what Dear ImGui does inside and has no public call for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <imgui.h>

namespace beamfork {

/// Pressed or repeated while the last widget has the keyboard; the key is then that widget's alone and moves no focus.
bool key_of_last_widget(ImGuiKey key);
/// Up and Down stay with the entry that was drawn last, instead of leaving it.
void keep_up_and_down();
/// The wheel stays with the last widget, instead of scrolling the panel.
void keep_wheel();
/// Whether the entry of that id, in the present window, is being typed into.
bool is_typed_into(const char* id);
/// Whatever widget is held is let go.
void let_go_of_widget();

/// The full name of the window that is drawn now.
std::string present_window();
/// Of these windows, those that were drawn in the last frame.
std::vector<std::string> drawn_of(std::vector<std::string> windows);
/// Which of them has the keyboard, itself or in a window inside it.
std::optional<std::size_t> with_keyboard(const std::vector<std::string>& windows);
/// Gives it the keyboard at its first widget; false while it has not been drawn yet. Before anything is drawn in the frame.
bool give_keyboard(const std::string& window);
/// From now on it is seen which widget has the keyboard, though the mouse was used last.
void show_keyboard();
/// A frame round the widget that has the keyboard. The library frames its own widgets alone, most of ours draw themselves.
void draw_keyboard_frame();

/// Seconds until a tooltip comes at the widget under the pointer; nothing: none is on its way.
std::optional<double> seconds_to_tooltip();

}  // namespace beamfork
