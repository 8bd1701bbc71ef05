#include "document/edit_refusal.hpp"

#include <cctype>

namespace beamfork {

namespace {

bool is_of_a_key(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

void replace_word(std::string& text, const std::string& word, const std::string& by) {
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at)) {
        const std::size_t end = at + word.size();
        const bool is_whole = (at == 0 || !is_of_a_key(text[at - 1]))
                              && (end == text.size() || !is_of_a_key(text[end]));
        if (is_whole) text.replace(at, word.size(), by);
        at += is_whole ? by.size() : word.size();
    }
}

const Part* part_of(const Document& document, const Edit& edit) {
    std::optional<std::size_t> part;
    if (const auto* field = std::get_if<SetField>(&edit.change)) part = field->part;
    if (const auto* tolerance = std::get_if<SetTolerance>(&edit.change)) part = tolerance->part;
    return part && *part < document.setup.parts.size() ? &document.setup.parts[*part] : nullptr;
}

}  // namespace

std::optional<std::string> refusal(const Document& document, const Edit& edit) {
    const auto applied = apply(document, edit);
    if (applied) return std::nullopt;
    std::string sentence = applied.error().what;
    const Part* part = part_of(document, edit);
    if (part == nullptr) return sentence;
    const std::string name = part->name + ": ";  // it stands above the field
    if (sentence.starts_with(name)) sentence.erase(0, name.size());
    for (const FieldInfo& field : kind_of(part->body).fields)
        replace_word(sentence, field.key, "“" + field.label + "”");
    replace_word(sentence, "plus_minus", "±");
    return sentence;
}

}  // namespace beamfork
