#include "ui/files/describe_dialog.hpp"

#include <array>

#include "base/text.hpp"
#include "ui/files/unsaved_guard.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"
#include "ui/kit/tooltip.hpp"

#include <imgui_stdlib.h>

namespace beamfork {

namespace {

constexpr const char* describe_popup = "Describe my setup";

// What the empty entry shows: "I don’t know: 120 ± 40 mm".
std::string hint_of(const SetupAnswers& answers, const SetupQuestion& question) {
    const UsualValue usual = usual_value(answers, question.key);
    const char* unit = question.unit == NumberUnit::degree ? "°" : " mm";
    return "I don’t know: " + format_exact(usual.value) + " ± " + format_exact(usual.plus_minus)
           + unit;
}

void draw_kinds(const FilesUi& ui, SetupAnswers& answers) {
    constexpr std::array<std::string_view, 3> telescopes{"Lens", "Mirror, eyepiece at the side",
                                                         "Mirrors, eyepiece at the back"};
    constexpr std::array<std::string_view, 3> telescope_helps{
        "A refractor: a long tube with a lens in front.",
        "A Newtonian: one looks in from the side, near the tube's front end.",
        "A moving-mirror Cassegrain: a short, thick tube, focused by a knob that moves its "
        "mirror."};
    constexpr std::array<std::string_view, 5> diagonals{"I don’t know", "None", "Prism, 31.7 mm",
                                                        "Mirror, 31.7 mm", "Mirror, 50.8 mm"};
    constexpr std::array<std::string_view, 5> diagonal_helps{
        "A small prism is taken; at a Newtonian, none.", "One looks straight along the drawtube.",
        "Turns the view by 90° with a piece of glass; usual for 31.7 mm barrels (1¼ inch).",
        "Turns the view by 90° with a flat mirror, for 31.7 mm barrels (1¼ inch).",
        "Turns the view by 90° with a flat mirror, for 50.8 mm barrels (2 inch): a long light "
        "path."};
    dim_text("What does your telescope gather light with?");
    answers.telescope =
        static_cast<TelescopeAnswer>(segments(ui, "describe/telescope", telescopes, telescope_helps,
                                              static_cast<std::size_t>(answers.telescope), true));
    dim_text("Which diagonal turns the view so that you look down?");
    answers.diagonal =
        static_cast<DiagonalAnswer>(segments(ui, "describe/diagonal", diagonals, diagonal_helps,
                                             static_cast<std::size_t>(answers.diagonal), true));
    ImGui::Dummy({1, grid(1)});
}

void draw_question(const FilesUi& ui, DescribeDialog& dialog, const SetupQuestion& question) {
    std::string& typed = dialog.typed[question.key];
    const std::string hint = hint_of(dialog.answers, question);
    const std::string name = std::string("describe/") + question.key;
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(shortened(question.ask, width / 2).c_str());
    tooltip(question.help);
    ImGui::SameLine(width * 0.48F);
    ImGui::SetNextItemWidth(-1);
    ImGui::InputTextWithHint(("##" + name).c_str(), hint.c_str(), &typed);
    const std::string help = std::string(question.help) + " Leave it empty if you don’t know. "
                             + typing_help(question.unit);
    ui.describe(name, question.ask, help);
}

void make_it(const FilesUi& ui, DescribeDialog& dialog) {
    dialog.error.clear();
    dialog.answers.numbers.clear();
    for (const SetupQuestion& question : setup_questions()) {
        const std::string& typed = dialog.typed[question.key];
        if (typed.find_first_not_of(' ') == std::string::npos) continue;
        const auto number = parse_typed(typed, question.unit);
        if (!number) {
            dialog.error = std::string(question.ask) + ": " + number.error().what;
            return;
        }
        dialog.answers.numbers[question.key] = *number;
    }
    const auto setup = described_setup(dialog.answers);
    if (!setup) {
        dialog.error = setup.error().what;
        return;
    }
    ui.state.describe_dialog.reset();
    ask_for_command(ui, StartSetup{*setup});
}

void draw_describe_answers(const FilesUi& ui, DescribeDialog& dialog) {
    if (!dialog.error.empty()) {
        wrapped_text(dialog.error, colour(Tone::danger));
        ui.note("describe/error", dialog.error);
    }
    ImGui::Dummy({1, grid(1)});
    if (text_button(ui, "describe/close", "Cancel", "Stays with this setup. Esc")
        || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        ui.state.describe_dialog.reset();
        return;
    }
    ImGui::SameLine();
    if (text_button(ui, "describe/make", "Show me my setup",
                    "Puts the parts together; every number can be changed afterwards."))
        make_it(ui, dialog);
}

}  // namespace

void start_describe_dialog(const FilesUi& ui) {
    if (!ui.state.describe_dialog) ui.state.describe_dialog.emplace();
}

void draw_describe_dialog(const FilesUi& ui) {
    if (!ui.state.describe_dialog) return;
    DescribeDialog& dialog = *ui.state.describe_dialog;
    if (!dialog.opened) ImGui::OpenPopup(describe_popup);
    dialog.opened = true;
    if (!begin_question(describe_popup, grid(150))) return;
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted(describe_popup);
    ImGui::PopFont();
    wrapped_text("Type what you know and leave the rest empty: a usual value is taken, with a wide "
                 "±, and the program tells how much that leaves open.",
                 colour(Tone::text_dim));
    draw_kinds(ui, dialog.answers);
    for (const SetupQuestion& question : setup_questions())
        draw_question(ui, dialog, question);
    draw_describe_answers(ui, dialog);
    if (!ui.state.describe_dialog) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

}  // namespace beamfork
