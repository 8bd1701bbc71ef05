#include "base/text.hpp"
#include "document/atomic_file.hpp"
#include "document/drawer_file.hpp"
#include "document/toml_text.hpp"
#include "document/write_entry.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

// What is as it is when nothing is said is left out, unless the user has remarked on it.
EntryKeys texts_beside(const DrawerPart& held) {
    EntryKeys keys;
    const auto add = [&](const std::string& key, bool says_something, const std::string& text) {
        if (says_something || held.part.remarks.contains(key)) keys.emplace_back(key, text);
    };
    add("wanted", held.wanted, held.wanted ? "true" : "false");
    if (held.price) {
        keys.emplace_back("price", fmt::format("[{}, {}]", format_exact(held.price->amount),
                                               toml_string(held.price->currency)));
    }
    add("note", !held.note.empty(), toml_words(held.note));
    if (role_of(held.part) != Role::focuser) return keys;
    if (!held.sits_on.empty()) keys.emplace_back("sits_on", toml_string(held.sits_on));
    add("lower_by_mm", held.lower_by.value != 0, format_exact(held.lower_by.value));
    return keys;
}

}  // namespace

std::string write_drawer(const Drawer& drawer) {
    const Remarks& remarks = drawer.top.remarks;
    Lines lines;
    lines.value("beamfork_drawer", std::to_string(drawer_version), remarks);
    lines.value("title", toml_string(drawer.title), remarks);
    if (!drawer.story.empty() || remarks.contains("story"))
        lines.value("story", toml_words(drawer.story), remarks);
    lines.unrecognised(drawer.top.unrecognised, remarks);
    for (const DrawerPart& held : drawer.parts)
        write_entry(lines, held.part, texts_beside(held));
    if (!drawer.last_lines.empty()) lines.words("\n" + drawer.last_lines + '\n');
    return std::move(lines).text();
}

Result<ReadDrawer> load_drawer(const std::filesystem::path& path) {
    return read_file(path, largest_file).and_then([&](const std::string& text) {
        return read_drawer(text, path.string());
    });
}

Result<void> save_drawer(const std::filesystem::path& path, const Drawer& drawer) {
    return replace_file(path, write_drawer(drawer));
}

}  // namespace beamfork
