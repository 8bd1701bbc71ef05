#include "base/error.hpp"

#include "base/shown.hpp"

namespace beamfork {

std::string to_text(const Error& error) {
    std::string text;
    if (!error.where.file.empty()) {
        text += shown_in_line(error.where.file);
        text += ':';
    }
    if (error.where.line > 0) {
        if (text.empty()) text += "line ";
        text += std::to_string(error.where.line);
        text += ':';
    }
    if (!text.empty()) text += ' ';
    return text + shown_in_line(error.what);
}

}  // namespace beamfork
