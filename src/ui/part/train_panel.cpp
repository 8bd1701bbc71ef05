#include "ui/part/train_panel.hpp"

#include <algorithm>
#include <cmath>

#include "base/text.hpp"
#include "document/edit.hpp"
#include "scene/focus/focus_budget_rows.hpp"
#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

struct Group {
    const char* caption;
    std::vector<Role> roles;
    bool is_choice;  // one of them is in use
};

const std::vector<Group>& groups() {
    static const std::vector<Group> list{
        {"Light passes", {Role::telescope, Role::focuser, Role::chain, Role::splitter}, false},
        {"Eyepiece pairs", {Role::eyepiece}, true},
        {"Observers", {Role::observer}, true},
        {"Targets", {Role::target}, true},
    };
    return list;
}

bool is_chosen(const Setup& setup, std::size_t part) {
    const Choice& chosen = setup.chosen;
    return part == chosen.eyepiece || part == chosen.observer || part == chosen.target;
}

// What the part adds to the light path or takes from it, from the budget's own bars.
const BudgetBar* bar_of_part(const std::vector<BudgetBar>& bars, std::size_t part) {
    const auto found = std::find_if(bars.begin(), bars.end(),
                                    [&](const BudgetBar& bar) { return bar.part == part; });
    return found == bars.end() ? nullptr : &*found;
}

void draw_row(const TrainUi& ui, std::size_t index, bool is_choice, const BudgetBar* bar) {
    const Part& part = ui.setup().parts[index];
    const bool selected = ui.selected_part == index;
    const std::string id = "train/row/" + std::to_string(index);
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float height = ImGui::GetTextLineHeight() + grid(1.5F);
    if (ImGui::InvisibleButton(id.c_str(), {width, height})) ui.selected_part = index;
    // The arrow keys move the keyboard's focus from row to row, and the selection goes with it.
    const bool has_keyboard = ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
    if (has_keyboard && ui.state.keyboard_row != index) {
        ui.selected_part = index;
        ui.state.keyboard_row = index;
    }
    const bool hot =
        ImGui::IsItemHovered() || ui.kept.hovered_part_before == static_cast<int>(index);
    if (ImGui::IsItemHovered()) ui.hover_part(index);
    if (ImGui::IsItemHovered() && ImGui::IsMouseDoubleClicked(0) && is_choice)
        ui.edit(ChoosePart{index});
    const PartKind& kind = kind_of(part.body);
    ui.describe(id, part.name,
                kind.label + ". " + kind.help + (is_choice ? "\nDouble-click to use it." : ""));

    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 high{low.x + width, low.y + height};
    if (selected || hot)
        list.AddRectFilled(low, high, colour(selected ? Tone::raised_hot : Tone::raised), grid(1));
    if (selected)
        list.AddRectFilled(low, {low.x + grid(0.75F), high.y}, colour(Tone::accent), grid(0.25F));
    const float text_top = low.y + grid(0.75F);
    float left = low.x + grid(3);
    if (is_choice) {
        const ImVec2 centre{left + grid(1.25F), low.y + height / 2};
        list.AddCircle(centre, grid(1.25F), colour(Tone::text_dim), 0, std::max(1.0F, grid(0.3F)));
        if (is_chosen(ui.setup(), index))
            list.AddCircleFilled(centre, grid(0.7F), colour(Tone::text));
        left += grid(4.5F);
    }
    const float value_room = grid(14);
    text_at(list, {left, text_top}, shortened(part.name, high.x - left - value_room),
            colour(Tone::text));
    if (bar != nullptr) {
        text_ending_at(list, {high.x - grid(2), text_top}, typeset(bar->value),
                       text_colour(bar->role));
    }
}

void draw_add_menu(const TrainUi& ui) {
    if (text_button(ui, "train/add", "Add …",
                    "Adds a part to the train: behind the selected one where it may stand.")) {
        ImGui::OpenPopup("train/add/menu");
    }
    place_popup_below();
    if (!ImGui::BeginPopup("train/add/menu")) return;
    for (const PartKind& kind : part_kinds()) {
        const std::string why_not = why_not_add_part(ui, kind.key);
        if (ImGui::MenuItem(kind.label.c_str(), nullptr, false, why_not.empty()))
            add_part(ui, kind.key);
        ui.describe("train/add/" + kind.key, kind.label,
                    why_not.empty() ? kind.help : kind.help + "\n" + why_not);
    }
    ImGui::EndPopup();
}

