#include "document/edit.hpp"
#include "document/history.hpp"
#include "document/sample.hpp"
#include "document/screen_words.hpp"
#include "parts/refractor.hpp"

#include <doctest/doctest.h>

using namespace beamfork;

namespace {

// Telescope, focuser, head, pair, observer, target: one part of every role.
enum : std::size_t { telescope, focuser, head, pair, observer, target };

Document after(const Document& document, const Edit& edit) {
    auto changed = apply(document, edit);
    if (!changed) FAIL(to_text(changed.error()));
    return std::move(*changed);
}

std::string error_of(const Document& document, const Edit& edit) {
    const auto changed = apply(document, edit);
    REQUIRE_FALSE(changed.has_value());
    return changed.error().what;
}

bool contains(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

std::vector<std::string> names(const Document& document) {
    std::vector<std::string> found;
    for (const Part& part : document.setup.parts)
        found.push_back(part.name);
    return found;
}

}  // namespace

TEST_CASE("a field is changed in the one part that is meant") {
    const Document before = new_document();
    const Document changed = after(before, SetField{telescope, "focal_length_mm", 900.0});
    CHECK(part_as<Refractor>(changed.setup, telescope).focal_length == Millimetres{900});
    Document expected = before;
    expected.setup.parts[telescope].body.get<Refractor>().focal_length = Millimetres{900};
    CHECK(changed == expected);
}

TEST_CASE("a value that does not fit is refused with the part's name") {
    const Document document = new_document();
    CHECK(contains(error_of(document, SetField{telescope, "aperture_mm", -1.0}),
                   "Refractor: Aperture must be from 20"));
    CHECK(contains(error_of(document, SetField{telescope, "apertur_mm", 90.0}),
                   "did you mean 'Aperture'"));
    CHECK(contains(error_of(document, SetField{telescope, "back_focus_mm", 900.0}),
                   "Back focus must be at least 10 mm shorter than Focal length"));
    CHECK(contains(error_of(document, SetField{17, "aperture_mm", 90.0}), "no part 18"));
}

TEST_CASE("what apply refuses is said beside the field without the part's name") {
    const Document document = new_document();
    const SetField too_small{telescope, "aperture_mm", -1.0};
    CHECK(error_of(document, too_small) == "Refractor: " + refusal(document, too_small).value());
    const SetTolerance none{telescope, "aperture_mm", Tolerance{-0.5, KnownBy::measured}};
    CHECK(contains(refusal(document, none).value(), "± of Aperture must be more than 0"));
    CHECK_FALSE(refusal(document, SetField{telescope, "aperture_mm", 90.0}).has_value());
}

TEST_CASE("no refusal on screen uses a key of the file") {
    for (const PartKind& kind : part_kinds()) {
        for (const FieldInfo& field : kind.fields) {
            const std::string said = in_screen_words(kind.fresh, field.key + " must be a number");
            CHECK(said == field.label + " must be a number");
            const std::string behind = in_screen_words(kind.fresh, "less than " + field.key);
            const bool is_plain_word = field.key.find('_') == std::string::npos;
            CHECK(behind == "less than " + (is_plain_word ? field.key : field.label));
        }
    }
}

TEST_CASE("a new part goes where it may stand, and what is chosen stays chosen") {
    Document document = new_document();
    const LegalPlaces chain = legal_places(document.setup, Role::chain);
    CHECK(chain.first == head);
    CHECK(chain.last == head);
    document = after(document, AddPart{"spacer", 0});  // before the telescope is no place for it
    document = after(document, AddPart{"filter", {}});
    document = after(document, AddPart{"spacer", 99});
    CHECK(names(document)
          == std::vector<std::string>{"Refractor", "Focuser", "Spacer or adapter", "Filter",
                                      "Spacer or adapter 2", "Splitter head", "Eyepiece pair",
                                      "Observer", "Target"});
    CHECK(document.setup.chosen == Choice{6, 7, 8});
    document = after(document, AddPart{"eyepiece_pair", 0});
    CHECK(document.setup.parts[6].name == "Eyepiece pair 2");
    CHECK(document.setup.chosen == Choice{7, 8, 9});
    CHECK(contains(error_of(document, AddPart{"splitter_head", {}}), "only one"));
    CHECK(contains(error_of(document, AddPart{"fliter", {}}), "did you mean 'filter'"));
}

TEST_CASE("the last part of a role that is needed stays") {
    Document document = new_document();
    for (const std::size_t part : {telescope, focuser, head, pair, observer, target}) {
        CHECK(
            contains(error_of(document, RemovePart{part}), "cannot be removed: the setup has no "));
    }
    document = after(document, DuplicatePart{pair});
    CHECK(document.setup.parts[4].name == "Eyepiece pair 2");
    CHECK(document.setup.chosen == Choice{3, 5, 6});
    CHECK(after(document, RemovePart{4}) == new_document());
}

TEST_CASE("when what is chosen is removed its neighbour is chosen") {
    Document document = new_document();
    document = after(document, DuplicatePart{pair});
    document = after(document, DuplicatePart{pair});  // three pairs at 3, 4, 5
    document = after(document, ChoosePart{4});
    CHECK(after(document, RemovePart{4}).setup.chosen.eyepiece == 4);
    document = after(document, ChoosePart{5});
    CHECK(after(document, RemovePart{5}).setup.chosen.eyepiece == 4);
    CHECK(after(document, RemovePart{3}).setup.chosen == Choice{4, 5, 6});
}

TEST_CASE("a part moves among its equals only") {
    Document document = new_document();
    document = after(document, AddPart{"spacer", {}});
    document = after(document, AddPart{"filter", {}});  // at 3
    CHECK(names(after(document, MovePart{3, 2}))[2] == "Filter");
    CHECK(names(after(document, MovePart{2, 3}))[2] == "Filter");
    CHECK(after(document, MovePart{2, 2}) == document);
    CHECK(contains(error_of(document, MovePart{3, 4}), "cannot come behind 'Splitter head'"));
    CHECK(contains(error_of(document, MovePart{0, 99}), "no part 100"));
    document = after(new_document(), DuplicatePart{pair});
    CHECK(after(document, MovePart{3, 4}).setup.chosen.eyepiece == 4);
    CHECK(after(document, MovePart{4, 3}).setup.chosen.eyepiece == 4);
}

TEST_CASE("names stay different within a role") {
    Document document = after(new_document(), DuplicatePart{pair});
    CHECK(contains(error_of(document, RenamePart{4, "Eyepiece pair"}), "already called"));
    CHECK(contains(error_of(document, RenamePart{4, ""}), "empty"));
    CHECK(contains(error_of(document, RenamePart{4, "\xff"}), "UTF-8"));
    CHECK(after(document, RenamePart{4, "Eyepiece pair 2"}) == document);
    CHECK(after(document, RenamePart{4, "Target"}).setup.parts[4].name
          == "Target");  // of another role
    document = after(document, DuplicatePart{4});
    CHECK(document.setup.parts[5].name == "Eyepiece pair 3");
    document = after(document, RenamePart{5, std::string(100, 'n')});
    CHECK(after(document, DuplicatePart{5}).setup.parts[6].name == std::string(95, 'n') + " 2");
}

TEST_CASE("only eyepiece pairs, observers and targets are chosen") {
    const Document document = after(new_document(), DuplicatePart{observer});
    CHECK(after(document, ChoosePart{5}).setup.chosen == Choice{3, 5, 6});
    CHECK(contains(error_of(document, ChoosePart{head}), "always in the light"));
}

TEST_CASE("a whole setup is taken over only when it is sound") {
    const Document document = new_document();
    Setup setup = document.setup;
    setup.title = "Other";
    CHECK(after(document, ReplaceSetup{setup, "Other"}).setup == setup);
    setup.parts[0].body.get<Refractor>().aperture = Millimetres{-3};
    CHECK(contains(error_of(document, ReplaceSetup{setup, "Other"}), "Aperture must be from"));
    CHECK_FALSE(apply(document, ReplaceSetup{{}, "Empty"}).has_value());
}

TEST_CASE("an edit is called by what it does, in the words of the screen") {
    const Document document = after(new_document(), RenamePart{telescope, "Club refractor"});
    CHECK(describe(SetField{telescope, "focal_length_mm", 900.0}, document)
          == "Club refractor: Focal length 480 → 900 mm");
    CHECK(describe(AddPart{"filter", {}}, document) == "Add Filter");
    CHECK(describe(RemovePart{telescope}, document) == "Remove Club refractor");
    CHECK(describe(RenamePart{telescope, "Old"}, document) == "Rename Club refractor to Old");
    CHECK(describe(ReplaceSetup{document.setup, "Insert the shifter"}, document)
          == "Insert the shifter");
    CHECK(describe(SetField{99, "focal_length_mm", 1.0}, document)
          == "a part that is gone: focal_length_mm");
}

TEST_CASE(
    "any edits, possible or not, leave a sound setup, and undoing them all gives the first back") {
    std::mt19937 random(23);
    for (int round = 0; round < 30; ++round) {
        const Document first = random_document(random);
        History history(first);
        std::vector<Document> seen{first};
        for (int step = 0; step < 60; ++step) {
            const Document& now = *history.document();
            const Edit edit = random_edit(now, random);
            auto changed = apply(now, edit);
            if (!changed) {
                CHECK_FALSE(changed.error().what.empty());
                continue;
            }
            CHECK_FALSE(order_fault(changed->setup).has_value());
            CHECK(with_valid_choice(changed->setup) == changed->setup);
            if (*changed == now) continue;
            seen.push_back(*changed);
            history.commit(std::move(*changed), describe(edit, now));
        }
        REQUIRE(seen.size() > 10);
        CHECK(history.labels().size() == seen.size() - 1);
        for (std::size_t i = seen.size() - 1; i > 0; --i) {
            CHECK(*history.document() == seen[i]);
            history.undo();
        }
        CHECK(*history.document() == first);
        CHECK_FALSE(history.can_undo());
        for (std::size_t i = 1; i < seen.size(); ++i) {
            history.redo();
            CHECK(*history.document() == seen[i]);
        }
        CHECK_FALSE(history.can_redo());
    }
}
