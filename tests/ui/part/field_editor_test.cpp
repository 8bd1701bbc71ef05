#include <cmath>

#include "parts/prism_diagonal.hpp"
#include "parts/shifter.hpp"
#include "parts/spacer.hpp"
#include "support/near.hpp"
#include "ui/desk.hpp"
#include "ui/kit/field_numbers.hpp"

using namespace beamfork;

namespace {

// The distance of a spacer, the simplest of all fields.
struct SpacerDesk : Desk {
    SpacerDesk() { select(index<Spacer>()); }
    [[nodiscard]] double length() const { return the<Spacer>().length.value; }
};

}  // namespace

TEST_CASE("a number that is typed is one edit, and Ctrl+Z takes it back") {
    SpacerDesk desk;
    const double before = desk.length();
    desk.retype("field/length_mm/entry", "12.5");
    REQUIRE(desk.edits.size() == 1);
    const auto& edit = std::get<SetField>(desk.edits.front().change);
    CHECK(edit.part == desk.index<Spacer>());
    CHECK(edit.key == "length_mm");
    CHECK(desk.length() == 12.5);
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    CHECK(desk.length() == before);
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl, ImGuiMod_Shift});
    CHECK(desk.length() == 12.5);
    desk.key(ImGuiKey_Z, {ImGuiMod_Ctrl});
    desk.key(ImGuiKey_Y, {ImGuiMod_Ctrl});
    CHECK(desk.length() == 12.5);
}

TEST_CASE(
    "a typed number counts when the entry is left by Tab or by a click elsewhere, not by Escape") {
    SpacerDesk desk;
    desk.retype("field/length_mm/entry", "7", ImGuiKey_Tab);
    CHECK(desk.length() == 7);
    desk.retype("field/length_mm/entry", "8", ImGuiKey_Escape);
    CHECK(desk.length() == 7);
    desk.click("field/length_mm/entry");
    desk.key(ImGuiKey_A, {ImGuiMod_Ctrl});
    desk.type("9");
    desk.click("picture/canvas");
    CHECK(desk.length() == 9);
}

TEST_CASE("a decimal comma is understood") {
    SpacerDesk desk;
    desk.retype("field/length_mm/entry", "3,5");
    CHECK(desk.length() == 3.5);
}

TEST_CASE("units, fractions and small sums are understood") {
    SpacerDesk desk;
    desk.retype("field/length_mm/entry", "1 1/4 in");
    CHECK(desk.length() == 31.75);  // the inch is 25.4 mm
    desk.retype("field/length_mm/entry", "35+1");
    CHECK(desk.length() == 36);
    desk.retype("field/length_mm/entry", "2*17,5 mm");
    CHECK(desk.length() == 35);
    desk.retype("field/length_mm/entry", "8 deg");
    CHECK(desk.length() == 35);
    CHECK(desk.widget("field/length_mm/refusal").label.find("a length is expected")
          != std::string::npos);
}

TEST_CASE("arrow keys step a number while its entry is edited, one undo step for each press") {
    SpacerDesk desk;
    desk.retype("field/length_mm/entry", "20");
    const FieldInfo info = find_kind("spacer")->fields.front();
    REQUIRE(info.key == "length_mm");
    const double step = key_step(info, false, false);
    desk.click("field/length_mm/entry");
    const auto labels = desk.history().labels().size();
    desk.key(ImGuiKey_UpArrow);
    CHECK(desk.length() == 20 + step);
    desk.key(ImGuiKey_UpArrow, {ImGuiMod_Shift});
    CHECK(near(desk.length(), 20 + 11 * step, rounding));
    desk.key(ImGuiKey_DownArrow, {ImGuiMod_Ctrl});
    CHECK(near(desk.length(), 20 + 10.9 * step, rounding));
    CHECK(desk.history().labels().size() == labels + 3);
    CHECK(desk.gestures_began == desk.gestures_ended);
    desk.key(ImGuiKey_Enter);
    CHECK(near(desk.length(), 20 + 10.9 * step, rounding));
    desk.click("edit/undo");
    CHECK(near(desk.length(), 20 + 11 * step, rounding));
    desk.retype("field/length_mm/entry", "0");
    desk.click("field/length_mm/entry");
    desk.key(ImGuiKey_DownArrow);  // no farther than the field accepts
    CHECK(desk.length() == 0);
    CHECK_FALSE(desk.has("field/length_mm/refusal"));
    CHECK(desk.widget("field/length_mm/entry").tooltip.find("Arrow up and down")
          != std::string::npos);
}

TEST_CASE("what is no number or out of range changes nothing and says why") {
    SpacerDesk desk;
    const double before = desk.length();
    for (const char* text : {"wide", "-5", "1e9", "nan"}) {
        desk.retype("field/length_mm/entry", text);
        CHECK(desk.edits.empty());
        CHECK(desk.length() == before);
        REQUIRE(desk.has("field/length_mm/refusal"));
        CHECK(desk.widget("field/length_mm/refusal").label.size() > 10);
    }
    desk.retype("field/length_mm/entry", "4");
    CHECK_FALSE(desk.has("field/length_mm/refusal"));
}

