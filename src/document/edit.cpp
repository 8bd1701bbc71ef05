#include "document/edit.hpp"

#include <algorithm>

#include "document/screen_words.hpp"
#include "document/tour_lit.hpp"
#include "document/words.hpp"

#include <fmt/format.h>

namespace beamfork {

LegalPlaces legal_places(const Setup& setup, Role role) {
    const auto first_from = [&](auto is_behind) {
        const auto found = std::find_if(setup.parts.begin(), setup.parts.end(),
                                        [&](const Part& part) { return is_behind(role_of(part)); });
        return static_cast<std::size_t>(found - setup.parts.begin());
    };
    return {first_from([&](Role other) { return other >= role; }),
            first_from([&](Role other) { return other > role; })};
}

namespace {

tl::unexpected<Error> cannot(std::string why) {
    return fail(ErrorCode::impossible, std::move(why));
}

// Moves the three choices to where their parts are now.
template <class Where>
void follow(Choice& choice, Where where_is_now) {
    for (std::size_t* index : {&choice.eyepiece, &choice.observer, &choice.target})
        *index = where_is_now(*index);
}

void insert_part(Setup& setup, std::size_t at, Part part) {
    setup.parts.insert(setup.parts.begin() + static_cast<std::ptrdiff_t>(at), std::move(part));
    follow(setup.chosen, [&](std::size_t index) { return index >= at ? index + 1 : index; });
}

std::optional<std::string> value_objection(const Part& part) {
    const auto wrong = [&]() -> std::optional<std::string> {
        for (const FieldInfo& field : kind_of(part.body).fields) {
            if (auto no = objection(field, *field_value(part.body, field.key))) return no;
        }
        for (const auto& [key, tolerance] : part.tolerances) {
            if (auto no = tolerance_objection(part.body, key, tolerance)) return no;
        }
        return contradiction(part.body);
    }();
    return wrong ? std::optional(in_screen_words(part.body, *wrong)) : std::nullopt;
}

// Everything a file is checked for as well; for setups that come whole.
std::optional<std::string> setup_objection(const Setup& setup) {
    if (const auto wrong = title_objection(setup.title)) return wrong;
    if (const auto wrong = story_objection(setup.story)) return wrong;
    for (std::size_t i = 0; i < setup.parts.size(); ++i) {
        const Part& part = setup.parts[i];
        if (const auto wrong = name_objection(part.name)) return wrong;
        if (name_is_taken(setup, role_of(part), part.name, i)) {
            return fmt::format("two parts are called '{}'", part.name);
        }
        if (const auto wrong = value_objection(part))
            return fmt::format("{}: {}", part.name, *wrong);
    }
    return std::nullopt;
}

// One function per edit; each changes a copy that is dropped when it fails.
struct Application {
    Setup setup;
    std::vector<Tour> tours;

    [[nodiscard]] Result<void> needs(std::size_t part) const {
        if (part < setup.parts.size()) return {};
        return cannot(fmt::format("there is no part {} in this setup", part + 1));
    }