void draw_tools(const TrainUi& ui) {
    draw_add_menu(ui);
    const auto selected = ui.selected_part;
    const std::size_t part = selected.value_or(0);
    const auto can = [&](const Edit& edit) {
        return selected && apply(ui.document, edit).has_value();
    };
    const auto move = [&](const char* name, Icon icon, const std::string& help, bool possible,
                          std::size_t to) {
        ImGui::SameLine();
        if (icon_button(ui, name, icon, help, possible && can(MovePart{part, to}))) {
            ui.edit(MovePart{part, to});
            ui.selected_part = to;
        }
    };
    move("train/up", Icon::up, ui.with_keys("Nearer to the telescope.", "part/up"), part > 0,
         part - 1);
    move("train/down", Icon::down, ui.with_keys("Nearer to the eyes.", "part/down"), true,
         part + 1);
    ImGui::SameLine();
    if (icon_button(ui, "train/duplicate", Icon::duplicate,
                    ui.with_keys("One more like it, right behind.", "part/duplicate"),
                    can(DuplicatePart{part}))) {
        ui.edit(DuplicatePart{part});
        ui.selected_part = part + 1;
    }
    ImGui::SameLine();
    if (icon_button(ui, "train/remove", Icon::remove, ui.with_keys("Takes it out.", "part/remove"),
                    can(RemovePart{part}))) {
        ui.edit(RemovePart{part});
        ui.selected_part.reset();
    }
    const bool may_be_chosen = selected && can(ChoosePart{part}) && !is_chosen(ui.setup(), part);
    if (may_be_chosen) {
        ImGui::SameLine();
        if (text_button(ui, "train/use", "Use it", "Looks through, as or at the selected one.")) {
            ui.edit(ChoosePart{part});
        }
    }
}

AddPart addition(const Ui& ui, const std::string& kind) {
    const auto& part = ui.selected_part;
    return {kind, part ? std::optional(*part + 1) : std::nullopt};
}

}  // namespace

std::string why_not_add_part(const Ui& ui, const std::string& kind) {
    return refusal(ui.document, addition(ui, kind)).value_or("");
}

void add_part(const Ui& ui, const std::string& kind) {
    const AddPart edit = addition(ui, kind);
    const auto added = apply(ui.document, edit);
    if (!added) return;
    const auto& now = added->setup.parts;
    const auto& before = ui.setup().parts;
    const auto differs = std::mismatch(before.begin(), before.end(), now.begin(), now.end());
    ui.edit(edit);
    ui.selected_part = static_cast<std::size_t>(differs.second - now.begin());
}

void draw_train_panel(const TrainUi& ui) {
    draw_tools(ui);
    const auto bars = ui.report != nullptr ? budget_by_part(*ui.report) : std::vector<BudgetBar>{};
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::BeginChild("train/list", {0, 0}, ImGuiChildFlags_None, ImGuiWindowFlags_NavFlattened);
    ImGui::PopStyleVar();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {grid(2), 0});
    for (const Group& group : groups()) {
        ImGui::Dummy({1, grid(1)});
        const ImVec2 caption = ImGui::GetCursorScreenPos();
        dim_text(group.caption);
        if (&group == &groups().front()) {
            const float right = caption.x + ImGui::GetContentRegionAvail().x - grid(2);
            text_ending_at(*ImGui::GetWindowDrawList(), {right, caption.y}, "light path, mm",
                           colour(Tone::text_dim));
        }
        for (const Role role : group.roles) {
            for (const std::size_t index : parts_with_role(ui.setup(), role)) {
                draw_row(ui, index, group.is_choice, bar_of_part(bars, index));
            }
        }
    }
    ImGui::PopStyleVar();
    ImGui::EndChild();
}

}  // namespace beamfork
