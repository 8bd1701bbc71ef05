#include "document/edit.hpp"
#include "document/history.hpp"
#include "parts/refractor.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

void set_focal_length(History& history, double focal_length) {
    const SetField edit{0, "focal_length_mm", focal_length};
    auto changed = apply(*history.document(), edit);
    REQUIRE(changed.has_value());
    history.commit(std::move(*changed), describe(edit, *history.settled()));
}

double focal_length(const History& history) {
    return part_as<Refractor>(history.document()->setup, 0).focal_length.value;
}

}  // namespace

TEST_CASE("one press of the mouse on a slider is one undo step, however many values it passed") {
    History history(new_document());
    const auto first = history.document();
    history.begin_gesture();
    for (const double value : {500.0, 510.0, 520.0, 700.0}) {
        set_focal_length(history, value);
        CHECK(focal_length(history) == value);  // every value is seen while it moves
    }
    CHECK(history.can_undo());
    history.end_gesture();
    CHECK(history.labels() == std::vector<std::string>{"Refractor: Focal length 480 → 700 mm"});
    history.undo();
    CHECK(history.document() == first);
    CHECK_FALSE(history.can_undo());
    history.redo();
    CHECK(focal_length(history) == 700);
}

TEST_CASE("a gesture that is cancelled or comes back to where it began leaves no step and loses no "
          "redo") {
    History history(new_document());
    set_focal_length(history, 600);
    history.undo();
    history.begin_gesture();
    set_focal_length(history, 900);
    CHECK_FALSE(history.can_redo());
    history.cancel_gesture();
    CHECK(history.can_redo());
    CHECK(*history.document() == new_document());
    history.begin_gesture();
    set_focal_length(history, 900);
    set_focal_length(history, 480);
    history.end_gesture();
    CHECK(history.can_redo());
    CHECK_FALSE(history.can_undo());
}

TEST_CASE("undo in the middle of a gesture takes the gesture back") {
    History history(new_document());
    history.begin_gesture();
    set_focal_length(history, 900);
    CHECK(history.undo_label() == "Refractor: Focal length 480 → 900 mm");
    history.undo();
    CHECK_FALSE(history.in_gesture());
    CHECK(focal_length(history) == 480);
    CHECK(history.redo_label() == "Refractor: Focal length 480 → 900 mm");
}

TEST_CASE("a new step drops what could be redone") {
    History history(new_document());
    set_focal_length(history, 600);
    set_focal_length(history, 700);
    history.undo();
    set_focal_length(history, 800);
    CHECK_FALSE(history.can_redo());
    CHECK(history.labels().size() == 2);
    CHECK(history.position() == 2);
    history.undo();
    CHECK(focal_length(history) == 600);
}

TEST_CASE("a document counts as modified while it differs from what is in the file") {
    History history(new_document());
    CHECK_FALSE(history.is_modified());
    set_focal_length(history, 600);
    CHECK(history.is_modified());
    history.mark_saved();
    CHECK_FALSE(history.is_modified());
    history.undo();
    CHECK(history.is_modified());
    history.redo();
    CHECK_FALSE(history.is_modified());
}

TEST_CASE("a commit that changes nothing is no step") {
    History history(new_document());
    set_focal_length(history, 480);
    CHECK_FALSE(history.can_undo());
}

TEST_CASE("steps beyond the longest row are forgotten from the old end") {
    History history(new_document());
    for (std::size_t i = 0; i < History::most_steps + 5; ++i)
        set_focal_length(history, 481 + static_cast<double>(i));
    CHECK(history.labels().size() == History::most_steps);
    while (history.can_undo())
        history.undo();
    CHECK(focal_length(history) == 485);
}

TEST_CASE("a jump goes to any step, keeps the others, and a new change drops what comes behind") {
    History history(new_document());
    const auto first = history.document();
    for (const double value : {500.0, 600.0, 700.0})
        set_focal_length(history, value);
    history.go_to(1);
    CHECK(focal_length(history) == 500);
    CHECK(history.labels().size() == 3);
    history.go_to(99);
    CHECK(focal_length(history) == 700);
    history.go_to(0);
    CHECK(history.document() == first);
    history.go_to(2);
    set_focal_length(history, 650);
    CHECK(history.labels().size() == 3);
    CHECK_FALSE(history.can_redo());
    history.begin_gesture();
    set_focal_length(history, 660);
    history.go_to(0);  // ends the gesture first
    CHECK(history.labels().size() == 4);
    CHECK(history.document() == first);
}
