#include "app/check/told_findings.hpp"

#include "app/page/page_text.hpp"
#include "study/cures/cure_effect.hpp"

#include <fmt/format.h>

namespace beamfork {

namespace {

constexpr std::size_t word_width = 9;

std::string indented(const std::string& text) {
    return wrapped(std::string(word_width, ' '), text, word_width);
}

std::string sentence_of(const Finding& finding) {
    return wrapped(fmt::format("  {:<7}", to_word(finding.severity)), finding.sentence, word_width);
}

std::string cure_text(const Cure& cure, ToldCures& told) {
    const char* mark = cure.removes ? "+" : "~";
    const auto [at, is_new] = told.try_emplace(cure.what, told.size() + 1);
    if (!is_new) {
        return indented(fmt::format("{} ({}) as above: {}", mark, at->second,
                                    cure.removes ? "mends this too." : "makes this less, too."));
    }
    const std::string gains = effect_text(cure.effect, true);
    const std::string losses = effect_text(cure.effect, false);
    return indented(fmt::format("{} ({}) {} ({}{}{}).{}{}{}", mark, at->second, cure.what,
                                to_words(cure.reversibility), gains.empty() ? "" : ": ", gains,
                                losses.empty() ? "" : " Costs: " + losses + ".",
                                cure.cost.empty() ? "" : " ", cure.cost));
}

bool is_bad(const Finding& finding) { return finding.severity <= Severity::poor; }

constexpr const char* no_cure = "No single change was found that mends this.";

}  // namespace

std::string finding_text(const Finding& finding, ToldCures& told) {
    std::string out = sentence_of(finding);
    if (!finding.advice.empty()) out += indented(finding.advice);
    if (finding.cures.empty() && is_bad(finding)) out += indented(no_cure);
    for (const Cure& cure : finding.cures)
        out += cure_text(cure, told);
    return out;
}

std::string short_finding_text(const Finding& finding, ToldCures& told) {
    std::string out = sentence_of(finding);
    if (!finding.cures.empty()) return out + cure_text(finding.cures.front(), told);
    if (!finding.advice.empty()) return out + indented(finding.advice);
    return is_bad(finding) ? out + indented(no_cure) : out;
}

}  // namespace beamfork
