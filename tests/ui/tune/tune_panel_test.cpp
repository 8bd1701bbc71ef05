#include "parts/refractor.hpp"
#include "scene/tune/tune_choice.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"

using namespace beamfork;

namespace {

// The study shown wide, worked out at once after each frame as the window does in the background.
struct TuneDesk : Desk {
    explicit TuneDesk(Setup setup = cured_setup()) : Desk(std::move(setup)) {
        session.layout.study = "tune";
        session.layout.study_is_wide = true;
        session.tune.varied = back_focus();
        work_it_out();
    }
    void work_it_out() {
        frame(2);
        REQUIRE(last.tune.has_value());
        auto made = study_tuning(setup(), setup().chosen, *last.tune, {64});
        REQUIRE(made.has_value());
        made->changes = sensitivities(setup(), setup().chosen, last.tune->watched, {64});
        made->has_changes = true;
        tune = *std::move(made);
        frame(2);
    }
    [[nodiscard]] std::string back_focus() const {
        return setup().parts.front().name + ".back_focus_mm";
    }
    [[nodiscard]] double value() const { return the<Refractor>().back_focus.value; }
};

}  // namespace

TEST_CASE("the panel asks for its study while it is shown, and for nothing while it is hidden") {
    Desk desk;
    CHECK_FALSE(desk.last.tune.has_value());
    TuneDesk shown;
    CHECK(shown.last.tune->watched == Watched::margin);
    CHECK(shown.last.tune->wanted == 5);
    shown.session.layout.study = "magnification";
    shown.frame(2);
    CHECK_FALSE(shown.last.tune.has_value());
}

TEST_CASE("number and result are chosen from lists, and stay chosen in the session") {
    TuneDesk desk;
    desk.click("tune/watched");
    desk.click("tune/watched/true_field");
    CHECK(desk.session.tune.watched == "true_field");
    CHECK(desk.last.tune->watched == Watched::true_field);
    CHECK_FALSE(desk.last.tune->wanted.has_value());
    desk.click("tune/varied");
    desk.click("tune/varied/" + desk.setup().parts.front().name + ".focal_length_mm");
    CHECK(desk.last.tune->varied.key == "focal_length_mm");
    desk.click("tune/range/all");
    CHECK(desk.last.tune->is_whole_range);
    CHECK(desk.edits.empty());
}

TEST_CASE("a press in the plot sets the number, a drag is one undo step") {
    TuneDesk desk;
    const double before = desk.value();
    desk.drag(desk.place("tune/plot", 0.4F), desk.place("tune/plot", 0.8F));
    CHECK(desk.gestures_began == 1);
    CHECK(desk.gestures_ended == 1);
    CHECK(desk.history().labels().size() == 1);
    CHECK(desk.value() > before);
    CHECK(near(desk.value() * 2, std::round(desk.value() * 2), 1e-9));  // round steps
    desk.click("edit/undo");
    CHECK(desk.value() == before);
}

TEST_CASE("a typed wish is solved, and one press sets what gives it") {
    TuneDesk desk;
    desk.retype("tune/wanted", "1 cm");
    CHECK(desk.last.tune->wanted == 10);
    desk.work_it_out();
    REQUIRE(desk.has("tune/set/0"));
    desk.click("tune/set/0");
    const auto budget = focus_budget(desk.setup(), desk.setup().chosen);
    CHECK(near(std::min(budget->margin_in, budget->margin_out).value, 10,
               0.001));  // set to a thousandth
    CHECK(desk.history().labels().size() == 1);
    desk.retype("tune/wanted", "ten");
    CHECK(desk.widget("tune/problem").label.find("a length") != std::string::npos);
    desk.retype("tune/wanted", " ");
    CHECK_FALSE(desk.last.tune->wanted.has_value());
}

TEST_CASE("a row of the table leads to its part") {
    TuneDesk desk;
    REQUIRE(desk.has("tune/change/0"));
    desk.click("tune/change/0");
    CHECK(desk.session.pose.selected_part.has_value());
}

TEST_CASE("what was worked out for other parts is not shown") {
    TuneDesk desk;
    desk.put(short_setup());
    desk.frame(2);
    CHECK_FALSE(desk.has("tune/plot"));
}

TEST_CASE("a right click on a number's name in its part leads to its curve") {
    Desk desk(cured_setup());
    desk.select(desk.index<Refractor>());
    desk.click("field/focal_length_mm/label", 1);
    CHECK(desk.session.layout.study == "tune");
    REQUIRE(desk.last.tune.has_value());
    CHECK(desk.last.tune->varied.key == "focal_length_mm");
    CHECK(desk.widget("field/focal_length_mm/label").tooltip.find("Tune") != std::string::npos);
    CHECK(desk.widget("field/coating/label").tooltip.find("Tune") == std::string::npos);
    CHECK(desk.edits.empty());
}
