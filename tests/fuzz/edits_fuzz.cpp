// Random rows of edits on demos, with undo and redo. The first byte chooses the demo, each three that follow an edit,
// up to forty.
#include <algorithm>
#include <vector>

#include "base/assets.hpp"
#include "document/history.hpp"
#include "document/sample.hpp"
#include "document/setup_file.hpp"
#include "harness.hpp"

using namespace beamfork;

namespace {

const std::vector<Document>& demo_documents() {
    static const std::vector<Document> documents = [] {
        std::vector<Document> read;
        for (const std::string_view name : asset_names("assets/demos/")) {
            if (name.ends_with(".train.toml"))
                read.push_back(read_setup(*asset(name), std::string(name)).value().document);
        }
        return read;
    }();
    return documents;
}

void must_survive_a_save(const Document& document, const Document& opened) {
    const std::string text = write_setup(document);
    const auto again = read_setup(text, "written");
    fuzz::must(again.has_value(), "an edited setup opens again:\n" + text);
    fuzz::must(again->document.setup == document.setup, "an edited setup opens alike:\n" + text);
    const std::string& top = opened.top.remarks.at("beamfork").above;
    fuzz::must(text.starts_with(top), "the comment that opens the file is kept");
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const Document& opened = demo_documents().at(data[0] % demo_documents().size());
    History history(opened);
    constexpr std::size_t most = 1 + 3 * 40;
    for (std::size_t at = 1; at + 3 <= std::min(size, most); at += 3) {
        const std::uint32_t seed = data[at] | data[at + 1] << 8 | data[at + 2] << 16;
        std::mt19937 random(seed);
        const Document before = *history.document();
        const Edit edit = random_edit(before, random);
        auto after = apply(before, edit);
        fuzz::must(refusal(before, edit).has_value() != after.has_value(), "a refusal is told");
        if (!after) continue;
        if (after->setup.parts.size() > 60) break;
        must_survive_a_save(*after, opened);
        history.commit(*after, describe(edit, before));
        if (*history.document() == before) continue;
        history.undo();
        fuzz::must(*history.document() == before, "an edit and its undo are nothing");
        history.redo();
        fuzz::must(*history.document() == *after, "undo and redo are nothing");
    }
    while (history.can_undo())
        history.undo();
    fuzz::must(*history.document() == opened, "what is undone to the end is what was opened");
    return 0;
}
