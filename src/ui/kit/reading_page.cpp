#include "ui/kit/reading_page.hpp"

#include <string>

#include "ui/kit/buttons.hpp"
#include "ui/kit/choosers.hpp"
#include "ui/kit/lettering.hpp"

namespace beamfork {

void draw_reading_page(const Ui& ui, const ReadingPage& page) {
    if (!begin_question(page.title, grid(150))) return;
    for (const Paragraph& paragraph : page.paragraphs) {
        ImGui::PushFont(font(TextFace::bold));
        ImGui::TextUnformatted(paragraph.heading);
        ImGui::PopFont();
        wrapped_text(paragraph.text, colour(Tone::text_dim));
        ImGui::Dummy({1, grid(1)});
    }
    wrapped_text(page.last_words, colour(Tone::text));
    ImGui::Dummy({1, grid(1)});
    const std::string close = std::string(page.stem) + "/close";
    if (text_button(ui, close, page.button, "Esc") || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        ImGui::CloseCurrentPopup();
    }
    ImGui::EndPopup();
}

}  // namespace beamfork
