#include <array>

#include "ui/kit/area.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/keyboard.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/picture/viewport.hpp"

namespace beamfork {

namespace {

struct ViewWord {
    StandardView view;
    const char* word;
};

constexpr std::array view_words{
    ViewWord{StandardView::overview, "Overview"}, ViewWord{StandardView::side, "Side"},
    ViewWord{StandardView::top, "Top"},           ViewWord{StandardView::sky, "Sky"},
    ViewWord{StandardView::eyes, "Eyes"},         ViewWord{StandardView::rear, "Rear"}};

std::string keys_of(const Ui& ui, const ViewWord& word) {
    return ui.keys_text("view/" + std::string(name_of(word.view)));
}

std::string help_of(const Ui& ui, const ViewWord& word) {
    return std::string(description_of(word.view)) + " Key " + keys_of(ui, word);
}

void draw_views(const PictureUi& ui, bool is_narrow) {
    if (is_narrow) {
        if (text_button(ui, "view/menu", "Views …", "Standard views of the train."))
            ImGui::OpenPopup("view/menu/list");
        place_popup_above();
        if (ImGui::BeginPopup("view/menu/list")) {
            for (const ViewWord& word : view_words) {
                if (ImGui::MenuItem(word.word, keys_of(ui, word).c_str())) show_view(ui, word.view);
                ui.describe("view/menu/" + std::string(name_of(word.view)), word.word,
                            help_of(ui, word));
            }
            ImGui::EndPopup();
        }
        return;
    }
    for (const ViewWord& word : view_words) {
        if (word.view != StandardView::overview) ImGui::SameLine(0, grid(0.5F));
        if (text_button(ui, "view/" + std::string(name_of(word.view)), word.word,
                        help_of(ui, word))) {
            show_view(ui, word.view);
        }
    }
}

// How much of the foot there is room for.
struct FootRoom {
    bool for_views;  ///< as buttons; else in a list
    bool for_tubes;  ///< likewise
    bool for_ticks;  ///< names, dimensions and night as buttons; else with what else is drawn
};
FootRoom foot_room(float width) {
    return {width >= grid(235), width >= grid(152), width >= grid(112)};
}

void draw_shells(const PictureUi& ui, bool as_list) {
    static constexpr std::array<std::string_view, 4> words{"Open", "Whole", "Cut", "Hidden"};
    static constexpr std::array<std::string_view, 4> helps{
        "Tubes are opened towards you.", "Tubes are drawn whole.",
        "Tubes are cut by a plane along the train.", "Tubes are left out: light and glass only."};
    const auto now = static_cast<std::size_t>(ui.options.shells);
    ShellView& shells = ui.options.shells;
    if (!as_list) {
        shells = static_cast<ShellView>(segments(ui, "view/shells", words, helps, now));
        return;
    }
    if (text_button(ui, "view/shells", "Tubes …", "How tubes are drawn: open, whole, cut, hidden."))
        ImGui::OpenPopup("view/shells/list");
    place_popup_above();
    if (!ImGui::BeginPopup("view/shells/list")) return;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (ImGui::MenuItem(std::string(words[i]).c_str(), nullptr, i == now))
            shells = static_cast<ShellView>(i);
        ui.describe("view/shells/" + std::string(words[i]), words[i], helps[i]);
    }
    ImGui::EndPopup();
}

struct Tick {
    const char* name;
    const char* label;
    std::string help;
    bool ViewOptions::*value;
};

std::array<Tick, 3> ticks(const Ui& ui) {
    return {Tick{"view/labels", "Names", "Names by the parts. Key " + ui.keys_text("view/labels"),
                 &ViewOptions::labels},
            Tick{"view/dimensions", "Dimensions",
                 "Length and clear opening of the selected part, in mm. Key "
                     + ui.keys_text("view/dimensions"),
                 &ViewOptions::dimensions},
            Tick{"view/night", "Night",
                 "All of the window in red light. Key " + ui.keys_text("view/night"),
                 &ViewOptions::night}};
}

void draw_ticks(const PictureUi& ui) {
    for (const Tick& tick : ticks(ui)) {
        bool& value = ui.options.*tick.value;
        if (text_button(ui, tick.name, tick.label, tick.help, true, value)) value = !value;
        ImGui::SameLine();
    }
}

void draw_more(const PictureUi& ui, bool with_ticks) {
    if (icon_button(ui, "view/more", Icon::more, "What else is drawn."))
        ImGui::OpenPopup("view/more/list");
    place_popup_above();
    if (!ImGui::BeginPopup("view/more/list")) return;
    ViewOptions& view = ui.options;
    const auto tick = [&](const char* name, const char* label, bool& value,
                          const std::string& help) {
        ImGui::Checkbox(label, &value);
        ui.describe(name, label, help);
    };
    if (with_ticks) {
        for (const Tick& one : ticks(ui))
            tick(one.name, one.label, view.*one.value, one.help);
    }
    tick("view/light", "Light", view.light, "The traced rays, drawn as light.");
    tick("view/clipped", "Clipped rays", view.clipped_rays,
         "Rays that end before the eye, with a cross where they do.");
    draw_light_choices(ui);
    tick("view/white", "White ground", view.light_ground, "For print and bright rooms.");
    ImGui::SetNextItemWidth(grid(40));
    ImGui::SliderFloat("Brightness of the light", &view.light_gain, 0.2F, 5, "%.1f",
                       ImGuiSliderFlags_Logarithmic);
    constexpr const char* gain_help = "How strongly the rays glow; 1 is usual.";
    ui.describe("view/gain", "Brightness of the light", gain_help);
    if (view.night) {
        ImGui::SetNextItemWidth(grid(40));
        ImGui::SliderFloat("Brightness at night", &view.night_brightness, 0.2F, 1, "%.2f");
        constexpr const char* night_help =
            "Dim the screen itself too: its dark parts are never quite dark.";
        ui.describe("view/night_brightness", "Brightness at night", night_help);
    }
    if (view.shells == ShellView::section) {
        ImGui::SetNextItemWidth(grid(40));
        ImGui::SliderFloat("Place of the cut, mm", &view.section_x_mm, -60, 60, "%.0f");
        constexpr const char* cut_help =
            "How far the cut lies from the middle, to the observer's right.";
        ui.describe("view/section", "Place of the cut", cut_help);
    }
    if (ImGui::MenuItem("Frame the selected part", ui.keys_text("view/frame").c_str()))
        frame_selection(ui);
    constexpr const char* frame_help =
        "Comes so near that the part fills the picture; the whole train while none is selected.";
    ui.describe("view/frame", "Frame the selected part", frame_help);
    ImGui::EndPopup();
}

}  // namespace

