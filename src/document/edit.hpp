// Every change a user can make to a document, as small values, and the one door through which they pass.
#pragma once

#include <concepts>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "document/document.hpp"

namespace beamfork {

/// Parts are meant by their index in Setup::parts.
struct SetField {
    std::size_t part = 0;
    std::string key;
    FieldValue value;
};
/// How well that number is known; nothing: not stated.
struct SetTolerance {
    std::size_t part = 0;
    std::string key;
    std::optional<Tolerance> tolerance;
};
struct RenamePart {
    std::size_t part = 0;
    std::string name;
};
/// A part of that kind with the kind's own values, before the part at `at` or, where that is no place for
/// it, at the nearest place that is; behind its equals when nothing is said.
struct AddPart {
    std::string kind;
    std::optional<std::size_t> at;
};
struct RemovePart {
    std::size_t part = 0;
};
/// `to` is the index that the part has afterwards.
struct MovePart {
    std::size_t from = 0;
    std::size_t to = 0;
};
/// The copy stands right behind and has a name of its own.
struct DuplicatePart {
    std::size_t part = 0;
};
/// Looks through, as or at that part: an eyepiece pair, observer or target, as its role says.
struct ChoosePart {
    std::size_t part = 0;
};
struct SetTitle {
    std::string title;
};
struct SetStory {
    std::string story;
};
/// A whole other setup, such as one with a cure applied; `label` is what undo calls it.
struct ReplaceSetup {
    Setup setup;
    std::string label;
};

/// All tours of one's own; `label` is what undo calls it.
struct SetTours {
    std::vector<Tour> tours;
    std::string label;
};

using Change = std::variant<SetField,
                            SetTolerance,
                            RenamePart,
                            AddPart,
                            RemovePart,
                            MovePart,
                            DuplicatePart,
                            ChoosePart,
                            SetTitle,
                            SetStory,
                            ReplaceSetup,
                            SetTours>;

/// Any one of them. A type of its own, not the variant itself: for that, std::apply would claim apply().
struct Edit {
    Change change;

    template <class One>
    // NOLINTNEXTLINE(google-explicit-constructor): a change is an edit, without saying so
    requires(!std::same_as<One, Edit> && std::constructible_from<Change, One>) Edit(One one)
        : change(std::move(one)) {}
};

/// The document with that change, or an error that says in one sentence why it cannot be. What is chosen
/// stays chosen, wherever it moves; when it is removed, its neighbour is chosen.
/// Fields are called as on screen: "Club diagonal: Entry leg must be from 0 to 300, not 400".
Result<Document> apply(const Document& document, const Edit& edit);

/// Why apply() would refuse it, for the place where it is asked for: "Entry leg must be from 0 to 300, not 400", without
/// the part's name. Nothing: it would be taken.
std::optional<std::string> refusal(const Document& document, const Edit& edit);

/// What undo calls it: "Club refractor: Focal length 480 → 900 mm". `document` is the one before the whole
/// step, so that a slider's step tells where it began.
std::string describe(const Edit& edit, const Document& document);

/// The legal places for one more part of that role: the first index it may have, and the last.
struct LegalPlaces {
    std::size_t first = 0;
    std::size_t last = 0;
};
LegalPlaces legal_places(const Setup& setup, Role role);

}  // namespace beamfork
