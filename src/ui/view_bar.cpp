#include <array>

#include "ui/action.hpp"
#include "ui/viewport.hpp"
#include "ui/widgets.hpp"

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

std::string keys_of(const ViewWord& word) {
    return keys_text("view/" + std::string(name_of(word.view)));
}

std::string help_of(const ViewWord& word) {
    return std::string(description_of(word.view)) + " Key " + keys_of(word);
}

void draw_views(const Ui& ui, bool is_narrow) {
    if (is_narrow) {
        if (text_button(ui, "view/menu", "Views …", "Standard views of the train."))
            ImGui::OpenPopup("view/menu/list");
        place_popup_above();
        if (ImGui::BeginPopup("view/menu/list")) {
            for (const ViewWord& word : view_words) {
                if (ImGui::MenuItem(word.word, keys_of(word).c_str())) show_view(ui, word.view);
                tooltip(help_of(word));
            }
            ImGui::EndPopup();
        }
        return;
    }
    for (const ViewWord& word : view_words) {
        if (word.view != StandardView::overview) ImGui::SameLine(0, grid(0.5F));
        if (text_button(ui, "view/" + std::string(name_of(word.view)), word.word, help_of(word))) {
            show_view(ui, word.view);
        }
    }
}

// How much of the bar stands side by side; what does not is in its lists.
enum class BarRoom { all, views_folded, shells_folded, least };

BarRoom room_of_bar(float width) {
    if (width >= grid(235)) return BarRoom::all;
    if (width >= grid(148)) return BarRoom::views_folded;
    return width >= grid(112) ? BarRoom::shells_folded : BarRoom::least;
}

void draw_shells(const Ui& ui) {
    static constexpr std::array<std::string_view, 4> words{"Open", "Whole", "Cut", "Hidden"};
    static constexpr std::array<std::string_view, 4> helps{
        "Tubes are opened towards you.", "Tubes are drawn whole.",
        "Tubes are cut by a plane along the train.", "Tubes are left out: light and glass only."};
    const auto now = static_cast<std::size_t>(ui.session.view.shells);
    ui.session.view.shells = static_cast<ShellView>(segments(ui, "view/shells", words, helps, now));
}

void draw_shells_menu(const Ui& ui) {
    if (text_button(ui, "view/shells/menu", "Tubes …",
                    "Whether tubes are drawn open, whole, cut or not at all."))
        ImGui::OpenPopup("view/shells/list");
    place_popup_above();
    if (!ImGui::BeginPopup("view/shells/list")) return;
    draw_shells(ui);
    ImGui::EndPopup();
}

// What is told of parts in the picture.
void draw_part_words(const Ui& ui) {
    bool& labels = ui.session.view.labels;
    if (text_button(ui, "view/labels", "Names", "Names by the parts. Key N", true, labels))
        labels = !labels;
    ImGui::SameLine();
    bool& dimensions = ui.session.view.dimensions;
    if (text_button(ui, "view/dimensions", "Dimensions",
                    "Length and clear opening of the selected part, in mm. Key "
                        + keys_text("view/dimensions"),
                    true, dimensions))
        dimensions = !dimensions;
}

void draw_more(const Ui& ui, BarRoom room) {
    if (icon_button(ui, "view/more", Icon::more, "What else is drawn."))
        ImGui::OpenPopup("view/more/list");
    place_popup_above();
    if (!ImGui::BeginPopup("view/more/list")) return;
    ViewOptions& view = ui.session.view;
    const auto tick = [&](const char* name, const char* label, bool& value, const char* help) {
        ImGui::Checkbox(label, &value);
        tooltip(help);
        ui.note(name, label, help);
    };
    if (room == BarRoom::least) draw_part_words(ui);
    tick("view/light", "Light", view.light, "The traced rays, drawn as light.");
    tick("view/clipped", "Clipped rays", view.clipped_rays,
         "Rays that end before the eye, with a cross where they do.");
    tick("view/white", "White ground", view.light_ground, "For print and bright rooms.");
    ImGui::SetNextItemWidth(grid(40));
    ImGui::SliderFloat("Brightness of the light", &view.light_gain, 0.2F, 5, "%.1f",
                       ImGuiSliderFlags_Logarithmic);
    ui.note("view/gain", "Brightness of the light");
    if (view.night) {
        ImGui::SetNextItemWidth(grid(40));
        ImGui::SliderFloat("Brightness at night", &view.night_brightness, 0.2F, 1, "%.2f");
        tooltip("Dim the screen itself too: its dark parts are never quite dark.");
        ui.note("view/night_brightness", "Brightness at night");
    }
    if (view.shells == ShellView::section) {
        ImGui::SetNextItemWidth(grid(40));
        ImGui::SliderFloat("Place of the cut, mm", &view.section_x_mm, -60, 60, "%.0f");
        ui.note("view/section", "Place of the cut");
    }
    if (ImGui::MenuItem("Frame the selected part", keys_text("view/frame").c_str()))
        frame_selection(ui);
    ImGui::EndPopup();
}

}  // namespace

float foot_height() { return ImGui::GetFrameHeight() + grid(4); }

float draw_view_bar(const Ui& ui, const Area& area) {
    const BarRoom room = room_of_bar(area.width);
    const float height = ImGui::GetFrameHeight() + grid(2);
    ImGui::SetCursorScreenPos({area.left + grid(2), area.bottom() - height - grid(1)});
    ImGui::PushStyleColor(ImGuiCol_ChildBg, colour(Tone::panel, 0.82F));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {grid(1), grid(1)});
    ImGui::BeginChild("picture/view_bar", {0, height},
                      ImGuiChildFlags_AutoResizeX | ImGuiChildFlags_AlwaysUseWindowPadding,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    draw_views(ui, room != BarRoom::all);
    ImGui::SameLine(0, grid(4));
    if (room == BarRoom::all) {
        ImGui::AlignTextToFramePadding();
        dim_text("Tubes");
        ImGui::SameLine(0, grid(1.5F));
    }
    if (room < BarRoom::shells_folded) {
        draw_shells(ui);
    } else {
        draw_shells_menu(ui);
    }
    ImGui::SameLine(0, grid(4));
    if (room != BarRoom::least) {
        draw_part_words(ui);
        ImGui::SameLine();
    }
    bool& night = ui.session.view.night;
    if (text_button(ui, "view/night", "Night", "All of the window in red light. Key R", true,
                    night))
        night = !night;
    ImGui::SameLine();
    draw_more(ui, room);
    ImGui::EndChild();
    return ImGui::GetItemRectMax().x;
}

}  // namespace beamfork
