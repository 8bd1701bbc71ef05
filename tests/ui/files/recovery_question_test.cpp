#include "ui/desk.hpp"

using namespace beamfork;

TEST_CASE("lost work is asked about until it is answered or put off") {
    Desk desk;
    desk.lost_work = {{"Evening on the hill", "/home/club/evening.train.toml"}};
    desk.frame(3);
    REQUIRE(desk.has("recovery/restore"));
    CHECK(desk.widget("recovery/words").tooltip == "/home/club/evening.train.toml");
    desk.key(ImGuiKey_Escape);
    CHECK_FALSE(desk.last.files.recovery.has_value());
    desk.frame(3);
    CHECK_FALSE(desk.has("recovery/restore"));  // not again before the next start
}

TEST_CASE("the answers restore or discard ask the app once") {
    for (const auto& choice : {std::pair{"recovery/restore", RecoveryAnswer::restore},
                               std::pair{"recovery/discard", RecoveryAnswer::discard}}) {
        const std::string name = choice.first;
        CAPTURE(name);
        Desk desk;
        desk.lost_work = {{"Evening on the hill", ""}};
        desk.frame(3);
        desk.click(name);
        REQUIRE(desk.recovery_answers.size() == 1);
        CHECK(desk.recovery_answers.front() == choice.second);
        desk.frame(2);
        CHECK_FALSE(desk.has(name));
    }
}
