#include "scene/words/assumptions.hpp"

#include "ui/kit/reading_page.hpp"
#include "ui/shell/notice_bar.hpp"

namespace beamfork {

void draw_assumptions(const ShellUi& ui) {
    draw_reading_page(ui, {"What is assumed", "assumptions", assumptions(),
                           "Try before you buy where you can: a card behind the drawtube shows "
                           "where the image is.",
                           "Close"});
}

}  // namespace beamfork
