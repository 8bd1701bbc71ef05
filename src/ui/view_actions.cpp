#include <algorithm>

#include "ui/picture/moving_view.hpp"
#include "ui/picture/viewport.hpp"
#include "ui/window_actions.hpp"

namespace beamfork {

namespace {

template <StandardView view>
void show_standard(const WindowUi& ui) {
    show_view(ui.picture(), view);
}

template <bool ViewOptions::*option>
void flip(const WindowUi& ui) {
    ui.session.view.*option = !(ui.session.view.*option);
}

template <ShellView shells>
void show_shells(const WindowUi& ui) {
    ui.session.view.shells = shells;
}

Viewport shown_picture(const WindowUi& ui) {
    return {static_cast<float>(std::max(1, ui.requests.picture.scene.width)),
            static_cast<float>(std::max(1, ui.requests.picture.scene.height))};
}

// By the drag that would do the same, in picture heights: a whole height is half a turn.
template <int right, int down>
void turn(const WindowUi& ui) {
    constexpr float step = 1.0F / 36;  // 5 degrees
    const Viewport picture = shown_picture(ui);
    ui.state.of_document.flight.move.reset();
    ui.session.pose.camera =
        orbit(ui.session.pose.camera, step * picture.height * glm::vec2{right, down}, picture);
}

template <int right, int down>
void shift(const WindowUi& ui) {
    constexpr float step = 1.0F / 20;
    const Viewport picture = shown_picture(ui);
    ui.state.of_document.flight.move.reset();
    ui.session.pose.camera =
        pan(ui.session.pose.camera, step * picture.height * glm::vec2{right, down}, picture);
}

template <bool nearer>
void come(const WindowUi& ui) {
    constexpr float step = 1.15F;  // a notch of the wheel
    const Viewport picture = shown_picture(ui);
    ui.state.of_document.flight.move.reset();
    ui.session.pose.camera = zoom_towards(ui.session.pose.camera, nearer ? step : 1 / step,
                                          {picture.width / 2, picture.height / 2}, picture);
}

constexpr ActionEntry
camera_entry(const char* name, const char* label, Chords chords, void (*run)(const WindowUi&)) {
    return {name, "Picture", label, chords, Heard::by_picture, true, nullptr, run};
}

constexpr ActionEntry
view_entry(const char* name, const char* label, Chords chords, void (*run)(const WindowUi&)) {
    return {name, "Picture", label, chords, Heard::between_text, false, nullptr, run};
}

constexpr std::array view_table{
    view_entry("view/overview",
               "Overview",
               {{{ImGuiKey_1}, {ImGuiKey_H}}},
               show_standard<StandardView::overview>),
    view_entry(
        "view/side", "View from the side", {{{ImGuiKey_2}}}, show_standard<StandardView::side>),
    view_entry("view/top", "View from the top", {{{ImGuiKey_3}}}, show_standard<StandardView::top>),
    view_entry("view/sky", "View from the sky", {{{ImGuiKey_4}}}, show_standard<StandardView::sky>),
    view_entry(
        "view/eyes", "View from the eyes", {{{ImGuiKey_5}}}, show_standard<StandardView::eyes>),
    view_entry(
        "view/rear", "View from the rear", {{{ImGuiKey_6}}}, show_standard<StandardView::rear>),
    camera_entry("view/turn_left",
                 "Turn the picture to the left",
                 {{{ImGuiKey_LeftArrow, ImGuiMod_Shift}}},
                 turn<-1, 0>),
    camera_entry("view/turn_right",
                 "Turn the picture to the right",
                 {{{ImGuiKey_RightArrow, ImGuiMod_Shift}}},
                 turn<1, 0>),
    camera_entry("view/turn_up",
                 "Turn the picture upward",
                 {{{ImGuiKey_UpArrow, ImGuiMod_Shift}}},
                 turn<0, -1>),
    camera_entry("view/turn_down",
                 "Turn the picture downward",
                 {{{ImGuiKey_DownArrow, ImGuiMod_Shift}}},
                 turn<0, 1>),
    camera_entry("view/shift_left",
                 "Shift the picture to the left",
                 {{{ImGuiKey_LeftArrow, ImGuiMod_Ctrl}}},
                 shift<-1, 0>),
    camera_entry("view/shift_right",
                 "Shift the picture to the right",
                 {{{ImGuiKey_RightArrow, ImGuiMod_Ctrl}}},
                 shift<1, 0>),
    camera_entry("view/shift_up",
                 "Shift the picture upward",
                 {{{ImGuiKey_UpArrow, ImGuiMod_Ctrl}}},
                 shift<0, -1>),
    camera_entry("view/shift_down",
                 "Shift the picture downward",
                 {{{ImGuiKey_DownArrow, ImGuiMod_Ctrl}}},
                 shift<0, 1>),
    camera_entry("view/nearer",
                 "Come nearer",
                 {{{ImGuiKey_Equal}, {ImGuiKey_Equal, ImGuiMod_Shift}, {ImGuiKey_KeypadAdd}}},
                 come<true>),
    camera_entry("view/farther",
                 "Go farther away",
                 {{{ImGuiKey_Minus}, {ImGuiKey_KeypadSubtract}}},
                 come<false>),
    view_entry("view/frame",
               "Frame the selected part",
               {{{ImGuiKey_F}}},
               [](const WindowUi& ui) { frame_selection(ui.picture()); }),
    view_entry("view/labels", "Names by the parts", {{{ImGuiKey_N}}}, flip<&ViewOptions::labels>),
    view_entry("view/dimensions",
               "Dimensions of the selected part",
               {{{ImGuiKey_D}}},
               flip<&ViewOptions::dimensions>),
    view_entry(
        "view/night", "Red light for the night", {{{ImGuiKey_R}}}, flip<&ViewOptions::night>),
    view_entry(
        "view/paint", "Paint the objective", {{{ImGuiKey_P}}}, flip<&ViewOptions::paint_pupil>),
    view_entry("view/motion",
               "Light in motion",
               {{{ImGuiKey_M}}},
               [](const WindowUi& ui) { move_light_or_not(ui.picture()); }),
    ActionEntry{"view/hold_light",
                "Picture",
                "Hold the moving light, or let it go on",
                {{{ImGuiKey_M, ImGuiMod_Shift}}},
                Heard::between_text,
                false,
                [](const WindowUi& ui) { return ui.session.view.light_moves; },
                flip<&ViewOptions::light_is_held>,
                "Light is not in motion."},
    view_entry("view/apart",
               "Pull the parts apart, or put them back",
               {{{ImGuiKey_X}}},
               [](const WindowUi& ui) { pull_apart_or_back(ui.picture()); }),
    view_entry("view/light", "Light in the picture", {}, flip<&ViewOptions::light>),
    view_entry("view/clipped", "Clipped rays in the picture", {}, flip<&ViewOptions::clipped_rays>),
    view_entry("view/white", "White ground for print", {}, flip<&ViewOptions::light_ground>),
    view_entry("view/shells/open", "Tubes open towards you", {}, show_shells<ShellView::open>),
    view_entry("view/shells/whole", "Tubes whole", {}, show_shells<ShellView::whole>),
    view_entry(
        "view/shells/section", "Tubes cut along the train", {}, show_shells<ShellView::section>),
    view_entry("view/shells/hidden", "Tubes hidden", {}, show_shells<ShellView::hidden>),
};

}  // namespace

std::span<const ActionEntry> view_actions() { return view_table; }

}  // namespace beamfork
