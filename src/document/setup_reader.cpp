#include <algorithm>

#include "base/text.hpp"
#include "document/read_entry.hpp"
#include "document/setup_file.hpp"
#include "document/toml_file.hpp"
#include "document/tour_lit.hpp"
#include "document/tour_reader.hpp"
#include "document/unknown_key.hpp"
#include "document/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

constexpr FileFormat setup_format{"beamfork", file_version, "setup"};

std::string place_in_train(const PartKind& kind) {
    return has_own_heading(kind) ? fmt::format("[[{}]]", kind.key)
                                 : fmt::format("[[part]] with kind = \"{}\"", kind.key);
}

// What to write for the first role that nothing in the setup has, if there is one.
std::optional<std::string> entry_for_missing_role(const Setup& setup) {
    for (const Part& needed : new_document().setup.parts) {
        if (parts_with_role(setup, role_of(needed)).empty())
            return place_in_train(kind_of(needed.body));
    }
    return std::nullopt;
}

class SetupReader {
public:
    explicit SetupReader(Reading& reading) : reading_(reading) {}

    Result<ReadSetup> read(const toml::table& root) {
        const auto entries = in_file_order(root);
        for (const auto& [key, value] : entries) {
            if (auto done = read_key(*key, *value); !done) return tl::make_unexpected(done.error());
        }
        for (const PartKind& kind : part_kinds()) {
            if (!has_own_heading(kind)) continue;
            if (const auto* list = root.get(kind.key)) {
                if (auto done = read_entries(kind.key, *list, &kind); !done)
                    return tl::make_unexpected(done.error());
            }
        }
        if (auto ordered = check_order(); !ordered) return tl::make_unexpected(ordered.error());
        document_.setup = with_valid_choice(std::move(document_.setup));
        if (const auto* chosen = root.get("chosen")) {
            if (auto done = read_chosen(*chosen); !done) return tl::make_unexpected(done.error());
        }
        for (const auto& [line, word] : reading_.lit_words) {
            if (const auto wrong = lit_part_objection(word, document_.setup))
                return refuse(reading_, line, *wrong);
        }
        if (!entries.empty())
            move_remark_to_top(document_.top.remarks, setup_format,
                               std::string(entries.front().first->str()));
        document_.last_lines = reading_.comments.take_rest();
        std::stable_sort(reading_.notices.begin(), reading_.notices.end(),
                         [](const Notice& a, const Notice& b) { return a.line < b.line; });
        return ReadSetup{std::move(document_), std::move(reading_.notices)};
    }

private:
    Result<void> read_key(const toml::key& key, const toml::node& value) {
        const std::string_view name = key.str();
        if (name == "chosen") return {};
        const bool is_own_heading =
            std::any_of(part_kinds().begin(), part_kinds().end(), [&](const PartKind& kind) {
                return has_own_heading(kind) && kind.key == name;
            });
        if (is_own_heading) return {};  // read later: observers and targets stand behind the train
        if (name == "part") return read_entries("part", value, nullptr);
        if (name == "tour") {
            auto tours = read_tours(reading_, value);
            if (!tours) return tl::make_unexpected(tours.error());
            document_.tours = std::move(*tours);
            return {};
        }
        keep_remark(document_.top.remarks, name, take_remark(reading_, key, value));
        if (name == "beamfork") return {};
        if (name == "title")
            return read_line(value, "title", document_.setup.title, title_objection);
        if (name == "story")
            return read_line(value, "story", document_.setup.story, story_objection);
        return keep_unrecognised(reading_, key, value, document_.top.unrecognised,
                                 sentence_for(name));
    }

    static std::string sentence_for(std::string_view name) {
        if (const auto kind = find_kind(name)) {
            return fmt::format("'{}' is no heading and has no effect; write {}", name,
                               place_in_train(*kind));
        }
        std::vector<std::string> known{"beamfork", "title", "story", "part", "tour", "chosen"};
        for (const PartKind& kind : part_kinds()) {
            if (has_own_heading(kind)) known.push_back(kind.key);
        }
        return unknown_key_sentence(name, "at the top of the file", known);
    }

    Result<void> read_line(const toml::node& value,
                           const std::string& what,
                           std::string& into,
                           std::optional<std::string> (*objection_to)(std::string_view)) const {
        auto text = read_words(reading_, value, what);
        if (!text) return tl::make_unexpected(text.error());
        std::erase(*text, '\r');  // of files written on other systems
        if (const auto wrong = objection_to(*text)) return refuse(reading_, line_of(value), *wrong);
        into = std::move(*text);
        return {};
    }

