// The page that explains the words of the trade.
#include "parts/refractor.hpp"
#include "scene/words/glossary.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("the glossary opens by key, button and menu, and letters narrow it down") {
    Desk desk;
    desk.key(ImGuiKey_F1, {ImGuiMod_Shift});
    desk.frame(2);
    for (const Term& term : glossary())
        CHECK_MESSAGE(desk.has("glossary/" + std::string(term.word)), term.word);
    desk.type("back fo");
    CHECK(desk.has("glossary/back focus"));
    CHECK_FALSE(desk.has("glossary/vanes"));
    desk.click("glossary/close");
    CHECK_FALSE(desk.has("glossary/typed"));
    desk.click("status/glossary");
    desk.frame(2);
    CHECK(desk.has("glossary/vanes"));  // what was typed is forgotten
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.has("glossary/typed"));
    desk.click("file/menu");
    desk.click("file/glossary");
    desk.frame(2);
    CHECK(desk.has("glossary/typed"));
}

TEST_CASE("the key explains the word under the pointer") {
    Desk desk;
    const std::size_t telescope = desk.index<Refractor>();
    desk.select(telescope);
    desk.move(desk.place("field/back_focus_mm/slider"));
    CHECK(desk.widget("status/words").label == "Shift+F1 explains “back focus”");
    desk.key(ImGuiKey_F1, {ImGuiMod_Shift});
    desk.frame(2);
    CHECK(desk.has("glossary/back focus"));
    CHECK_FALSE(desk.has("glossary/aperture"));
    desk.type("apert");  // in place of the word
    CHECK(desk.has("glossary/aperture"));
}

TEST_CASE("a word of the trade is explained from the search of actions") {
    Desk desk;
    desk.key(ImGuiKey_K, {ImGuiMod_Ctrl});
    desk.type("explain exit pupil");
    desk.key(ImGuiKey_Enter);
    desk.frame(3);
    CHECK(desk.has("glossary/exit pupil"));
    CHECK_FALSE(desk.has("glossary/vanes"));
}

TEST_CASE("the glossary scrolls by keyboard while one types") {
    Desk desk;
    desk.key(ImGuiKey_F1, {ImGuiMod_Shift});
    desk.frame(2);
    const float before = desk.widget("glossary/vanes").low.y;
    desk.key(ImGuiKey_PageDown);
    CHECK(desk.widget("glossary/vanes").low.y < before - 100);
    desk.key(ImGuiKey_PageUp);
    CHECK(desk.widget("glossary/vanes").low.y == before);
}
