#include "document/screen_words.hpp"

#include <algorithm>

#include "document/words.hpp"

namespace beamfork {

const FieldInfo* field_named(const PartBody& part, std::string_view key) {
    const auto& fields = kind_of(part).fields;
    const auto found = std::find_if(fields.begin(), fields.end(),
                                    [&](const FieldInfo& field) { return field.key == key; });
    return found == fields.end() ? nullptr : &*found;
}

namespace {

std::string_view word_at_front(std::string_view text) {
    constexpr std::string_view of_keys = "abcdefghijklmnopqrstuvwxyz0123456789_";
    const std::size_t end = std::min(text.find_first_not_of(of_keys), text.size());
    return text.substr(0, std::max<std::size_t>(end, 1));
}

}  // namespace

std::string in_screen_words(const PartBody& part, std::string_view sentence) {
    std::string said;
    while (!sentence.empty()) {
        const std::string_view word = word_at_front(sentence);
        sentence.remove_prefix(word.size());
        const bool is_key = said.empty() || word.find('_') != std::string_view::npos;
        const FieldInfo* field = is_key ? field_named(part, word) : nullptr;
        said += field != nullptr ? field->label : word == tolerances_key ? "±" : std::string(word);
    }
    return said;
}

}  // namespace beamfork
