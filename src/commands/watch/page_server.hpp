#pragma once
// The report under an address of this computer, for a browser that is to load it again and again.

#include <memory>
#include <string>

#include "model/expected.hpp"

namespace linewright {

/// Serves one page at 127.0.0.1, on a port that the system chooses, to programs of this computer
/// alone. A request must name that address as its host, so that no page of another site can reach
/// it under a name of its own. It knows no other path and no method but GET and HEAD.
class PageServer {
 public:
  /// A server that listens, or why there is none.
  static Expected<std::unique_ptr<PageServer>, std::string> started();

  PageServer(const PageServer&) = delete;
  PageServer& operator=(const PageServer&) = delete;
  ~PageServer();

  /// "http://127.0.0.1:43571/"
  std::string address() const;
  /// What is served from now on.
  void show(std::string page);

 private:
  PageServer();

  struct Listening;
  std::unique_ptr<Listening> listening_;
};

}  // namespace linewright