    Result<void> operator()(const SetField& edit) {
        if (auto there = needs(edit.part); !there) return there;
        Part& part = setup.parts[edit.part];
        auto changed = with_field(part.body, edit.key, edit.value);
        if (!changed)
            return fail(changed.error().code, in_screen_words(part.body, changed.error().what));
        part.body = std::move(*changed);
        return {};
    }
    Result<void> operator()(const SetTolerance& edit) {
        if (auto there = needs(edit.part); !there) return there;
        Part& part = setup.parts[edit.part];
        if (!edit.tolerance) {
            part.tolerances.erase(edit.key);
            return {};
        }
        if (const auto wrong = tolerance_objection(part.body, edit.key, *edit.tolerance))
            return cannot(in_screen_words(part.body, *wrong));
        part.tolerances.insert_or_assign(edit.key, *edit.tolerance);
        return {};
    }
    Result<void> operator()(const RenamePart& edit) {
        if (auto there = needs(edit.part); !there) return there;
        if (const auto wrong = name_objection(edit.name)) return cannot(*wrong);
        Part& part = setup.parts[edit.part];
        if (name_is_taken(setup, role_of(part), edit.name, edit.part)) {
            return cannot(fmt::format("another {} is already called '{}'", kind_of(part.body).label,
                                      edit.name));
        }
        const std::string before = std::exchange(part.name, edit.name);
        const bool is_other = std::any_of(setup.parts.begin(), setup.parts.end(),
                                          [&](const Part& one) { return one.name == before; });
        follow_rename(tours, before, edit.name, is_other);
        return {};
    }
    Result<void> operator()(const AddPart& edit) {
        const auto kind = find_kind(edit.kind);
        if (!kind) return tl::make_unexpected(kind.error());
        const LegalPlaces legal = legal_places(setup, kind->role);
        const std::size_t at = std::clamp(edit.at.value_or(legal.last), legal.first, legal.last);
        insert_part(setup, at, {free_name(setup, kind->role, kind->label), kind->fresh, {}});
        return {};
    }
    Result<void> operator()(const RemovePart& edit) {
        if (auto there = needs(edit.part); !there) return there;
        const Part removed = setup.parts[edit.part];
        setup.parts.erase(setup.parts.begin() + static_cast<std::ptrdiff_t>(edit.part));
        if (const auto fault = order_fault(setup)) {
            return cannot(
                fmt::format("'{}' cannot be removed: {} then", removed.name, fault->sentence));
        }
        forget_parts_that_are_gone(tours, setup);
        const auto has_role = [&](std::size_t index) {
            return index < setup.parts.size() && role_of(setup.parts[index]) == role_of(removed);
        };
        follow(setup.chosen, [&](std::size_t index) {
            const bool keeps_place = index < edit.part || (index == edit.part && has_role(index));
            return keeps_place ? index : index - 1;
        });
        return {};
    }
    Result<void> operator()(const MovePart& edit) {
        if (auto there = needs(std::max(edit.from, edit.to)); !there) return there;
        const auto begin = setup.parts.begin();
        const auto from = static_cast<std::ptrdiff_t>(edit.from);
        const auto to = static_cast<std::ptrdiff_t>(edit.to);
        if (from < to) std::rotate(begin + from, begin + from + 1, begin + to + 1);
        if (to < from) std::rotate(begin + to, begin + from, begin + from + 1);
        follow(setup.chosen, [&](std::size_t index) {
            if (index == edit.from) return edit.to;
            if (edit.from < index && index <= edit.to) return index - 1;
            if (edit.to <= index && index < edit.from) return index + 1;
            return index;
        });
        return {};
    }
    Result<void> operator()(const DuplicatePart& edit) {
        if (auto there = needs(edit.part); !there) return there;
        Part copy = setup.parts[edit.part];
        copy.name = free_name(setup, role_of(copy), copy.name);
        copy.remarks.clear();  // they are about the original
        insert_part(setup, edit.part + 1, std::move(copy));
        return {};
    }
    Result<void> operator()(const ChoosePart& edit) {
        if (auto there = needs(edit.part); !there) return there;
        switch (role_of(setup.parts[edit.part])) {
        case Role::eyepiece: setup.chosen.eyepiece = edit.part; return {};
        case Role::observer: setup.chosen.observer = edit.part; return {};
        case Role::target: setup.chosen.target = edit.part; return {};
        default: break;
        }
        return cannot(fmt::format(
            "'{}' is always in the light: only eyepiece pairs, observers and targets are chosen",
            setup.parts[edit.part].name));
    }
    Result<void> operator()(const SetTitle& edit) {
        if (const auto wrong = title_objection(edit.title)) return cannot(*wrong);
        setup.title = edit.title;
        return {};
    }
    Result<void> operator()(const SetStory& edit) {
        if (const auto wrong = story_objection(edit.story)) return cannot(*wrong);
        setup.story = edit.story;
        return {};
    }
    Result<void> operator()(const ReplaceSetup& edit) {
        if (const auto wrong = setup_objection(edit.setup)) return cannot(*wrong);
        setup = edit.setup;
        forget_parts_that_are_gone(tours, setup);
        return {};
    }
    Result<void> operator()(const SetTours& edit) {
        if (const auto wrong = tours_objection(edit.tours)) return cannot(*wrong);
        for (const Tour& tour : edit.tours) {
            for (const TourStep& step : tour.steps) {
                for (const std::string& word : step.lit)
                    if (const auto wrong = lit_part_objection(word, setup)) return cannot(*wrong);
            }
        }
        tours = edit.tours;
        return {};
    }
};

// The part whose value that edit sets; nothing for other edits.
std::optional<std::size_t> part_of_value(const Edit& edit) {
    if (const auto* field = std::get_if<SetField>(&edit.change)) return field->part;
    if (const auto* tolerance = std::get_if<SetTolerance>(&edit.change)) return tolerance->part;
    return std::nullopt;
}

// apply() with its error said beside the part itself.
Result<Document> changed(const Document& document, const Edit& edit) {
    Application application{document.setup, document.tours};
    if (auto done = std::visit(application, edit.change); !done)
        return tl::make_unexpected(done.error());
    if (const auto fault = order_fault(application.setup)) return cannot(fault->sentence);
    Document after = document;
    after.tours = std::move(application.tours);
    after.setup = with_valid_choice(std::move(application.setup));
    return after;
}

}  // namespace

Result<Document> apply(const Document& document, const Edit& edit) {
    auto after = changed(document, edit);
    const auto part = part_of_value(edit);
    if (after || !part || *part >= document.setup.parts.size()) return after;
    return fail(after.error().code,
                fmt::format("{}: {}", document.setup.parts[*part].name, after.error().what));
}

std::optional<std::string> refusal(const Document& document, const Edit& edit) {
    const auto after = changed(document, edit);
    return after ? std::nullopt : std::optional(after.error().what);
}

}  // namespace beamfork
