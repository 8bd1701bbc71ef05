#include "ui/talk/talk.hpp"

#include <algorithm>
#include <cmath>

#include "scene/picture/frame.hpp"
#include "scene/tour/built_in_tours.hpp"
#include "scene/tour/tour_frame.hpp"
#include "scene/tour/tour_motion.hpp"
#include "ui/kit/widgets.hpp"
#include "ui/picture/label_overlay.hpp"
#include "ui/picture/light_key.hpp"
#include "ui/picture/moving_view.hpp"
#include "ui/picture/viewport.hpp"
#include "ui/talk/talk_overlay.hpp"
#include "ui/talk/talk_sight.hpp"

namespace beamfork {

namespace {

constexpr float flight_seconds = 1.6F;
constexpr double pointer_shown_s = 2.5;  // after the mouse has rested so long the room sees none
constexpr double pointer_fades_s = 0.4;
constexpr float talk_zoom_per_notch = 1.15F;

Viewport talk_viewport(const Area& picture) {
    return {std::max(1.0F, picture.width), std::max(1.0F, picture.height)};
}

void fly(const TalkUi& ui, TalkState& talk, const TourStep& step, float aspect) {
    if (talk.is_turned) return;
    const Camera to = tour_camera(step, ui.picture.view.frame, aspect);
    talk.flight_done = std::min(1.0F, talk.flight_done + ImGui::GetIO().DeltaTime / flight_seconds);
    ui.picture.pose.camera = flight_between(talk.from, to, talk.flight_done);
    if (talk.flight_done < 1) ui.pace.animating = true;
}

// What is lit follows the flight, whether or not the speaker has taken the camera; an answer brings its light.
void light_step(const TalkUi& ui, TalkState& talk, const TourStep& step) {
    const float passed = ImGui::GetIO().DeltaTime;
    talk.answers = step.asks ? step.asks->answers.size() : 0;
    if (talk.is_turned && talk.flight_done < 1) {
        talk.flight_done = std::min(1.0F, talk.flight_done + passed / flight_seconds);
        ui.pace.animating = true;
    }
    if (talk.is_revealed && talk.reveal_done < 1) {
        constexpr auto seconds = static_cast<float>(reveal_seconds);
        talk.reveal_done = std::min(1.0F, talk.reveal_done + passed / seconds);
        ui.pace.animating = true;
    }
    const Emphasis to = step_emphasis(step, ui.setup(), eased(talk.reveal_done));
    talk.emphasis = blend(talk.emphasis_from, to, eased(talk.flight_done));
    if (talk.flight_done >= 1) talk.emphasis = to;
    ui.picture.asks.emphasis = talk.emphasis;
    ui.picture.asks.told_step = step;
}

// Once when a step is reached: the speaker's keys may change it after.
void show_what_step_shows(const TalkUi& ui, TalkState& talk, const TourStep& step) {
    if (talk.shown_step == talk.step) return;
    talk.shown_step = talk.step;
    show_moving_view(ui.picture, shown_in(step, talk.seen_before));
}

void turn_by_hand(const TalkUi& ui, TalkState& talk, const Area& picture) {
    const ImGuiIO& io = ImGui::GetIO();
    const Viewport viewport = talk_viewport(picture);
    if (ImGui::IsItemActive() && io.MouseDown[0]
        && (io.MouseDelta.x != 0 || io.MouseDelta.y != 0)) {
        ui.picture.pose.camera =
            orbit(ui.picture.pose.camera, {io.MouseDelta.x, io.MouseDelta.y}, viewport);
        talk.is_turned = true;
    }
    if (ImGui::IsItemHovered() && io.MouseWheel != 0) {
        ui.picture.pose.camera =
            zoom_towards(ui.picture.pose.camera, std::pow(talk_zoom_per_notch, io.MouseWheel),
                         {io.MousePos.x - picture.left, io.MousePos.y - picture.top}, viewport);
        talk.is_turned = true;
    }
}

// 1 while the mouse moves, 0 once it has rested for a while; wakes the window to fade.
float pointer_alpha(const TalkUi& ui, TalkState& talk) {
    const ImGuiIO& io = ImGui::GetIO();
    const double now = ImGui::GetTime();
    if (io.MouseDelta.x != 0 || io.MouseDelta.y != 0 || ImGui::IsAnyMouseDown())
        talk.pointer_moved_s = now;
    const double rested = now - talk.pointer_moved_s;
    if (rested >= pointer_shown_s + pointer_fades_s || !ImGui::IsMousePosValid()) return 0;
    if (rested < pointer_shown_s) {
        ui.pace.wake_within(pointer_shown_s - rested);
        return 1;
    }
    ui.pace.animating = true;
    return static_cast<float>(1 - (rested - pointer_shown_s) / pointer_fades_s);
}

Area draw_talk_picture(const TalkUi& ui, TalkState& talk, const TourStep& step, ImVec2 screen) {
    const TalkLayout layout = talk_layout(screen.x, screen.y);
    const Area picture{0, layout.title_height, screen.x, layout.picture_height};
    const ImVec2 pixels = ImGui::GetIO().DisplayFramebufferScale;
    ui.picture.asks.scene = {std::max(1, static_cast<int>(std::lround(picture.width * pixels.x))),
                             std::max(1, static_cast<int>(std::lround(picture.height * pixels.y)))};
    fly(ui, talk, step, talk_viewport(picture).aspect());
    light_step(ui, talk, step);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (ui.picture.view.texture != ImTextureID{}) {
        list.AddImage(ui.picture.view.texture, picture.corner(),
                      {picture.right(), picture.bottom()}, {0, 1}, {1, 0});
    }
    ImGui::SetCursorScreenPos(picture.corner());
    ImGui::SetNextItemAllowOverlap();
    ImGui::InvisibleButton("talk/picture",
                           {std::max(1.0F, picture.width), std::max(1.0F, picture.height)},
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight);
    ui.note("talk/picture", "The picture", "Drag: turn. Wheel: nearer. The next step flies on.");
    turn_by_hand(ui, talk, picture);
    list.PushClipRect(picture.corner(), {picture.right(), picture.bottom()}, true);
    const float foot = step.asks ? asked_foot(layout) : 0;
    draw_light_key(list, picture.corner(), talk_viewport(picture),
                   {ui.picture.view.frame, ui.picture.pose.camera, ui.picture.options});
    draw_labels(list, picture.corner(), talk_viewport(picture),
                {.frame = ui.picture.view.frame,
                 .camera = ui.picture.pose.camera,
                 .options = ui.picture.options,
                 .selected_part = std::nullopt,
                 .foot_px = foot,
                 .emphasis = talk.emphasis,
                 .glide = &ui.picture.flight.words,
                 .before = kept_in(ui.picture.flight.laid)});
    if (ui.picture.flight.words.moves()) ui.picture.pace.animating = true;
    list.PopClipRect();
    const bool is_told = !step.asks || talk.is_revealed;
    if (is_told && ui.picture.view.told_sight != ImTextureID{})
        draw_talk_sight(list, picture, foot, ui.picture.view.told_sight);
    return picture;
}

void tell_speaker(const TalkUi& ui,
                  const TalkState& talk,
                  const Tour& tour,
                  const TourFrame& shown) {
    const bool is_last = talk.step + 1 == tour.steps.size();
    SpeakerPage page;
    page.words = talk_words(shown);
    page.notes = tour.steps[talk.step].notes;
    page.next = is_last ? "" : tour.steps[talk.step + 1].caption;
    if (!is_last) {
        const auto& asks = tour.steps[talk.step + 1].asks;
        if (asks) page.next = asks->question;
        const auto quotes = tour_quotes(ui.setup(), *ui.report);
        page.next = filled_caption(page.next, quotes).value_or(page.next);
    }
    page.elapsed_s = ImGui::GetTime() - talk.began_s;
    page.night = ui.picture.options.night;
    ui.asks = std::move(page);
    ui.pace.wake_within(1);
}

// The answers can be clicked until one is chosen. Returns the one under the pointer.
std::optional<std::size_t> use_answers(const TalkUi& ui,
                                       const TalkState& talk,
                                       const TalkLayout& layout,
                                       const TalkWords& words) {
    std::optional<std::size_t> hot;
    if (!words.asked) return hot;
    const auto areas = answer_areas(layout, words.asked->answers.size(), words.is_revealed);
    for (std::size_t i = 0; i < areas.size(); ++i) {
        ImGui::SetCursorScreenPos(areas[i].corner());
        const std::string name = "talk/card/" + std::to_string(i + 1);
        const bool is_pressed =
            ImGui::InvisibleButton(name.c_str(), {areas[i].width, areas[i].height});
        if (ImGui::IsItemHovered() && !talk.is_revealed) hot = i;
        ui.note(name, words.asked->answers[i], "The room's answer. Keys 1 to 3.");
        if (is_pressed) choose_answer(ui, i);
    }
    return hot;
}

void draw_told_step(const TalkUi& ui,
                    TalkState& talk,
                    const std::vector<Tour>& tours,
                    std::size_t at) {
    const Tour& tour = tours[at];
    talk.steps = tour.steps.size();
    talk.step = std::min(talk.step, talk.steps - 1);
    show_what_step_shows(ui, talk, tour.steps[talk.step]);
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const float alpha = pointer_alpha(ui, talk);
    const Area picture = draw_talk_picture(ui, talk, tour.steps[talk.step], screen);
    const auto shown = tour_frame(tours, tour.name, static_cast<int>(talk.step) + 1,
                                  tour_quotes(ui.setup(), *ui.report));
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::optional<std::size_t> hot;
    if (shown) {
        TalkWords words = talk_words(*shown);
        words.is_revealed = talk.is_revealed || !words.asked;
        words.chosen = talk.chosen;
        hot = use_answers(ui, talk, talk_layout(screen.x, screen.y), words);
        draw_talk_overlay(list, screen, words, hot);
        ImGui::SetCursorScreenPos({0, picture.bottom()});
        ImGui::Dummy({screen.x, screen.y - picture.bottom()});
        ui.note("talk/caption", newest_words(words));
        if (talk.has_notes) tell_speaker(ui, talk, tour, *shown);
    }
    if (talk.is_black) list.AddRectFilled({0, 0}, screen, IM_COL32(0, 0, 0, 255));
    bool on_button = false;
    if (alpha > 0) {
        const bool darkens = ImGui::IsMouseDown(1);
        if (!talk.is_black && (!hot || darkens)) draw_talk_pointer(list, screen, alpha, darkens);
        Area free = picture;
        if (talk.answers > 0) free.height -= asked_foot(talk_layout(screen.x, screen.y));
        if (!darkens) on_button = draw_talk_buttons(ui, free, alpha);
    }
    if (!on_button && !hot) ImGui::SetMouseCursor(ImGuiMouseCursor_None);
}

}  // namespace

void start_talk(const TalkUi& ui, const std::string& tour) {
    TalkState talk;
    talk.tour = tour;
    talk.before = talk.from = ui.picture.pose.camera;
    talk.seen_before = ui.picture.options;
    talk.began_s = ImGui::GetTime();
    talk.has_notes = ui.view.has_second_screen;
    ui.picture.flight.move.reset();
    ui.state.talk = talk;
}

void leave_talk(const TalkUi& ui) {
    if (!ui.state.talk) return;
    show_moving_view(ui.picture, ui.state.talk->seen_before);
    move_camera(ui.picture, ui.state.talk->before);
    ui.state.talk.reset();
    ui.pace.animating = true;
}

bool draw_talk(const TalkUi& ui) {
    auto& talk = ui.state.talk;
    if (!talk) return false;
    std::vector<Tour> tours;
    if (ui.report != nullptr) tours = all_tours(ui.document, *ui.report);
    const auto found = std::find_if(tours.begin(), tours.end(), [&](const Tour& tour) {
        return tour.name == talk->tour && !tour.steps.empty();
    });
    if (found == tours.end()) {
        leave_talk(ui);
        return false;
    }
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    begin_area("talk", {0, 0, screen.x, screen.y}, Tone::ground,
               ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse
                   | ImGuiWindowFlags_NoNav);
    ImGui::PopStyleVar();
    draw_told_step(ui, *talk, tours, static_cast<std::size_t>(found - tours.begin()));
    ImGui::End();
    use_talk_keys(ui);
    return true;
}

}  // namespace beamfork