float foot_height() { return ImGui::GetFrameHeight() + grid(4); }

float draw_view_bar(const PictureUi& ui, const Area& area) {
    const FootRoom room = foot_room(area.width);
    const float height = ImGui::GetFrameHeight() + grid(2);
    ImGui::SetCursorScreenPos({area.left + grid(2), area.bottom() - height - grid(1)});
    ImGui::PushStyleColor(ImGuiCol_ChildBg, colour(Tone::panel, 0.82F));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(1), grid(1)});
    ImGui::BeginChild("picture/view_bar", {0, height},
                      ImGuiChildFlags_AutoResizeX | ImGuiChildFlags_AlwaysUseWindowPadding,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    ui.state.view_bar_window = present_window();
    draw_views(ui, !room.for_views);
    ImGui::SameLine(0, grid(4));
    if (room.for_views) {
        ImGui::AlignTextToFramePadding();
        dim_text("Tubes");
        ImGui::SameLine(0, grid(1.5F));
    }
    draw_shells(ui, !room.for_tubes);
    ImGui::SameLine(0, grid(4));
    if (room.for_ticks) draw_ticks(ui);
    draw_more(ui, !room.for_ticks);
    ImGui::EndChild();
    return ImGui::GetItemRectMax().x;
}

}  // namespace beamfork
