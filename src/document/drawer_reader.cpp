#include <algorithm>
#include <array>
#include <set>

#include "base/text.hpp"
#include "document/drawer_file.hpp"
#include "document/toml_file.hpp"
#include "document/unknown_key.hpp"
#include "document/words.hpp"
#include "parts/focuser.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace beamfork {

namespace {

constexpr FileFormat drawer_format{"beamfork_drawer", drawer_version, "drawer"};
constexpr std::string_view lower_key = "lower_by_mm";

// What a drawer knows of an entry besides its kind's fields: of parts, of focusers, of observers and targets.
const std::vector<std::string>& keys_beside(std::string_view kind) {
    static const std::vector<std::string> of_parts{"wanted", "price", "note"};
    static const std::vector<std::string> of_focusers{"wanted", "price", "note", "sits_on",
                                                      std::string(lower_key)};
    static const std::vector<std::string> of_others{"note"};
    if (kind == Focuser::key) return of_focusers;
    return kind == "observer" || kind == "target" ? of_others : of_parts;
}

class DrawerReader {
public:
    explicit DrawerReader(Reading& reading) : reading_(reading) {}

    Result<ReadDrawer> read(const toml::table& root) {
        const auto entries = in_file_order(root);
        for (const auto& [key, value] : entries) {
            if (auto done = read_key(*key, *value); !done) return tl::make_unexpected(done.error());
        }
        if (auto seated = check_focusers(); !seated) return tl::make_unexpected(seated.error());
        if (!entries.empty())
            move_remark_to_top(drawer_.top.remarks, drawer_format,
                               std::string(entries.front().first->str()));
        drawer_.last_lines = reading_.comments.take_rest();
        std::stable_sort(reading_.notices.begin(), reading_.notices.end(),
                         [](const Notice& a, const Notice& b) { return a.line < b.line; });
        return ReadDrawer{std::move(drawer_), std::move(reading_.notices)};
    }

private:
    Result<void> read_key(const toml::key& key, const toml::node& value) {
        const std::string_view name = key.str();
        if (name == "part") return read_entries("part", value, nullptr);
        for (const PartKind& kind : part_kinds()) {
            if (has_own_heading(kind) && kind.key == name)
                return read_entries(kind.key, value, &kind);
        }
        keep_remark(drawer_.top.remarks, name, take_remark(reading_, key, value));
        if (name == drawer_format.version_key) return {};
        if (name == "title") return read_line(value, "title", drawer_.title, title_objection);
        if (name == "story") return read_line(value, "story", drawer_.story, story_objection);
        const std::vector<std::string> known{
            std::string(drawer_format.version_key), "title", "story", "part", "observer", "target"};
        return keep_unrecognised(reading_, key, value, drawer_.top.unrecognised,
                                 unknown_key_sentence(name, "at the top of the file", known));
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
        const auto wrong = [&](const toml::node& found) {
            return refuse(
                reading_, line_of(found),
                fmt::format(
                    "expected [[{0}]] with two brackets and its keys below it, found {0} as {1}",
                    heading, what_it_is(found)));
        };
        const auto* list = node.as_array();
        if (list == nullptr) return wrong(node);
        for (const toml::node& item : *list) {
            const auto* table = item.as_table();
            if (table == nullptr) return wrong(item);
            if (auto added = add(*table, kind); !added) return added;
        }
        return {};
    }

    Result<void> add(const toml::table& table, const PartKind* kind) {
        const auto* word = table.get("kind") != nullptr ? table.get("kind")->as_string() : nullptr;
        const std::string_view named = kind != nullptr   ? std::string_view(kind->key)
                                       : word != nullptr ? std::string_view(word->get())
                                                         : std::string_view();
        auto entry = read_entry(reading_, table, kind, keys_beside(named));
        if (!entry) return tl::make_unexpected(entry.error());
        if (drawer_.parts.size() == most_drawer_parts) {
            return refuse(reading_, entry->line,
                          fmt::format("a drawer can have at most {} parts", most_drawer_parts));
        }
        if (auto named_well = give_name(*entry); !named_well) return named_well;
        DrawerPart held{std::move(entry->part)};
        for (const std::string& key : keys_beside(named)) {
            const toml::node* value = table.get(key);
            if (value == nullptr) continue;
            if (auto done = read_beside(held, key, *value); !done) return done;
        }
        drawer_.parts.push_back(std::move(held));
        const toml::node* seat = table.get("sits_on");
        lines_.push_back(seat != nullptr ? line_of(*seat) : entry->line);
        return {};
    }

