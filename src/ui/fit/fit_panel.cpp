#include "ui/fit/fit_panel.hpp"

#include <algorithm>
#include <string>

#include "base/text.hpp"
#include "scene/fit/fit_rows.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

namespace {

void heading(const char* words) {
    ImGui::PushFont(font(TextFace::bold));
    ImGui::TextUnformatted(words);
    ImGui::PopFont();
}

void draw_value(const Ui& ui, const ValueRow& row, const std::string& id, float width) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float height = ImGui::GetTextLineHeight() + grid(1);
    ImGui::InvisibleButton(id.c_str(), {width, height});
    ui.describe(id, row.label, row.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float end = low.x + width - text_width("mm/mm") - grid(1);
    const std::string value = typeset(row.value);
    text_at(list, low,
            shortened(row.label, end - low.x - text_width(value, TextFace::bold) - grid(2)),
            colour(Tone::text_dim));
    text_ending_at(list, {end, low.y}, value, colour(Tone::text), TextFace::bold);
    text_at(list, {end + grid(1), low.y}, row.unit, colour(Tone::text_dim));
}

void draw_values(const Ui& ui,
                 const std::vector<ValueRow>& rows,
                 const std::string& name,
                 float width) {
    for (std::size_t i = 0; i < rows.size(); ++i)
        draw_value(ui, rows[i], "fit/" + name + "/" + std::to_string(i), width);
}

// Parts, then verdict at the right; the two ends below. A click selects the part behind.
void draw_joint(const Ui& ui, const JointRow& row, const std::string& id, float width) {
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float line = ImGui::GetTextLineHeight();
    if (ImGui::InvisibleButton(id.c_str(), {width, 2 * line + grid(1)}))
        ui.selected_part = row.behind;
    if (ImGui::IsItemHovered()) ui.hover_part(row.behind);
    ui.describe(id, row.parts + ": " + row.verdict, row.help);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink =
        row.role == ColourRole::dimension ? colour(Tone::text_dim) : text_colour(row.role);
    const float end = low.x + width;
    text_at(list, low, shortened(row.parts, width - text_width(row.verdict) - grid(3)),
            colour(Tone::text));
    text_ending_at(list, {end, low.y}, row.verdict, ink);
    text_at(list, {low.x + grid(2), low.y + line}, shortened(row.ends, width - grid(2)),
            colour(Tone::text_dim));
}

// Columns beside each other where there is room, below each other where there is not.
class FitColumns {
public:
    explicit FitColumns(int wanted) : left_(ImGui::GetCursorPosX()), top_(ImGui::GetCursorPosY()) {
        const float all = ImGui::GetContentRegionAvail().x;
        count_ = std::clamp(static_cast<int>(all / grid(70)), 1, wanted);
        width_ = (all - gap() * static_cast<float>(count_ - 1)) / static_cast<float>(count_);
    }
    void begin(int number) const {
        if (count_ == 1 || number == 0) {
            if (number > 0) ImGui::Dummy({1, grid(1)});
        } else if (number < count_) {
            ImGui::SetCursorPos({left_ + static_cast<float>(number) * (width_ + gap()), top_});
        }
        ImGui::BeginGroup();
    }
    static void end() { ImGui::EndGroup(); }
    [[nodiscard]] float width() const { return width_; }

private:
    [[nodiscard]] static float gap() { return grid(5); }
    float left_;
    float top_;
    int count_ = 1;
    float width_ = 0;
};

}  // namespace

void draw_fit_panel(const Ui& ui) {
    const FitRows rows = fit_rows(ui.setup(), *ui.report);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 0});
    const FitColumns columns(3);
    columns.begin(0);
    heading("Eyes and eyepieces");
    draw_values(ui, rows.eyes, "eyes", columns.width());
    constexpr const char* image_help =
        "Against the view without a telescope, from traced rays of two field offsets.";
    dim_text(shortened(rows.image, columns.width()));
    ui.describe("fit/image", rows.image, rows.image + ". " + image_help);
    FitColumns::end();
    columns.begin(1);
    heading("Weight");
    draw_values(ui, rows.weight, "weight", columns.width());
    ImGui::PushTextWrapPos(ImGui::GetCursorPosX() + columns.width());
    ImGui::PushStyleColor(ImGuiCol_Text, colour(Tone::text_dim));
    ImGui::TextUnformatted(rows.weight_note.c_str());
    ImGui::PopStyleColor();
    ImGui::PopTextWrapPos();
    ui.note("fit/weight_note", rows.weight_note);
    FitColumns::end();
    columns.begin(2);
    heading("Joints");
    for (std::size_t i = 0; i < rows.joints.size(); ++i)
        draw_joint(ui, rows.joints[i], "fit/joint/" + std::to_string(i), columns.width());
    FitColumns::end();
    ImGui::PopStyleVar();
}

}  // namespace beamfork
