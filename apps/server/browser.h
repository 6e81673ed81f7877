/// \file
/// Opening the page for the person who started the server.
#pragma once

#include <string>

namespace offplumb::server {

/// \return whether a person sits before this: standard output is a terminal and there is a display
/// (DISPLAY or WAYLAND_DISPLAY).
[[nodiscard]] bool CanShowBrowser();

/// Starts the desktop's own browser by xdg-open and does not wait for it. Without that program
/// nothing happens.
void OpenBrowser(const std::string& url);

}  // namespace offplumb::server
