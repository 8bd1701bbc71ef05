#include "document/toml_node.hpp"

#include <cmath>
#include <sstream>

#include "base/text.hpp"
#include "document/toml_text.hpp"

namespace beamfork {

namespace {

constexpr int deepest = 32;

std::string float_text(double value) {
    if (std::isnan(value)) return "nan";
    if (std::isinf(value)) return value < 0 ? "-inf" : "inf";
    std::string text = format_exact(value);
    if (text.find_first_of(".e") == std::string::npos)
        text += ".0";  // else it would read back as an integer
    return text;
}

bool write(const toml::node& node, int depth, std::string& text);

bool write_list(const toml::array& list, int depth, std::string& text) {
    text += '[';
    for (bool first = true; const toml::node& item : list) {
        if (!std::exchange(first, false)) text += ", ";
        if (!write(item, depth + 1, text)) return false;
    }
    text += ']';
    return true;
}

bool write_table(const toml::table& table, int depth, std::string& text) {
    text += '{';
    for (bool first = true; const auto& [key, value] : table) {
        text += std::exchange(first, false) ? " " : ", ";
        text += toml_key(key.str()) + " = ";
        if (!write(value, depth + 1, text)) return false;
    }
    text += " }";
    return true;
}

template <class Value>
std::string streamed(const Value& value) {
    std::ostringstream out;
    out << value;
    return out.str();
}

bool write(const toml::node& node, int depth, std::string& text) {
    if (depth > deepest) return false;
    if (const auto* list = node.as_array()) return write_list(*list, depth, text);
    if (const auto* table = node.as_table()) return write_table(*table, depth, text);
    if (const auto* words = node.as_string()) {
        text += toml_string(words->get());
    } else if (const auto* number = node.as_floating_point()) {
        text += float_text(number->get());
    } else if (const auto* whole = node.as_integer()) {
        text += std::to_string(whole->get());
    } else if (const auto* truth = node.as_boolean()) {
        text += truth->get() ? "true" : "false";
    } else if (const auto* date = node.as_date()) {
        text += streamed(date->get());
    } else if (const auto* time = node.as_time()) {
        text += streamed(time->get());
    } else if (const auto* moment = node.as_date_time()) {
        text += streamed(moment->get());
    }
    return true;
}

}  // namespace

std::optional<std::string> toml_text(const toml::node& node) {
    std::string text;
    if (!write(node, 0, text)) return std::nullopt;
    return text;
}

}  // namespace beamfork
