#include "apps/server/browser.h"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>

namespace offplumb::server {
namespace {

bool IsSet(const char* variable) {
  const char* value = std::getenv(variable);
  return value != nullptr && *value != '\0';
}

[[noreturn]] void BecomeBrowser(const std::string& url) {
  // A session of its own: Ctrl-C in the terminal ends the server, not the browser.
  setsid();
  const int nothing = open("/dev/null", O_RDWR);
  for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) dup2(nothing, stream);
  execlp("xdg-open", "xdg-open", url.c_str(), static_cast<char*>(nullptr));
  _exit(127);
}

}  // namespace

bool CanShowBrowser() {
  return isatty(STDOUT_FILENO) != 0 && (IsSet("DISPLAY") || IsSet("WAYLAND_DISPLAY"));
}

void OpenBrowser(const std::string& url) {
  const pid_t child = fork();
  if (child == 0) {
    // The grandchild is nobody's to wait for here.
    if (fork() == 0) BecomeBrowser(url);
    _exit(0);
  }
  if (child > 0) waitpid(child, nullptr, 0);
}

}  // namespace offplumb::server
