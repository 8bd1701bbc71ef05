#include "document/setup_file.hpp"

#include "document/atomic_file.hpp"

namespace beamfork {

Result<ReadSetup> load_file(const std::filesystem::path& path) {
    return read_file(path, largest_file).and_then([&](const std::string& text) {
        return read_setup(text, path.string());
    });
}

Result<void> save_file(const std::filesystem::path& path, const Document& document) {
    return replace_file(path, write_setup(document));
}

}  // namespace beamfork