    // Two parts of one role are never called alike.
    Result<void> give_name(ReadEntry& entry) {
        auto& taken = names_[static_cast<std::size_t>(role_of(entry.part))];
        const std::string wanted = entry.part.name;
        if (taken.contains(wanted) && entry.name_line > 0) {
            return refuse(reading_, entry.name_line,
                          fmt::format("there are two {}s called '{}'; give them different names",
                                      kind_of(entry.part.body).key, wanted));
        }
        for (int number = 2; !taken.insert(entry.part.name).second; ++number)
            entry.part.name = fmt::format("{} {}", wanted, number);
        return {};
    }

    Result<void>
    read_beside(DrawerPart& into, const std::string& key, const toml::node& value) const {
        if (key == "note") return read_line(value, key, into.note, story_objection);
        if (key == "sits_on") return read_line(value, key, into.sits_on, title_objection);
        if (key == "price") return read_price(into, value);
        if (key == lower_key) return read_lower(into, value);
        if (!value.is_boolean()) {
            return refuse(
                reading_, line_of(value),
                fmt::format("wanted must be true (not owned yet) or false, without quotes, not {}",
                            what_it_is(value)));
        }
        into.wanted = value.as_boolean()->get();
        return {};
    }

    // price = [90, "talers"]
    [[nodiscard]] Result<void> read_price(DrawerPart& into, const toml::node& value) const {
        const auto* pair = value.as_array();
        const bool is_pair = pair != nullptr && pair->size() == 2 && (*pair)[0].is_number()
                             && (*pair)[1].is_string();
        const double amount = is_pair ? (*pair)[0].value<double>().value_or(-1) : -1;
        constexpr double most = 1e9;
        if (!(amount >= 0 && amount <= most)) {
            return refuse(reading_, line_of(value),
                          fmt::format("price must be a number from 0 to a thousand million and the "
                                      "word of your currency, like [90, \"talers\"], not {}",
                                      is_pair            ? "such a number"
                                      : value.is_array() ? "another list"
                                                         : what_it_is(value)));
        }
        const std::string word = (*pair)[1].as_string()->get();
        if (const auto wrong = name_objection(word))
            return refuse(reading_, line_of(value), "the currency of price: " + *wrong);
        into.price = Price{amount, word};
        return {};
    }

    [[nodiscard]] Result<void> read_lower(DrawerPart& into, const toml::node& value) const {
        constexpr double most = 150;
        const double lower = value.value<double>().value_or(most + 1);
        if (!value.is_number() || !(std::abs(lower) <= most)) {
            return refuse(reading_, line_of(value),
                          fmt::format("{} must be a number in millimetres from -{} to {}, not {}",
                                      lower_key, most, most,
                                      value.is_number() ? format_exact(lower) : what_it_is(value)));
        }
        into.lower_by = Millimetres{lower};
        return {};
    }

    // A focuser's place is its telescope's: without one nobody knows where its drawtube ends.
    [[nodiscard]] Result<void> check_focusers() const {
        std::vector<std::string> telescopes;
        for (const std::size_t one : parts_with_role(drawer_, Role::telescope))
            telescopes.push_back(drawer_.parts[one].part.name);
        for (const std::size_t focuser : parts_with_role(drawer_, Role::focuser)) {
            const auto& [part, wanted, price, note, sits_on, lower] = drawer_.parts[focuser];
            if (telescope_of_focuser(drawer_, focuser)) continue;
            std::string sentence;
            if (telescopes.empty()) {
                sentence = fmt::format("'{}' has no telescope to sit on: add one", part.name);
            } else if (sits_on.empty()) {
                sentence = fmt::format("say which telescope '{}' sits on: sits_on = one of: {}",
                                       part.name, fmt::join(telescopes, ", "));
            } else {
                sentence =
                    fmt::format("no telescope is called '{}'; expected one of: {}{}", sits_on,
                                fmt::join(telescopes, ", "), did_you_mean(sits_on, telescopes));
            }
            return refuse(reading_, lines_.at(focuser), std::move(sentence));
        }
        return {};
    }

    Reading& reading_;
    Drawer drawer_;
    std::vector<int> lines_;  // of what each part sits on, else of its heading
    std::array<std::set<std::string>, role_count> names_;
};

}  // namespace

Result<ReadDrawer> read_drawer(std::string_view text, const std::string& file_name) {
    Reading reading{file_name, Comments(""), {}, {}};
    const auto root = parse_file(reading, text, drawer_format);
    if (!root) return tl::make_unexpected(root.error());
    return DrawerReader(reading).read(*root);
}

}  // namespace beamfork
