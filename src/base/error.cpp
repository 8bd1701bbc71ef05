#include "base/error.hpp"

namespace beamfork {

std::string to_text(const Error& error) {
    std::string text;
    if (!error.where.file.empty()) {
        text += error.where.file;
        text += ':';
    }
    if (error.where.line > 0) {
        if (text.empty()) text += "line ";
        text += std::to_string(error.where.line);
        text += ':';
    }
    if (!text.empty()) text += ' ';
    return text + error.what;
}

}  // namespace beamfork
