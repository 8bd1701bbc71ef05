// What undo calls each edit.
#include "document/edit.hpp"
#include "document/screen_words.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

std::string name_at(const Document& document, std::size_t part) {
    return part < document.setup.parts.size() ? document.setup.parts[part].name
                                              : "a part that is gone";
}

// Five figures are enough to tell two steps apart.
std::string value_words(const FieldValue& value) {
    if (const auto* number = std::get_if<double>(&value)) return fmt::format("{:.5g}", *number);
    if (const auto* word = std::get_if<std::string>(&value)) return *word;
    return "not stated";
}

struct Description {
    const Document& document;

    [[nodiscard]] const FieldInfo* field_of(std::size_t part, const std::string& key) const {
        if (part >= document.setup.parts.size()) return nullptr;
        return field_named(document.setup.parts[part].body, key);
    }
    [[nodiscard]] std::string label_of(std::size_t part, const std::string& key) const {
        const FieldInfo* field = field_of(part, key);
        return field != nullptr ? field->label : key;
    }
    std::string operator()(const SetField& edit) const {
        const std::string name = name_at(document, edit.part);
        const FieldInfo* field = field_of(edit.part, edit.key);
        if (field == nullptr) return fmt::format("{}: {}", name, edit.key);
        const auto before = field_value(document.setup.parts[edit.part].body, edit.key);
        const std::string unit(symbol(field->unit));
        return fmt::format("{}: {} {} → {}{}", name, field->label,
                           before ? value_words(*before) : "?", value_words(edit.value),
                           unit.empty() ? "" : " " + unit);
    }
    std::string operator()(const SetTolerance& edit) const {
        return fmt::format("Change ± of {} of {}", label_of(edit.part, edit.key),
                           name_at(document, edit.part));
    }
    std::string operator()(const RenamePart& edit) const {
        return fmt::format("Rename {} to {}", name_at(document, edit.part), edit.name);
    }
    std::string operator()(const AddPart& edit) const {
        const auto kind = find_kind(edit.kind);
        return "Add " + (kind ? kind->label : edit.kind);
    }
    std::string operator()(const RemovePart& edit) const {
        return "Remove " + name_at(document, edit.part);
    }
    std::string operator()(const MovePart& edit) const {
        return "Move " + name_at(document, edit.from);
    }
    std::string operator()(const DuplicatePart& edit) const {
        return "Duplicate " + name_at(document, edit.part);
    }
    std::string operator()(const ChoosePart& edit) const {
        return "Choose " + name_at(document, edit.part);
    }
    std::string operator()(const SetTitle&) const { return "Change the title"; }
    std::string operator()(const SetStory&) const { return "Change the story"; }
    std::string operator()(const ReplaceSetup& edit) const { return edit.label; }
    std::string operator()(const SetTours& edit) const { return edit.label; }
};

}  // namespace

std::string describe(const Edit& edit, const Document& document) {
    return std::visit(Description{document}, edit.change);
}

}  // namespace beamfork