    Result<void>
    read_entries(const std::string& heading, const toml::node& node, const PartKind* kind) {
        const auto* list = node.as_array();
        const auto wrong = [&](const toml::node& found) {
            return refuse(
                reading_, line_of(found),
                fmt::format(
                    "expected [[{0}]] with two brackets and its keys below it, found {0} as {1}",
                    heading, what_it_is(found)));
        };
        if (list == nullptr) return wrong(node);
        for (const toml::node& item : *list) {
            const auto* table = item.as_table();
            if (table == nullptr) return wrong(item);
            auto entry = read_entry(reading_, *table, kind);
            if (!entry) return tl::make_unexpected(entry.error());
            if (auto added = add(std::move(*entry)); !added) return added;
        }
        return {};
    }

    Result<void> add(ReadEntry entry) {
        Setup& setup = document_.setup;
        const Role role = role_of(entry.part);
        if (name_is_taken(setup, role, entry.part.name)) {
            if (entry.name_line > 0) {
                return refuse(
                    reading_, entry.name_line,
                    fmt::format("there are two {}s called '{}'; give them different names",
                                kind_of(entry.part.body).key, entry.part.name));
            }
            entry.part.name = free_name(setup, role, entry.part.name);
        }
        setup.parts.push_back(std::move(entry.part));
        lines_.push_back(entry.line);
        // Told before the rest is read: of a hundred thousand even the names would take long to tell apart.
        if (const auto fault = too_many_parts(setup))
            return refuse(reading_, lines_.at(fault->part), fault->sentence);
        return {};
    }

    [[nodiscard]] Result<void> check_order() const {
        const auto fault = order_fault(document_.setup);
        if (!fault) return {};
        const auto missing = entry_for_missing_role(document_.setup);
        if (!missing) return refuse(reading_, lines_.at(fault->part), fault->sentence);
        std::string sentence = fmt::format("{}: add a {}", fault->sentence, *missing);
        if (!reading_.notices.empty()) {
            const Notice& first = reading_.notices.front();
            sentence += fmt::format(" (line {}: {})", first.line, first.text);
        }
        return refuse(reading_, 0, std::move(sentence));
    }

    Result<void> read_chosen(const toml::node& node) {
        const auto* table = node.as_table();
        if (table == nullptr)
            return refuse(reading_, line_of(node), "expected [chosen] with its keys below it");
        keep_remark(document_.chosen.remarks, "",
                    reading_.comments.take(line_of(*table), line_of(*table)));
        Choice& choice = document_.setup.chosen;
        for (const auto& [key, value] : in_file_order(*table)) {
            const std::string_view name = key->str();
            keep_remark(document_.chosen.remarks, name, take_remark(reading_, *key, *value));
            Result<void> done;
            if (name == "eyepiece") {
                done = choose(*value, "eyepiece", Role::eyepiece, choice.eyepiece);
            } else if (name == "observer") {
                done = choose(*value, "observer", Role::observer, choice.observer);
            } else if (name == "target") {
                done = choose(*value, "target", Role::target, choice.target);
            } else {
                const std::vector<std::string> known{"eyepiece", "observer", "target"};
                done = keep_unrecognised(reading_, *key, *value, document_.chosen.unrecognised,
                                         unknown_key_sentence(name, "under [chosen]", known));
            }
            if (!done) return done;
        }
        return {};
    }

    Result<void>
    choose(const toml::node& value, const std::string& what, Role role, std::size_t& into) const {
        const auto name = read_words(reading_, value, what);
        if (!name) return tl::make_unexpected(name.error());
        std::vector<std::string> names;
        for (const std::size_t index : parts_with_role(document_.setup, role)) {
            names.push_back(document_.setup.parts[index].name);
            if (names.back() != *name) continue;
            into = index;
            return {};
        }
        return refuse(reading_, line_of(value),
                      fmt::format("no {} is called '{}'; expected one of: {}{}", what, *name,
                                  fmt::join(names, ", "), did_you_mean(*name, names)));
    }

    Reading& reading_;
    Document document_;
    std::vector<int> lines_;  // of each part's heading
};

}  // namespace

Result<ReadSetup> read_setup(std::string_view text, const std::string& file_name) {
    Reading reading{file_name, Comments(""), {}, {}};
    const auto root = parse_file(reading, text, setup_format);
    if (!root) return tl::make_unexpected(root.error());
    return SetupReader(reading).read(*root);
}

}  // namespace beamfork
