#include "base/assets.hpp"
#include "base/contract.hpp"
#include "glass/glass.hpp"

#include <toml++/toml.h>

namespace beamfork {

namespace {

Result<std::vector<double>>
numbers(const toml::table& entry, std::string_view key, const Where& where) {
    std::vector<double> values;
    const toml::array* list = entry[key].as_array();
    if (list == nullptr) {
        return fail(ErrorCode::bad_input, std::string(key) + " must be a list of numbers", where);
    }
    for (const toml::node& node : *list) {
        const auto value = node.value<double>();
        if (!value)
            return fail(ErrorCode::bad_input, std::string(key) + " holds a non-number", where);
        values.push_back(*value);
    }
    return values;
}

Result<Glass> read_glass(const toml::table& entry, const Where& where) {
    Glass glass;
    glass.name = entry["name"].value_or("");
    glass.source = entry["source"].value_or("");
    const auto b = numbers(entry, "b", where);
    const auto c = numbers(entry, "c", where);
    const auto range = numbers(entry, "range_um", where);
    if (!b) return tl::make_unexpected(b.error());
    if (!c) return tl::make_unexpected(c.error());
    if (!range) return tl::make_unexpected(range.error());
    if (glass.name.empty() || glass.source.empty()) {
        return fail(ErrorCode::bad_input, "a glass needs a name and a source", where);
    }
    if (b->empty() || b->size() != c->size() || range->size() != 2 || (*range)[0] >= (*range)[1]) {
        return fail(ErrorCode::bad_input,
                    glass.name + " needs as many b as c, and a rising range_um of two numbers",
                    where);
    }
    glass.b = *b;
    glass.c = *c;
    glass.shortest = {(*range)[0]};
    glass.longest = {(*range)[1]};
    return glass;
}

}  // namespace

Result<Catalogue> read_catalogue(std::string_view text, const std::string& file_name) {
    toml::table root;
    try {
        root = toml::parse(text, file_name);
    } catch (const toml::parse_error& error) {
        return fail(ErrorCode::bad_input, std::string(error.description()),
                    {file_name, static_cast<int>(error.source().begin.line)});
    }
    Catalogue catalogue;
    if (const toml::array* list = root["glass"].as_array()) {
        for (const toml::node& node : *list) {
            const Where where{file_name, static_cast<int>(node.source().begin.line)};
            const toml::table* entry = node.as_table();
            if (entry == nullptr) return fail(ErrorCode::bad_input, "glass must be a table", where);
            auto glass = read_glass(*entry, where);
            if (!glass) return tl::make_unexpected(glass.error());
            catalogue.glasses.push_back(*std::move(glass));
        }
    }
    return catalogue;
}

const Catalogue& standard_catalogue() {
    static const Catalogue catalogue = [] {
        const auto text = asset("assets/glasses.toml");
        BEAMFORK_EXPECTS(text.has_value());
        auto read = read_catalogue(*text, "assets/glasses.toml");
        BEAMFORK_EXPECTS(read.has_value());
        return *std::move(read);
    }();
    return catalogue;
}

}  // namespace beamfork
