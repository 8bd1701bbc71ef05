#include "app/export/sheet.hpp"

#include "app/export/sight.hpp"
#include "document/atomic_file.hpp"
#include "scene/sheet/sheet.hpp"
#include "study/cures/cure_search.hpp"

namespace beamfork {

Result<void> write_sheet(const Document& document, const MakeSheet& command) {
    const Setup& setup = document.setup;
    auto report = make_report(setup, setup.chosen);
    if (!report) return tl::make_unexpected(report.error());
    add_cures(setup, *report);
    SheetOptions options = command.options;
    options.moon_png = moon_for_paper(setup, *report, options.night);
    return replace_file(command.output, sheet_page(document, *report, options));
}

}  // namespace beamfork
