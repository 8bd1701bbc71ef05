#include "ui/kit/lettering.hpp"

#include <algorithm>
#include <cmath>

#include "base/letters.hpp"

namespace beamfork {

namespace {

const char* begin_of(std::string_view text) { return text.data(); }
const char* end_of(std::string_view text) { return text.data() + text.size(); }

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Where the first word ends; a number keeps a unit that follows it: "30.0 mm".
std::size_t end_of_chunk(std::string_view text) {
    const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
    if (end == 0 || end == text.size() || text[end] == '\n' || !is_digit(text[end - 1])) return end;
    const std::size_t next = std::min(text.find_first_of(" \n", end + 1), text.size());
    constexpr std::size_t longest_unit = 3;  // bytes: mm, %, g, D, nm
    return next - end - 1 <= longest_unit && !(end + 1 < text.size() && is_digit(text[end + 1]))
               ? next
               : end;
}

// The longest beginning of whole letters that is no wider; at least one letter.
template <class Wide>
std::string_view letters_no_wider(std::string_view word, float width, Wide wide) {
    std::size_t fits = 0;
    for (std::size_t next = 0; next < word.size();) {
        next += first_letter(word.substr(next)).size();
        if (fits > 0 && wide(word.substr(0, next)) > width) break;
        fits = next;
    }
    return word.substr(0, fits);
}

}  // namespace

ImVec2 text_size(std::string_view text, TextFace face) {
    const ImFont* face_font = font(face);
    return face_font->CalcTextSizeA(face_font->FontSize, FLT_MAX, 0, begin_of(text), end_of(text));
}

void text_at(ImDrawList& list, ImVec2 at, std::string_view text, ImU32 ink, TextFace face) {
    const ImFont* face_font = font(face);
    list.AddText(face_font, face_font->FontSize, {std::round(at.x), std::round(at.y)}, ink,
                 begin_of(text), end_of(text));
}

void text_ending_at(
    ImDrawList& list, ImVec2 right_top, std::string_view text, ImU32 ink, TextFace face) {
    text_at(list, {right_top.x - text_width(text, face), right_top.y}, text, ink, face);
}

float text_width(std::string_view text, TextFace face) { return text_size(text, face).x; }

std::string shortened(std::string_view text, float width) {
    if (text_width(text) <= width) return std::string(text);
    while (!text.empty() && text_width(std::string(text) + "…") > width)
        text = without_last_letter(text);
    return std::string(text) + "…";
}

void dim_text(std::string_view text) {
    ImGui::PushStyleColor(ImGuiCol_Text, colour(Tone::text_dim));
    ImGui::TextUnformatted(begin_of(text), end_of(text));
    ImGui::PopStyleColor();
}

void wrapped_text(std::string_view text, ImU32 ink) {
    const std::string lines = folded(text, ImGui::GetContentRegionAvail().x);
    ImGui::PushStyleColor(ImGuiCol_Text, ink);
    ImGui::TextUnformatted(lines.c_str());
    ImGui::PopStyleColor();
}

std::string folded(std::string_view text, float width) {
    return folded(text, width, *ImGui::GetFont(), ImGui::GetFontSize());
}

std::string folded(std::string_view text, float width, ImFont& face, float size) {
    const auto wide = [&](std::string_view words) {
        return face.CalcTextSizeA(size, FLT_MAX, 0, begin_of(words), end_of(words)).x;
    };
    const float space = wide(" ");
    std::string lines;
    float used = 0;
    while (!text.empty()) {
        const std::size_t end = end_of_chunk(text);
        std::string_view chunk = text.substr(0, end);
        const bool is_first = lines.empty() || lines.back() == '\n';
        if (!is_first) {
            const bool fits = used + space + wide(chunk) <= width;
            lines += fits ? ' ' : '\n';
            used = fits ? used + space : 0;
        }
        while (used == 0 && wide(chunk) > width) {
            const std::string_view fits = letters_no_wider(chunk, width, wide);
            if (fits.size() == chunk.size()) break;
            lines.append(fits) += '\n';
            chunk.remove_prefix(fits.size());
        }
        lines += chunk;
        used += wide(chunk);
        if (end < text.size() && text[end] == '\n') {
            lines += '\n';
            used = 0;
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

FittedWords fitted(std::string_view text, ImVec2 box, ImFont& face, float largest) {
    constexpr float step = 0.95F;
    constexpr float smallest = 4;  // pixels; nobody reads that, but nothing is left out
    FittedWords words;
    for (words.size = largest;; words.size *= step) {
        words.lines = folded(text, box.x, face, words.size);
        words.height = face.CalcTextSizeA(words.size, FLT_MAX, 0, words.lines.c_str()).y;
        if (words.height <= box.y || words.size * step < smallest) return words;
    }
}

}  // namespace beamfork
