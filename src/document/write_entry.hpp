// A part as one entry of a file, such as a [[part]], with the user's remarks. Used by the writers alone.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "parts/part.hpp"

namespace beamfork {

/// Lines of a file with the user's remarks at them.
class Lines {
public:
    void line(const std::string& text, const Remarks& remarks, const std::string& key);
    void value(const std::string& key, const std::string& value, const Remarks& remarks);
    void heading(const std::string& text, const Remarks& remarks);
    void unrecognised(const std::map<std::string, std::string>& values, const Remarks& remarks);
    void words(const std::string& text) { text_ += text; }
    [[nodiscard]] std::string text() && { return std::move(text_); }

private:
    std::string text_;
};

/// Keys with their TOML text.
using EntryKeys = std::vector<std::pair<std::string, std::string>>;

/// All fields in the order of the kind; `more` comes right behind the name.
void write_entry(Lines& lines, const Part& part, const EntryKeys& more = {});

}  // namespace beamfork
