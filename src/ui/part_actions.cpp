#include <algorithm>

#include "document/edit.hpp"
#include "ui/window_actions.hpp"

namespace beamfork {

namespace {

bool can_edit(const Ui& ui, const Edit& edit) {
    return ui.selected_part && apply(ui.document, edit).has_value();
}

std::size_t part_of(const Ui& ui) { return ui.selected_part.value_or(0); }

void edit_part(const Ui& ui, const Edit& edit, std::optional<std::size_t> selected_after) {
    ui.edit(edit);
    ui.selected_part = selected_after;
}

bool has_parts(const Ui& ui) { return !ui.setup().parts.empty(); }

void step_to_part(const Ui& ui, bool down) {
    const std::size_t last = ui.setup().parts.size() - 1;
    auto& part = ui.selected_part;
    if (down) {
        part = part ? std::min(*part + 1, last) : 0;
    } else {
        part = part ? (*part > 0 ? *part - 1 : 0) : last;
    }
}

constexpr ActionEntry handle_entry(
    const char* name, const char* label, ImGuiKey key, int held, void (*run)(const WindowUi&)) {
    return {name,
            "Parts",
            label,
            {{{key, held}}},
            Heard::between_text,
            true,
            [](const WindowUi& ui) { return can_move_handle(ui); },
            run,
            "Select a part that has a length to change."};
}

constexpr std::array part_table{
    handle_entry("handle/more",
                 "Longer, farther out or wider by 0.5 mm",
                 ImGuiKey_RightArrow,
                 ImGuiMod_Alt,
                 [](const WindowUi& ui) { move_handle(ui, half_step_mm, Steps::halves); }),
    handle_entry("handle/less",
                 "Shorter, farther in or narrower by 0.5 mm",
                 ImGuiKey_LeftArrow,
                 ImGuiMod_Alt,
                 [](const WindowUi& ui) { move_handle(ui, -half_step_mm, Steps::halves); }),
    handle_entry("handle/more_fine",
                 "Longer, farther out or wider by 0.05 mm",
                 ImGuiKey_RightArrow,
                 ImGuiMod_Alt | ImGuiMod_Shift,
                 [](const WindowUi& ui) { move_handle(ui, fine_step_mm, Steps::fine); }),
    handle_entry("handle/less_fine",
                 "Shorter, farther in or narrower by 0.05 mm",
                 ImGuiKey_LeftArrow,
                 ImGuiMod_Alt | ImGuiMod_Shift,
                 [](const WindowUi& ui) { move_handle(ui, -fine_step_mm, Steps::fine); }),
    ActionEntry{"part/before",
                "Parts",
                "Select the part before",
                {{{ImGuiKey_UpArrow, 0}}},
                Heard::by_picture,
                true,
                [](const WindowUi& ui) { return has_parts(ui); },
                [](const WindowUi& ui) { step_to_part(ui, false); },
                "The setup has no parts."},
    ActionEntry{"part/next",
                "Parts",
                "Select the next part",
                {{{ImGuiKey_DownArrow, 0}}},
                Heard::by_picture,
                true,
                [](const WindowUi& ui) { return has_parts(ui); },
                [](const WindowUi& ui) { step_to_part(ui, true); },
                "The setup has no parts."},
    ActionEntry{"part/up",
                "Parts",
                "Move the part nearer to the telescope",
                {{{ImGuiKey_UpArrow, ImGuiMod_Alt}}},
                Heard::between_text,
                true,
                [](const WindowUi& ui) {
                    const std::size_t at = part_of(ui);
                    return at > 0 && can_edit(ui, MovePart{at, at - 1});
                },
                [](const WindowUi& ui) {
                    const std::size_t at = part_of(ui);
                    edit_part(ui, MovePart{at, at - 1}, at - 1);
                },
                "Select a part that may stand nearer to the telescope."},
    ActionEntry{"part/down",
                "Parts",
                "Move the part nearer to the eyes",
                {{{ImGuiKey_DownArrow, ImGuiMod_Alt}}},
                Heard::between_text,
                true,
                [](const WindowUi& ui) {
                    return can_edit(ui, MovePart{part_of(ui), part_of(ui) + 1});
                },
                [](const WindowUi& ui) {
                    const std::size_t at = part_of(ui);
                    edit_part(ui, MovePart{at, at + 1}, at + 1);
                },
                "Select a part that may stand nearer to the eyes."},
    ActionEntry{
        "part/duplicate",
        "Parts",
        "Duplicate the part",
        {{{ImGuiKey_D, ImGuiMod_Ctrl}}},
        Heard::between_text,
        false,
        [](const WindowUi& ui) { return can_edit(ui, DuplicatePart{part_of(ui)}); },
        [](const WindowUi& ui) { edit_part(ui, DuplicatePart{part_of(ui)}, part_of(ui) + 1); },
        "Select a part of which there may be two."},
    ActionEntry{"part/remove",
                "Parts",
                "Remove the part",
                {{{ImGuiKey_Delete, 0}}},
                Heard::between_text,
                false,
                [](const WindowUi& ui) { return can_edit(ui, RemovePart{part_of(ui)}); },
                [](const WindowUi& ui) { edit_part(ui, RemovePart{part_of(ui)}, std::nullopt); },
                "Select a part that can be left out."},
    ActionEntry{"part/use",
                "Parts",
                "Use the selected eyepiece, observer or target",
                {},
                Heard::between_text,
                false,
                [](const WindowUi& ui) { return can_edit(ui, ChoosePart{part_of(ui)}); },
                [](const WindowUi& ui) { ui.edit(ChoosePart{part_of(ui)}); },
                "Select an eyepiece pair, an observer or a target."},
    ActionEntry{"part/rename",
                "Parts",
                "Rename the part",
                {{{ImGuiKey_F2, 0}}},
                Heard::between_text,
                false,
                [](const WindowUi& ui) { return ui.selected_part.has_value(); },
                [](const WindowUi& ui) {
                    ui.session.layout.folded.erase("part");
                    ui.state.of_document.part.focus_name = true;
                },
                "Select a part."},
};

}  // namespace

std::span<const ActionEntry> part_actions() { return part_table; }

}  // namespace beamfork
