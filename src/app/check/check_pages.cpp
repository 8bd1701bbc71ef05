#include "app/check/check.hpp"
#include "app/page/page_text.hpp"
#include "scene/two_eyes/alignment_rows.hpp"
#include "scene/words/assumptions.hpp"

#include <fmt/format.h>

namespace beamfork {

std::string two_eyes_page(const CheckedSetup& checked) {
    const AlignmentRows rows =
        alignment_rows(checked.setup, checked.combinations.at(checked.chosen).report);
    std::string out = "WHAT ALONE REACHES THE LIMIT (the most delicate first)\n";
    out += fmt::format("  {}{:>9}{:>9}\n", in_column("", 64), "has", "may be");
    for (const ToleranceRow& row : rows.tolerances)
        out +=
            fmt::format("  {}{}{} {}\n", in_column(row.label, 64), in_column(row.stated, 9, true),
                        in_column(row.allowed, 9, true), row.unit);
    out += "\nTELESCOPE OR HEAD? A CHECK OF COLLIMATION\n";
    for (std::size_t i = 0; i < rows.collimation_check.size(); ++i)
        out += wrapped(fmt::format("  {}. ", i + 1), rows.collimation_check[i], 5);
    return out;
}

std::string assumptions_page() {
    std::string out = "WHAT IS ASSUMED\n";
    for (const Paragraph& paragraph : assumptions())
        out += wrapped("  ", fmt::format("{}: {}", paragraph.heading, paragraph.text), 2);
    return out;
}

}  // namespace beamfork
