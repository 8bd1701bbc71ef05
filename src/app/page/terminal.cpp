#include "app/page/terminal.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

namespace beamfork {

std::optional<std::size_t> terminal_width() {
    winsize size{};
    if (isatty(STDOUT_FILENO) == 0 || ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return {};
    if (size.ws_col == 0) return {};
    return size.ws_col;
}

}  // namespace beamfork