TEST_CASE("a slider answers while it moves, and its whole drag is one undo step") {
    SpacerDesk desk;
    const double before = desk.length();
    desk.drag(desk.place("field/length_mm/slider", 0.2F),
              desk.place("field/length_mm/slider", 0.8F));
    CHECK(desk.gestures_began == 1);
    CHECK(desk.gestures_ended == 1);
    CHECK(desk.edits.size() >= 4);
    CHECK(desk.history().labels().size() == 1);
    const auto kind = *find_kind("spacer");
    const FieldInfo& info = kind.fields.front();
    const double wanted = info.usual_low + 0.8 * (info.usual_high - info.usual_low);
    CHECK(near(desk.length(), wanted,
               0.05 * (info.usual_high - info.usual_low)));  // the grip's half width
    desk.click("edit/undo");
    CHECK(desk.length() == before);
}

TEST_CASE("a slider moves in round steps") {
    SpacerDesk desk;
    desk.drag(desk.place("field/length_mm/slider", 0.1F),
              desk.place("field/length_mm/slider", 0.37F));
    const double in_twentieths = desk.length() * 20;
    CHECK(near(in_twentieths, std::round(in_twentieths), 1e-9));  // rounding
}

TEST_CASE("the kind's own value comes back by one press") {
    SpacerDesk desk;
    CHECK(desk.has("field/length_mm/reset") == (desk.length() != Spacer{}.length.value));
    desk.retype("field/length_mm/entry", "44");
    desk.click("field/length_mm/reset");
    CHECK(desk.length() == Spacer{}.length.value);
    CHECK_FALSE(desk.has("field/length_mm/reset"));
}

TEST_CASE(
    "a stated light path is ticked on with the derived one, so that nothing moves, and off again") {
    Desk desk;
    desk.select(desk.index<PrismDiagonal>());
    REQUIRE_FALSE(desk.the<PrismDiagonal>().stated_light_path.has_value());
    CHECK_FALSE(desk.has("field/stated_light_path_mm/entry"));
    const auto before = make_report(desk.setup(), desk.setup().chosen, ClippingEffort{16});
    desk.click("field/stated_light_path_mm/stated");
    REQUIRE(desk.the<PrismDiagonal>().stated_light_path.has_value());
    const auto after = make_report(desk.setup(), desk.setup().chosen, ClippingEffort{16});
    CHECK(near(after->budget.wanted_drawtube.value, before->budget.wanted_drawtube.value,
               0.5));  // a slider's step at most
    CHECK(desk.has("field/stated_light_path_mm/entry"));
    desk.click("field/stated_light_path_mm/stated");
    CHECK_FALSE(desk.the<PrismDiagonal>().stated_light_path.has_value());
}

TEST_CASE("a choice is made from a list, and fields that no longer matter go away") {
    Desk desk(cured_setup());
    desk.select(desk.index<Shifter>());
    const bool by_focal_length = desk.the<Shifter>().given == ShifterGiven::focal_length;
    CHECK(desk.has("field/focal_length_mm/entry") == by_focal_length);
    CHECK(desk.has("field/stated_gain_mm/entry") != by_focal_length);
    desk.click("field/given_by/choice");
    desk.click(by_focal_length ? "field/given_by/choice/factor and gain"
                               : "field/given_by/choice/focal length");
    REQUIRE(desk.edits.size() == 1);
    CHECK((desk.the<Shifter>().given == ShifterGiven::focal_length) != by_focal_length);
    desk.frame(2);
    CHECK(desk.has("field/focal_length_mm/entry") != by_focal_length);
    CHECK(desk.has("field/stated_gain_mm/entry") == by_focal_length);
}

TEST_CASE("every field of every kind has a widget with its label, its help and its range") {
    for (const PartKind& kind : part_kinds()) {
        Desk desk(cured_setup());
        std::size_t part = 0;
        const auto holds = [&] { return kind_of(desk.setup().parts[part].body).key == kind.key; };
        while (part < desk.setup().parts.size() && !holds())
            ++part;
        if (part == desk.setup().parts.size()) {
            auto added = apply(*desk.history().document(), AddPart{kind.key, std::nullopt});
            if (!added) {  // a second telescope: it takes the first one's place
                REQUIRE(kind.role == Role::telescope);
                added = *desk.history().document();
                added->setup.parts.front().body = kind.fresh;
            }
            desk.put(added->setup);
            part = 0;
            while (!holds())
                ++part;
        }
        desk.select(part);
        for (const FieldInfo& field : kind.fields) {
            CAPTURE(kind.key + "." + field.key);
            if (!field.only_if.empty()) {
                Setup changed = desk.setup();
                PartBody& body = changed.parts[part].body;
                for (const FieldCondition& condition : field.only_if)
                    body = with_field_unchecked(body, condition.key, condition.word).value();
                desk.put(changed);
                desk.frame(2);
            }
            const char* piece = field.type == FieldType::choice            ? "choice"
                                : field.type == FieldType::optional_number ? "stated"
                                                                           : "entry";
            REQUIRE(desk.has("field/" + field.key + "/" + piece));
            const LoggedWidget& widget = desk.widget("field/" + field.key + "/" + piece);
            CHECK(widget.label == field.label);
            CHECK(widget.tooltip.find(field.help) != std::string::npos);
            CHECK(widget.high.x > widget.low.x + 10);
            if (field.type != FieldType::number) continue;
            CHECK(desk.has("field/" + field.key + "/slider"));
            CHECK(widget.tooltip.find("Accepts") != std::string::npos);
        }
    }
}
